"""Ingredients that a recipe declares itself: text in, facts and faults out."""

import shutil
from pathlib import Path

import pytest

from sitegen.faults import Fault, Severity
from sitegen.kitchen.declared import tables_of, with_bases
from sitegen.kitchen.larder import Ingredient
from sitegen.source.library import read_content
from sitegen.source.school import Content

SAMPLE = Path(__file__).parent / "sample_school"
CUPCAKES = "content/recipes/blackcurrant-and-bay-cupcakes/recipe.yaml"
BASE = "content/recipes/base-buttercream/recipe.yaml"


@pytest.fixture
def school(tmp_path: Path) -> Path:
    return Path(shutil.copytree(SAMPLE, tmp_path / "school"))


def write(school: Path, name: str, *changes: tuple[str, str], end: str = "") -> None:
    text = (school / name).read_text(encoding="utf-8")
    for old, new in changes:
        assert old in text
        text = text.replace(old, new, 1)
    (school / name).write_text(text + end, encoding="utf-8")


def with_syrup(school: Path, row: str) -> Content:
    """The sample school, its cupcakes made with rose syrup instead of oil, which their file declares so."""
    write(
        school,
        CUPCAKES,
        ("- 100 g sunflower oil or rapeseed oil", "- 100 g rose syrup"),
        ("{sunflower oil}", "{rose syrup}"),
        end=f"larder:\n  rose syrup: {row}\n",
    )
    return read_content(school)


def declared(content: Content) -> Ingredient:
    (row,) = content.recipes[1].declared
    return row


def errors(content: Content) -> list[Fault]:
    return [fault for fault in content.faults if fault.severity is Severity.ERROR]


def told(content: Content) -> list[tuple[str, str]]:
    return [(fault.code, fault.sentence) for fault in errors(content)]


def test_a_line_may_take_what_its_file_declares(school: Path) -> None:
    content = with_syrup(school, "{roles: [sugar]}")
    assert errors(content) == []
    lines = content.recipes[1].components[0].lines
    assert lines[-1].text == "100 g rose syrup"
    assert declared(content).key == "rose syrup"
    assert declared(content).roles == {"sugar"}


@pytest.mark.parametrize(
    ("row", "unsaid"),
    [
        ("{roles: [sugar]}", {"eu", "us", "au"}),
        ("{allergens: {eu: [milk]}}", {"us"}),
        ("{allergens: {us: []}}", {"eu", "au"}),
        ("{allergens: {us: [], au: []}}", {"eu"}),
        ("{allergens: {eu: [], us: []}}", set()),
    ],
)
def test_allergens_may_stay_unsaid_law_by_law(row: str, unsaid: set[str], school: Path) -> None:
    content = with_syrup(school, row)
    assert errors(content) == []
    assert declared(content).allergens_unsaid == unsaid


def test_nothing_but_the_name_need_be_known(school: Path) -> None:
    content = with_syrup(school, "{}")
    row = declared(content)
    assert errors(content) == []
    assert (row.densities, row.pieces, row.composition) == ((), (), None)


def test_no_other_recipe_knows_it(school: Path) -> None:
    write(school, BASE, ("- 5 egg whites", "- 5 egg whites\n      - 10 g rose syrup"))
    assert ("unknown-ingredient", "'rose syrup' is not in the larder") in told(with_syrup(school, "{}"))


def test_a_recipe_knows_what_its_base_recipe_declares(school: Path) -> None:
    write(
        school,
        BASE,
        ("- 5 egg whites", "- 5 egg whites\n      - 10 g rose syrup"),
        ("until cool, then", "until cool with {rose syrup}, then"),
        end="larder:\n  rose syrup: {}\n",
    )
    content = read_content(school)
    base, cupcakes = content.recipes
    bases = {recipe.title: recipe for recipe in content.recipes}
    assert errors(content) == []
    assert cupcakes.declared == ()
    assert [one.title for one in with_bases(cupcakes, bases)] == [cupcakes.title, base.title]
    assert tables_of(cupcakes, bases, content.tables).larder.find("rose syrup") == base.declared[0]
    assert content.tables.larder.find("rose syrup") is None


def test_without_declarations_the_tables_are_the_very_same(school: Path) -> None:
    content = read_content(school)
    bases = {recipe.title: recipe for recipe in content.recipes}
    assert tables_of(content.recipes[1], bases, content.tables) is content.tables


@pytest.mark.parametrize("name", ["caster sugar", "castor sugar", "superfine sugar", "smoked salt"])
def test_a_known_name_cannot_be_declared_anew(name: str, school: Path) -> None:
    """The larder's own, an alias, a region's name, and one of the school's own larder."""
    write(school, CUPCAKES, end=f"larder:\n  {name}: {{roles: [sugar]}}\n")
    (fault,) = errors(read_content(school))
    assert fault.code == "name-taken"
    assert fault.place.file == CUPCAKES
    assert fault.sentence.startswith("the larder has ")


@pytest.mark.parametrize(
    ("row", "code"),
    [
        ("{allergens: {eu: [rosse]}}", "unknown-allergen"),
        ("{roles: [sugra]}", "unknown-role"),
        ("{also: [honey]}", "name-taken"),
        ("{colour: red}", "unknown-key"),
        ("{pieces: [{weight: much, source: packet}]}", "bad-weight"),
    ],
)
def test_a_wrong_row_is_told_once_and_its_lines_are_not_blamed(row: str, code: str, school: Path) -> None:
    assert [code for code, _ in told(with_syrup(school, row))] == [code]


def test_an_unknown_ingredient_is_offered_both_ways_out(school: Path) -> None:
    write(school, CUPCAKES, ("- 100 g sunflower oil or rapeseed oil", "- 100 g zzyzx"))
    fault = next(fault for fault in read_content(school).faults if fault.code == "unknown-ingredient")
    assert "content/larder.yaml" in fault.way_out
    assert "`larder` in this file" in fault.way_out


def test_a_base_recipe_may_declare_the_same_with_the_same_facts(school: Path) -> None:
    for name in (CUPCAKES, BASE):
        write(school, name, end="larder:\n  rose syrup: {roles: [sugar]}\n")
    assert errors(read_content(school)) == []
