"""What a sheet says of ingredients of which too little is known."""

from dataclasses import replace

import pytest

from sitegen.kitchen.amounts import Amount, single
from sitegen.kitchen.declared import known_with
from sitegen.kitchen.larder import Ingredient
from sitegen.kitchen.recipe import Choice, Component, IngredientLine, Makes
from sitegen.sheet.allergen_words import allergen_lines
from sitegen.sheet.build import build_sheet
from sitegen.sheet.setting import Setting
from sitegen.sheet.unknown_words import unknowns_of
from tests.sheet.pantry import Fraction, line, part, recipe, setting

GRAMS = Makes(Fraction(120), "", Fraction(120))
BARE = Ingredient("rose syrup", {"uk": "rose syrup"}, allergens_unsaid=frozenset({"eu", "us", "au"}))


def with_syrup(row: Ingredient, edition: str) -> Setting:
    plain = setting(edition)
    return replace(plain, tables=known_with(plain.tables, (row,)))


def taking(amount: int, unit: str) -> list[Component]:
    choices = (Choice("rose syrup", "rose syrup"),)
    syrup = IngredientLine("rose syrup", Amount(single(amount), unit), choices)
    return [Component("Syrup", (line(100, "g", "caster sugar"), syrup), ())]


def said(amount: int, unit: str, edition: str = "british-metric", row: Ingredient = BARE) -> tuple[str, ...]:
    return unknowns_of(taking(amount, unit), with_syrup(row, edition))


ALLERGENS = "Allergens of rose syrup are not known: read the packet."


def test_where_all_is_known_nothing_is_said() -> None:
    assert unknowns_of([Component("Sugar", (line(100, "g", "caster sugar"),), ())], setting()) == ()


def test_a_spoon_of_something_unweighed_counts_nowhere() -> None:
    assert said(2, "tsp") == (
        "What a measure of rose syrup weighs is not known: it is printed as the recipe has it, and no weight "
        "or percentage counts it.",
    )


def test_a_weight_is_known_as_it_stands() -> None:
    assert said(20, "g") == ()


def test_a_cup_edition_asks_for_scales() -> None:
    assert said(20, "g", "us-cups") == ("How much of rose syrup a cup holds is not known: please weigh it.",)


def test_what_never_goes_into_a_cup_misses_none() -> None:
    assert said(20, "g", "us-cups", replace(BARE, measured_by="weight")) == ()


@pytest.mark.parametrize(("edition", "is_known"), [("british-metric", True), ("us-cups", False)])
def test_allergens_are_unknown_law_by_law(edition: str, is_known: bool) -> None:
    row = replace(BARE, allergens_unsaid=frozenset({"us"}))
    lines = allergen_lines(taking(20, "g"), with_syrup(row, edition))
    assert (ALLERGENS not in lines) is is_known


def test_an_ingredient_of_unknown_allergens_lets_no_sheet_say_that_there_are_none() -> None:
    lines = allergen_lines(taking(20, "g"), with_syrup(BARE, "british-metric"))
    assert lines[0] == ALLERGENS


def test_a_whole_sheet_knows_what_its_recipe_and_its_bases_declare() -> None:
    base = replace(recipe(*taking(20, "g"), title="Base syrup", makes=GRAMS), declared=(BARE,))
    cake = recipe(
        Component("Cake", (part("Base syrup", share=1, base=True), line(100, "g", "plain flour")), ())
    )
    home = setting()
    sheet = build_sheet(cake, {base.title: base}, home.tables, home.edition, home.written)
    assert ALLERGENS in sheet.allergens
    assert home.tables.larder.find("rose syrup") is None
