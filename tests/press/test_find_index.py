"""The index of a search: what may be found by what, and how many bytes it takes."""

import json
import random
from collections.abc import Sequence
from typing import Any

import pytest

from sitegen.press.find_index import Sought, find_index, sought_recipe, sought_technique
from sitegen.press.search_words import WordRules
from sitegen.source.tables import read_tables
from tests.press.sample_sheets import INGREDIENT_SIDE, SHEET, TEASER, TUTORIAL

RULES = WordRules(("and", "the"), (("ø", "o"),), (("s", ""), ("e", ""), ("i", "y")))
LARDER = read_tables()[0].larder
BYTES_FOR_A_HUNDRED = 40_000


def read(sought: Sequence[Sought], rules: WordRules = RULES) -> dict[str, Any]:
    index: dict[str, Any] = json.loads(find_index(sought, rules))
    return index


def having(rows: list[tuple[list[str], list[int]]], text: str) -> list[int]:
    """The numbers of the entries that have a word or a name."""
    return next((numbers for texts, numbers in rows if text in texts), [])


@pytest.mark.parametrize(("view", "is_found"), [(SHEET, True), (INGREDIENT_SIDE, True), (TEASER, False)])
def test_an_ingredient_finds_what_shows_it_and_no_teaser(view: Any, is_found: bool) -> None:
    sought = sought_recipe([view])
    for name in ("caster sugar", "quinces", "firm pears", "brandy", "Hazelnut crumb", "Quince caramel"):
        assert (name in sought.names) is is_found, name


def test_no_word_of_a_teaser_s_ingredients_is_in_the_index_of_its_tree() -> None:
    text = str(find_index([sought_recipe([TEASER])], RULES))
    assert "hazelnut" in text
    for word in ("caster", "quinces", "brandy", "pears", 'caramel"]'):
        assert word not in text


def test_steps_and_notes_find_nothing() -> None:
    text = str(find_index([sought_recipe([SHEET])], RULES))
    for word in ("lentil", "thaw", "skewer"):
        assert word not in text.lower()


def test_title_summary_and_tags_find_a_recipe_by_their_words() -> None:
    words = read([sought_recipe([SHEET])])["words"]
    for word in ("quince", "crumb", "autumn", "tray"):
        assert having(words, word) == [0], word
    assert having(words, "and") == []


def test_names_of_every_edition_find_a_recipe_and_the_school_s_own_come_first() -> None:
    sought = [
        Sought(("Sponge",), ("caster sugar", "eggs"), ("superfine sugar",)),
        Sought(("Curd",), ("caster sugar", "lemons"), ("superfine sugar", "sour lemons")),
    ]
    names = read(sought)["names"]
    assert having(names, "caster sugar") == having(names, "superfine sugar") == [0, 1]
    assert names == [
        [["caster sugar", "superfine sugar"], [0, 1]],
        [["eggs"], [0]],
        [["lemons", "sour lemons"], [1]],
    ]


def test_one_form_of_a_word_stands_for_one_and_many() -> None:
    words = read([Sought(("Cherries",)), Sought(("A cherry tart",)), Sought(("Tarts",))])["words"]
    assert having(words, "cherry") == [0, 1]
    assert having(words, "tart") == [1, 2]
    assert having(words, "cherries") == []


def test_techniques_are_numbered_on_and_have_no_marks() -> None:
    index = read([sought_recipe([SHEET]), sought_technique(TUTORIAL)])
    first = next(RULES.words(TUTORIAL.title))
    assert having(index["words"], first) == [1]
    assert all(numbers == [0] for group in index["marks"].values() for numbers in group.values())


def test_a_recipe_is_marked_with_its_tags_and_facets() -> None:
    marks = read([sought_recipe([SHEET])])["marks"]
    assert marks["kind"] == {"tray-bakes": [0], "autumn-fruit": [0]}
    assert marks["without"] == {"peanut": [0]}


def test_the_rules_are_told_with_the_index() -> None:
    index = read([])
    assert index["passedOver"] == ["and", "the"]
    assert index["endings"] == [["s", ""], ["e", ""], ["i", "y"]]
    assert index["letters"] == [["ø", "o"]]


def test_nothing_in_it_can_end_its_element() -> None:
    index = find_index([Sought(("</script><b>",), ("<!-- salt & pepper",))], RULES)
    assert not set("<>&") & set(index)


def test_the_same_recipes_give_the_same_bytes() -> None:
    sought = [Sought(("z y x", "w v u"), ("b", "a"), ("d", "c"))]
    assert find_index(sought, RULES) == find_index(sought, RULES)
    assert having(read(sought)["words"], "z") == [0]


def hundred_recipes() -> list[Sought]:
    """No two alike: twelve to twenty ingredients each, from the whole larder, in two editions."""
    draw = random.Random(7)
    rows = [row for row in LARDER.ingredients if row.roles]
    stock = [word for row in rows for word in row.key.split() if word.isalpha()]
    recipes = []
    for number in range(100):
        own = draw.sample(rows, draw.randint(12, 20))
        title = " ".join(draw.sample(stock, 4))
        summary = " ".join([*draw.sample(stock, 12), f"word{number}", f"term{number}", f"verb{number}"])
        parts = tuple(f"{draw.choice(stock)} {kind}" for kind in ("sponge", "filling", "glaze"))
        marks = [("kind", f"tag-{draw.randint(1, 40)}") for _ in range(4)]
        marks += [("without", key) for key in ("nuts", "peanut", "soya", "sesame", "sulphites")]
        marks += [("time", "day"), ("time", "afternoon"), ("work", "hour-of-work"), ("tin", "box")]
        names = tuple(row.key for row in own) + parts
        abroad = tuple(row.name_in("us") for row in own if row.name_in("us") != row.key)
        recipes.append(Sought((title, summary), names, abroad, tuple(dict.fromkeys(marks))))
    return recipes


def test_a_hundred_recipes_take_less_than_forty_kilobytes() -> None:
    recipes = hundred_recipes()
    assert len({each.names for each in recipes}) == 100
    assert len({name for each in recipes for name in each.names}) > 300
    size = len(find_index(recipes, RULES).encode())
    assert 10_000 < size < BYTES_FOR_A_HUNDRED
