"""Base recipes on a sheet: made once or for each, what is left over, and who waits for whom."""

from dataclasses import replace
from fractions import Fraction

import pytest

from sitegen.kitchen.method import Reference, RefKind
from sitegen.kitchen.recipe import BaseUse, BatchAsk, BatchKind, Component, Makes, Recipe
from sitegen.sheet.build import build_sheet
from sitegen.sheet.values import Sheet
from tests.sheet.pantry import line, minutes, part, says, tables

CREAM = Recipe(
    "base-cream",
    "Base cream",
    "A cream.",
    Makes(Fraction(600), "", Fraction(600)),
    (
        Component(
            "Cream",
            (line(400, "g", "whole milk"), line(200, "g", "caster sugar")),
            (says("Boil.", hands_on_min=minutes(5)),),
        ),
    ),
)


def takes_cream(title: str, grams: int) -> Component:
    names_it = Reference("Base cream", RefKind.COMPONENT, target="Base cream", line=0)
    return Component(
        title,
        (part("Base cream", grams=grams, base=True),),
        (says("Spread the ", names_it, ".", hands_on_min=minutes(2)),),
    )


CAKE = Recipe(
    "cake",
    "Cake",
    "A cake.",
    Makes(Fraction(1), "cake"),
    (takes_cream("Filling", 150), takes_cream("Coat", 250)),
)


def sheet(*uses: BaseUse, edition: str = "british-metric", ask: BatchAsk | None = None) -> Sheet:
    own = tables()
    written = own.editions["british-metric"]
    cake = replace(CAKE, base_uses=uses)
    return build_sheet(cake, {"Base cream": CREAM, "Cake": cake}, own, own.editions[edition], written, ask)


def test_a_base_made_for_each_stands_before_each_under_its_own_title() -> None:
    made = sheet(BaseUse("Base cream", made_once=False))
    assert [(one.title, one.makes) for one in made.components] == [
        ("Base cream, for Filling", "about 150\u00a0g"),
        ("Filling", ""),
        ("Base cream, for Coat", "about 250\u00a0g"),
        ("Coat", ""),
    ]
    assert [one.lines[0].amount for one in made.components] == [
        "100\u00a0g",
        "150\u00a0g",
        "165\u00a0g",
        "250\u00a0g",
    ]
    assert {one.base_slug for one in made.components} == {"base-cream", ""}


def test_a_step_names_its_base_as_the_baker_does() -> None:
    made = sheet(BaseUse("Base cream", made_once=False))
    assert made.components[1].steps[0].text == "Spread the Base cream."
    assert made.components[1].lines[0].name == "Base cream"


def test_each_component_waits_for_its_own_making_and_no_other() -> None:
    plan = sheet(BaseUse("Base cream", made_once=False)).plan
    start = {row.component: row.start_min for row in plan}
    assert start["Filling"] >= start["Base cream, for Filling"] + 5
    assert start["Coat"] >= start["Base cream, for Coat"] + 5
    assert len(plan) == 4


@pytest.mark.parametrize(
    ("ask", "left"),
    [(None, "about 40\u00a0g of Base cream"), (Fraction(3), "about 120\u00a0g of Base cream")],
)
def test_what_is_spare_is_stated_for_the_batch(ask: Fraction | None, left: str) -> None:
    batch = BatchAsk(BatchKind.TIMES, times=ask) if ask else None
    made = sheet(BaseUse("Base cream", spare=Fraction(1, 10)), ask=batch)
    assert made.leftovers == (left,)


def test_nothing_spare_nothing_said() -> None:
    assert sheet().leftovers == ()


def test_crumbs_are_no_leftover() -> None:
    assert sheet(BaseUse("Base cream", spare=Fraction(1, 1000))).leftovers == ()


def test_a_little_is_said_to_the_gram() -> None:
    made = sheet(BaseUse("Base cream", spare=Fraction(1, 200)))
    assert made.leftovers == ("about 2\u00a0g of Base cream",)
