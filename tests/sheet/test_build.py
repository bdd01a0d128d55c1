"""A whole sheet from a small recipe."""

from dataclasses import replace
from datetime import date

import pytest

from sitegen.kitchen.method import OvenSetting, Reference, RefKind
from sitegen.kitchen.recipe import BatchAsk, BatchKind, Component, Makes, Recipe, Revision, Tin
from sitegen.kitchen.scaling import CannotScale
from sitegen.sheet.build import build_sheet
from sitegen.sheet.values import Sheet
from tests.sheet.pantry import Fraction, amount, line, minutes, part, recipe, says, tables, takes

FAN_160 = OvenSetting(Fraction(160), "celsius", fan=True)
SPONGE = Component(
    "Sponge",
    (
        line(120, "g", "plain flour"),
        line(100, "g", "caster sugar"),
        line(2, "", "eggs", "medium"),
        line("1/2", "tsp", "fine salt"),
    ),
    (
        says(
            "Whisk the ",
            takes(2, "eggs"),
            " with ",
            takes(1, "half of caster sugar", "1/2"),
            ".",
            hands_on_min=minutes(4),
        ),
        says("Fold in ", takes(0, "plain flour"), " on baking parchment.", hands_on_min=minutes(3)),
        says("Bake.", oven=FAN_160, wait_min=minutes(20, 25), until="the colour is golden"),
    ),
    keeps="2 days",
)
ICING = Component(
    "Icing",
    (part("Base cream", grams=300, base=True),),
    (says("Warm to ", Reference("60 C", RefKind.TEMPERATURE, amount=amount(60, "celsius")), "."),),
)
CREAM = Recipe(
    "base-cream",
    "Base cream",
    "A cream.",
    Makes(Fraction(600), "", Fraction(600)),
    (Component("Cream", (line(400, "g", "whole milk"), line(200, "g", "caster sugar")), (says("Boil."),)),),
)


def sheet(of: Recipe, edition: str = "british-metric", ask: BatchAsk | None = None) -> Sheet:
    editions = tables().editions
    return build_sheet(
        of, {"Base cream": CREAM}, tables(), editions[edition], editions["british-metric"], ask
    )


def amounts(of: Sheet, component: int = 0) -> list[str]:
    return [f"{one.amount} {one.name}".replace("\u00a0", " ") for one in of.components[component].lines]


def test_the_tested_batch_prints_what_is_written() -> None:
    assert amounts(sheet(recipe(SPONGE))) == [
        "120 g plain flour",
        "100 g caster sugar",
        "2 medium eggs",
        "½ tsp fine salt",
    ]


def test_twice_the_count_is_twice_of_everything() -> None:
    made = sheet(recipe(SPONGE), ask=BatchAsk(BatchKind.MAKES, makes=Fraction(24)))
    assert amounts(made) == ["240 g plain flour", "200 g caster sugar", "4 medium eggs", "1 tsp fine salt"]
    assert made.head.batch.title.replace("\u00a0", " ") == "24 cakes"
    assert made.batch_notes


def test_an_american_reads_american_words() -> None:
    made = sheet(recipe(SPONGE), "us-cups")
    assert [one.name for one in made.components[0].lines][:2] == ["all-purpose flour", "superfine sugar"]
    assert "parchment paper" in made.components[0].steps[1].text
    assert made.components[0].steps[2].until == "the color is golden"
    assert made.oven.startswith("350\u00a0°F")


def test_a_share_of_an_ingredient_is_said_and_weighed() -> None:
    step = sheet(recipe(SPONGE)).components[0].steps[0]
    assert step.text == "Whisk the eggs with half of the caster sugar."
    assert [use.amount.replace("\u00a0", " ") for use in step.uses] == ["2 medium", "50 g"]


