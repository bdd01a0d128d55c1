"""Faults that show only when a recipe is set."""

from dataclasses import replace
from functools import partial

import pytest

from sitegen import limits
from sitegen.faults import Fault, Place, Severity
from sitegen.kitchen.amounts import single
from sitegen.kitchen.method import OvenSetting
from sitegen.kitchen.recipe import BatchAsk, BatchKind, Component, PartLine, Recipe, Tin
from sitegen.sheet.build import build_sheet
from sitegen.sheet.checks import CODES, Shelf, sheet_faults
from sitegen.sheet.values import Sheet
from tests.sheet.pantry import Fraction, line, part, recipe, says, tables, takes

ROUND = Tin("round", *(Fraction(n) for n in (20, 20, 5, 20, 20)))
TRAY = Tin("tray", *(Fraction(n) for n in (30, 40, 1, 30, 40)))
SPONGE = Component("Sponge", (line(120, "g", "plain flour"),), (says("Stir the ", takes(0), "."),))


def oven(degrees: int) -> Component:
    return replace(SPONGE, steps=(says("Bake.", oven=OvenSetting(Fraction(degrees), "celsius", fan=True)),))


def waits_for(title: str, other: str) -> Component:
    return Component(title, (), (says("Stir.", after=(other,)),))


def used_too_late() -> Recipe:
    """A syrup that must be used within 10 minutes, beside something that sets for an hour after it."""
    syrup = Component("Syrup", (), (says("Boil.", hands_on_min=single(5), within_min=Fraction(10)),))
    jelly = Component("Jelly", (), (says("Set.", wait_min=single(60), after=("Syrup",)),))
    finish = Component("Finish", (), (says("Pour.", hands_on_min=single(5), after=("Syrup", "Jelly")),))
    return recipe(syrup, jelly, finish)


def batch(kind: BatchKind, **how_much: object) -> tuple[BatchAsk, ...]:
    return (BatchAsk(kind, **how_much),)  # type: ignore[arg-type]


def filled(grams: int) -> Recipe:
    """A batter in a 20 cm round tin, half of whose 1,571 ml it is to fill."""
    step = says("Pour.", fill=Fraction(1, 2))
    return replace(recipe(Component("Sponge", (line(grams, "g", "plain flour"),), (step,))), tin=ROUND)


def many_steps() -> Recipe:
    """More steps than are put on one clock."""
    return recipe(Component("Sponge", (), (says("Stir."),) * (limits.STEPS + 1)))


PROVOKED = [
    ("too-many-steps", many_steps()),
    ("overfilled-tin", filled(1700)),
    ("full-tin", filled(1100)),
    ("cannot-scale", replace(recipe(SPONGE), batches=batch(BatchKind.MAKES, makes=Fraction(90_000_000)))),
    ("cannot-scale", replace(recipe(SPONGE), tin=ROUND, batches=batch(BatchKind.TIN, tin=TRAY))),
    ("oven-out-of-range", recipe(oven(900))),
    ("plan-cannot-be-kept", used_too_late()),
    ("steps-in-a-circle", recipe(waits_for("Sponge", "Icing"), waits_for("Icing", "Sponge"))),
]


def faults(one: Recipe, *keys: str) -> tuple[Fault, ...]:
    """What is said of a recipe in those editions, or in all."""
    editions = tables().editions
    printed = tuple(editions[key] for key in keys or editions)
    shelf = Shelf({}, tables(), printed, editions["british-metric"])
    return tuple(sheet_faults(one, shelf, partial(sheet_of, shelf)))


def sheet_of(shelf: Shelf, one: Recipe, edition: str, ask: BatchAsk | None) -> Sheet:
    return build_sheet(one, shelf.bases, shelf.tables, shelf.tables.editions[edition], shelf.written, ask)


def codes(one: Recipe) -> set[str]:
    return {fault.code for fault in faults(one)}


@pytest.mark.parametrize(("code", "wrong"), PROVOKED)
def test_a_recipe_gone_wrong_gives_its_code(code: str, wrong: Recipe) -> None:
    assert code in codes(wrong)


def test_a_line_that_no_rounding_can_keep_in_balance_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("sitegen.sheet.drift.DRIFT_LIMIT", Fraction(1, 100))
    flour, sugar = line(121, "g", "plain flour"), line(133, "g", "caster sugar")
    lines = (
        replace(flour, at=Place("recipe.yaml", 14, 9, 26)),
        replace(sugar, at=Place("recipe.yaml", 15, 9, 27)),
    )
    found = faults(recipe(replace(SPONGE, lines=lines)), "us-cups")
    drifted = [fault for fault in found if fault.code == "balance-drift"]
    assert {fault.place for fault in drifted} == {lines[1].at}
    assert "'superfine sugar' drifts by" in drifted[0].sentence
    assert "% of the all-purpose flour in US cups" in drifted[0].sentence


def test_every_code_is_provoked_here() -> None:
    assert {code for code, _ in PROVOKED} | {"balance-drift"} == {row.code for row in CODES}


def test_a_sound_recipe_gives_none() -> None:
    assert codes(replace(recipe(SPONGE), tin=ROUND)) == set()


def test_what_the_source_has_told_already_is_not_told_twice() -> None:
    lost: PartLine = part("Nothing known", share=1)
    assert codes(recipe(replace(SPONGE, lines=(lost,)))) == set()


def test_every_code_has_a_cure() -> None:
    for row in CODES:
        assert row.meaning
        assert row.cure
        assert row.severity is (Severity.ADVICE if row.code == "full-tin" else Severity.ERROR)
