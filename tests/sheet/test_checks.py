"""Faults that show only when a recipe is set."""

from dataclasses import replace

import pytest

from sitegen.faults import Severity
from sitegen.kitchen.recipe import BatchAsk, BatchKind, Component, OvenSetting, PartLine, Recipe, Tin
from sitegen.sheet.checks import CODES, Shelf, sheet_faults
from tests.sheet.pantry import Fraction, line, part, recipe, says, tables, takes

ROUND = Tin("round", *(Fraction(n) for n in (20, 20, 5, 20, 20)))
TRAY = Tin("tray", *(Fraction(n) for n in (30, 40, 1, 30, 40)))
SPONGE = Component("Sponge", (line(120, "g", "plain flour"),), (says("Stir the ", takes(0), "."),))


def oven(degrees: int) -> Component:
    return replace(SPONGE, steps=(says("Bake.", oven=OvenSetting(Fraction(degrees), "celsius", fan=True)),))


def waits_for(title: str, other: str) -> Component:
    return Component(title, (), (says("Stir.", after=(other,)),))


def batch(kind: BatchKind, **how_much: object) -> tuple[BatchAsk, ...]:
    return (BatchAsk(kind, **how_much),)  # type: ignore[arg-type]


PROVOKED = [
    ("cannot-scale", replace(recipe(SPONGE), batches=batch(BatchKind.MAKES, makes=Fraction(90_000_000)))),
    ("cannot-scale", replace(recipe(SPONGE), tin=ROUND, batches=batch(BatchKind.TIN, tin=TRAY))),
    ("oven-out-of-range", recipe(oven(900))),
    ("steps-in-a-circle", recipe(waits_for("Sponge", "Icing"), waits_for("Icing", "Sponge"))),
]


def codes(one: Recipe) -> set[str]:
    editions = tables().editions
    shelf = Shelf({}, tables(), tuple(editions.values()), editions["british-metric"])
    return {fault.code for fault in sheet_faults(one, shelf)}


@pytest.mark.parametrize(("code", "wrong"), PROVOKED)
def test_a_recipe_gone_wrong_gives_its_code(code: str, wrong: Recipe) -> None:
    assert code in codes(wrong)


def test_a_line_that_no_rounding_can_keep_in_balance_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("sitegen.sheet.checks.DRIFT_LIMIT", Fraction(-1))
    assert "balance-drift" in codes(recipe(SPONGE))


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
        assert row.severity is Severity.ERROR