def test_a_base_recipe_comes_in_at_the_weight_that_is_needed() -> None:
    made = sheet(recipe(SPONGE, ICING))
    assert [one.title for one in made.components] == ["Sponge", "Base cream", "Icing"]
    assert amounts(made, 1) == ["200 g whole milk", "100 g caster sugar"]
    assert amounts(made, 2) == ["300 g Base cream"]
    assert made.components[1].base_slug == "base-cream"


def test_an_exact_temperature_keeps_its_exactness_in_both_scales() -> None:
    assert "60\u00a0°C (140\u00a0°F)" in sheet(recipe(SPONGE, ICING)).components[2].steps[0].text
    assert "140\u00a0°F (60\u00a0°C)" in sheet(recipe(SPONGE, ICING), "us-cups").components[2].steps[0].text


def test_steps_are_numbered_through_and_stand_on_one_clock() -> None:
    made = sheet(recipe(SPONGE, ICING))
    assert [step.number for one in made.components for step in one.steps] == [1, 2, 3, 4, 5]
    assert made.head.times.hands_on.replace("\u00a0", " ") == "7 min"
    assert made.plan[0].start == "0:00"


def test_allergens_follow_the_law_of_the_region() -> None:
    assert sheet(recipe(SPONGE)).allergens[0] == "Contains: wheat and eggs."
    assert sheet(recipe(SPONGE), "us-cups").allergens[0] == "Contains: egg and wheat."


def test_an_ingredient_nobody_looked_up_is_named() -> None:
    part_of = Component("Top", (line(30, "g", "moonberries"),), (says("Scatter ", takes(0, "moonberries")),))
    told = sheet(recipe(SPONGE, part_of)).allergens
    assert "Allergens of moonberries are not known: read the packet." in told


def test_a_wider_tin_takes_more_at_the_same_depth() -> None:
    deep = Tin("round", *(Fraction(n) for n in (20, 20, 5, 20, 20)))
    wide = Tin("round", *(Fraction(n) for n in (23, 23, 8, 23, 23)))
    made = sheet(replace(recipe(SPONGE), tin=deep), ask=BatchAsk(BatchKind.TIN, tin=wide))
    assert made.tin.replace("\u00a0", " ") == "a 23 cm round cake tin"
    assert any("as deep as in the tested one" in note for note in made.batch_notes)
    assert not any("deeper" in note for note in made.batch_notes)


def test_what_is_in_hand_decides_the_batch() -> None:
    made = sheet(recipe(SPONGE), ask=BatchAsk(BatchKind.USING, using=line(60, "g", "plain flour")))
    assert amounts(made)[1] == "50 g caster sugar"


def test_an_absurd_batch_is_refused() -> None:
    with pytest.raises(CannotScale):
        sheet(recipe(SPONGE), ask=BatchAsk(BatchKind.MAKES, makes=Fraction(1_000_000)))


def test_the_latest_revision_dates_the_card() -> None:
    revised = replace(recipe(SPONGE), revisions=(Revision(date(2026, 7, 20), "Less sugar.", notify=True),))
    assert sheet(revised).head.modified == "2026-07-20"
    assert sheet(revised).revisions[0].day == "20 July 2026"
    assert sheet(revised, "us-cups").revisions[0].day == "July 20, 2026"


def test_what_is_named_again_is_not_taken_again() -> None:
    twice = Component(
        "Glaze",
        (line(100, "g", "caster sugar"),),
        (says("Melt the ", takes(0), "."), says("Pour the melted ", takes(0), " over.")),
    )
    steps = sheet(recipe(twice)).components[0].steps
    assert [len(step.uses) for step in steps] == [1, 0]


def test_a_weight_of_a_part_follows_the_batch() -> None:
    some = Component(
        "Icing",
        (part("Base cream", grams=300, base=True),),
        (says("Spread ", takes(0, "Base cream", own=amount(100)), "."),),
    )
    twice = sheet(recipe(some), ask=BatchAsk(BatchKind.TIMES, times=Fraction(2)))
    assert twice.components[1].steps[0].text == "Spread 200\u00a0g of the Base cream."
