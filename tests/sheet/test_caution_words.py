"""From recipes to the facts that cautions hang on, and to what is printed."""

from dataclasses import replace
from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import single
from sitegen.kitchen.method import OvenSetting, Reference, RefKind
from sitegen.kitchen.recipe import BatchAsk, BatchKind, Component, Recipe
from sitegen.sheet.build import build_sheet
from sitegen.sheet.values import Sheet
from tests.sheet.pantry import amount, choice, line, part, recipe, says, tables, takes

OVEN = OvenSetting(Fraction(160), "celsius", fan=True)
CARAMEL = Component(
    "Caramel",
    (line(200, "g", "caster sugar"),),
    (says("Boil to ", Reference("168 C", RefKind.TEMPERATURE, amount=amount(168, "celsius")), "."),),
)


def sheet(made: Recipe, batch: BatchAsk | None = None, edition: str = "british-metric") -> Sheet:
    editions = tables().editions
    return build_sheet(made, {}, tables(), editions[edition], editions["british-metric"], batch)


def keys(made: Recipe, batch: BatchAsk | None = None) -> list[str]:
    return [caution.key for caution in sheet(made, batch).cautions]


def part_reference(title: str, index: int) -> Reference:
    return Reference(title, RefKind.COMPONENT, target=title, line=index)


def test_hot_sugar_is_marked_at_the_step_that_dips_into_it() -> None:
    buns = Component(
        "Buns",
        (part("Caramel", share=1),),
        (says("Set out the buns."), says("Dip them into ", part_reference("Caramel", 0), ".")),
    )
    steps = [step for one in sheet(recipe(CARAMEL, buns)).components for step in one.steps]
    assert ["hot-sugar" in step.cautions for step in steps] == [True, False, True]


@pytest.mark.parametrize(("baked_after", "called"), [(True, False), (False, True)])
def test_a_part_is_cooked_where_the_oven_comes_after_it(baked_after: bool, called: bool) -> None:
    batter = Component("Batter", (line(2, "", "eggs", "medium"),), (says("Whisk ", takes(0, "eggs"), "."),))
    fill = says("Spread the ", part_reference("Batter", 0), ".")
    bake = says("Bake.", oven=OVEN, wait_min=None)
    steps = (fill, bake) if baked_after else (bake, fill)
    cake = Component("Cake", (part("Batter", share=1),), steps)
    assert ("raw-egg" in keys(recipe(batter, cake))) is called


def test_an_alternative_calls_for_its_caution_too() -> None:
    either = replace(line(50, "g", "golden syrup"), choices=(choice("golden syrup"), choice("honey")))
    assert keys(recipe(Component("It", (either,), (says("Stir."),)))) == ["honey"]


@pytest.mark.parametrize(("serves", "called"), [(None, False), (4, True)])
def test_a_portion_is_what_the_recipe_serves_else_a_piece(serves: int | None, called: bool) -> None:
    """20 g of cinnamon: 0.8 g in each of 24 biscuits, 5 g in each of 4 portions."""
    spiced = Component("It", (line(20, "g", "ground cinnamon"),), (says("Stir."),))
    made = recipe(spiced)
    made = replace(
        made,
        makes=replace(made.makes, count=Fraction(24)),
        serves=None if serves is None else single(serves),
    )
    assert ("cassia" in keys(made)) is called
    assert ("cassia" in keys(made, BatchAsk(BatchKind.TIMES, times=Fraction(3)))) is called


def test_dust_is_told_of_a_big_batch_only() -> None:
    made = recipe(Component("It", (line(500, "g", "plain flour"),), (says("Sift.", oven=OVEN),)))
    assert keys(made) == []
    assert keys(made, BatchAsk(BatchKind.TIMES, times=Fraction(6))) == ["flour-dust"]


def test_the_source_is_printed_in_few_words() -> None:
    honey = recipe(Component("It", (line(50, "g", "honey"),), (says("Stir."),)))
    assert [caution.source for caution in sheet(honey).cautions] == ["UK NHS"]
