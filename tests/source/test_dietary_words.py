"""Dietary words in titles and tags: a school is written, and told where its own ingredients deny them."""

import shutil
from pathlib import Path

import pytest

from sitegen.faults import Fault, Severity
from sitegen.kitchen.diets import disagrees
from sitegen.source.library import read_content
from sitegen.source.tables import read_tables

SAMPLE = Path(__file__).parent / "sample_school"
CUPCAKES = "content/recipes/blackcurrant-and-bay-cupcakes/recipe.yaml"
TAGS = "tags: [cupcakes, soft fruit]"
CODES = ("dietary-word", "free-from")
TABLES = read_tables()[0]


def faults(tmp_path: Path, *changes: tuple[str, str]) -> list[tuple[Fault, str]]:
    """The faults of dietary words of the changed sample school, each with the line that it points at."""
    school = Path(shutil.copytree(SAMPLE, tmp_path / "school"))
    text = (school / CUPCAKES).read_text(encoding="utf-8")
    for old, new in changes:
        assert old in text
        text = text.replace(old, new, 1)
    (school / CUPCAKES).write_text(text, encoding="utf-8")
    return [
        (fault, text.split("\n")[fault.place.line - 1].strip())
        for fault in read_content(school).faults
        if fault.code in CODES
    ]


def tagged(tag: str) -> tuple[str, str]:
    return TAGS, f"tags: [cupcakes, soft fruit, {tag}]"


def test_a_tag_is_denied_at_every_line_that_denies_it(tmp_path: Path) -> None:
    found = faults(tmp_path, tagged("dairy-free"))
    lines = [line for _, line in found]
    assert "- 120 g buttermilk, at room temperature" in lines
    assert {fault.code for fault, _ in found} == {"dietary-word"}
    assert {fault.severity for fault, _ in found} == {Severity.ERROR}


def test_the_fault_names_word_and_ingredient(tmp_path: Path) -> None:
    sentences = [fault.sentence for fault, _ in faults(tmp_path, tagged("egg-free"))]
    assert "'egg-free' is said of this recipe, and 'egg' is in it" in sentences


def test_a_base_recipe_denies_a_tag_at_the_title(tmp_path: Path) -> None:
    found = faults(tmp_path, tagged("dairy-free"))
    of_the_base = [line for fault, line in found if "of Base buttercream" in fault.sentence]
    assert of_the_base == ["title: Blackcurrant and bay cupcakes"]


def test_a_title_claims_as_a_tag_does(tmp_path: Path) -> None:
    found = faults(tmp_path, ("title: Blackcurrant and bay cupcakes", "title: Vegan blackcurrant cupcakes"))
    assert found != []


def test_a_free_from_claim_that_is_borne_out_is_advised_against(tmp_path: Path) -> None:
    ((fault, _),) = faults(tmp_path, tagged("nut-free"))
    assert (fault.code, fault.severity) == ("free-from", Severity.ADVICE)


def test_a_claim_that_promises_nothing_may_stand(tmp_path: Path) -> None:
    assert faults(tmp_path, tagged("vegetarian")) == []


def test_the_sample_school_claims_nothing(tmp_path: Path) -> None:
    assert faults(tmp_path) == []


@pytest.mark.parametrize(
    ("diet", "line", "food", "denied"),
    [
        ("vegan", "50 g unsalted butter", "unsalted butter", True),
        ("vegan", "2 eggs", "egg", True),
        ("vegan", "50 g honey", "honey", True),
        ("vegan", "3 leaves of gelatine", "leaf gelatine", True),
        ("vegan", "2 g agar", "agar", False),
        ("vegan", "100 g oat drink", "oat drink", False),
        ("vegetarian", "50 g lard", "lard", True),
        ("vegetarian", "2 eggs", "egg", False),
        ("gluten-free", "50 g rye flour", "rye flour", True),
        ("gluten-free", "50 g porridge oats", "porridge oats", True),
        ("gluten-free", "50 g gluten-free porridge oats", "porridge oats", False),
        ("gluten-free", "50 g buckwheat flour", "buckwheat flour", False),
        ("wheat-free", "50 g rye flour", "rye flour", False),
        ("dairy-free", "50 g coconut milk", "coconut milk", False),
        ("nut-free", "50 g ground almonds", "ground almonds", True),
        ("nut-free", "50 g smooth peanut butter", "smooth peanut butter", True),
        ("nut-free", "50 g desiccated coconut", "desiccated coconut", False),
        ("alcohol-free", "40 g rum", "rum", True),
        ("alcohol-free", "1 tsp vanilla extract", "vanilla extract", False),
    ],
)
def test_what_the_table_says_of_an_ingredient(diet: str, line: str, food: str, denied: bool) -> None:
    row = TABLES.larder.find(food)
    assert row is not None
    (found,) = (one for one in TABLES.diets if one.key == diet)
    assert disagrees(found, line, row) is denied


def test_every_name_in_the_table_is_one_that_the_larder_has() -> None:
    keys = {row.key for row in TABLES.larder.ingredients}
    roles = {role for row in TABLES.larder.ingredients for role in row.roles}
    assert [
        diet.key for diet in TABLES.diets if not diet.ingredients <= keys or not diet.roles <= roles
    ] == []
