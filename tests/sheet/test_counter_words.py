"""Allergens across the counter."""

from sitegen.kitchen.recipe import Choice, Component, IngredientLine
from sitegen.sheet.counter_words import SHOP_DECIDES, OnCounter, counter_of
from tests.sheet.pantry import choice, line, setting


def product(title: str, *names: str) -> OnCounter:
    return OnCounter(title, (Component("All", tuple(line(10, "g", name) for name in names), ()),))


def either(title: str, *names: str, optional: bool = False) -> OnCounter:
    choices = tuple(map(choice, names))
    return OnCounter(title, (Component("All", (IngredientLine("x", None, choices, optional=optional),), ()),))


def test_columns_are_what_is_there_in_the_order_of_the_law() -> None:
    counter = counter_of([product("Pie", "whole milk", "plain flour"), product("Bar", "pecans")], setting())
    assert counter.columns == ("wheat", "milk", "pecans")
    assert [(row.product, row.marks) for row in counter.rows] == [
        ("Pie", ("yes", "yes", "")),
        ("Bar", ("", "", "yes")),
    ]


def test_what_only_an_alternative_or_an_option_brings_may_be_in_it() -> None:
    counter = counter_of(
        [either("Loaf", "pecans", "walnuts"), either("Roll", "sesame seeds", optional=True)], setting()
    )
    assert counter.columns == ("walnuts", "pecans", "sesame")
    assert [row.marks for row in counter.rows] == [("may", "yes", ""), ("", "", "may")]


def test_an_american_counter_speaks_of_its_own_law() -> None:
    counter = counter_of([product("Cake", "eggs", "soya flour")], setting("us-cups"))
    assert counter.columns == ("egg", "soy")


def test_nut_free_work_comes_first_where_there_is_both() -> None:
    both = counter_of([product("Bar", "pecans"), product("Pie", "plain flour")], setting())
    assert "make what has no nuts first (Pie)" in both.notes[0]
    assert "what has nuts last (Bar)" in both.notes[0]
    for alone in ("pecans", "plain flour"):
        notes = counter_of([product("One", alone)], setting()).notes
        assert not any("nuts first" in note for note in notes)
        assert notes[-1] == SHOP_DECIDES


def test_an_ingredient_that_nobody_knows_is_named() -> None:
    unknown = IngredientLine("moonstones", None, (Choice("moonstones", ""),))
    counter = counter_of([OnCounter("Sky", (Component("All", (unknown,), ()),))], setting())
    assert counter.columns == ()
    assert "Allergens of moonstones are not known: read the packet." in counter.notes
