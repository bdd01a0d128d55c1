"""How far rounding has moved a sheet from the tested recipe."""

from dataclasses import replace

import pytest

from sitegen.kitchen.recipe import Component
from sitegen.sheet.build import build_sheet
from sitegen.sheet.drift import ComponentDrift, LineDrift, SheetDrift, drift_points, sheet_drift
from sitegen.sheet.values import SheetLine
from tests.sheet.pantry import Fraction, line, recipe, says, tables


def printed(name: str, exact: int, scooped: int, *, is_flour: bool = False) -> SheetLine:
    return SheetLine("", name, exact_g=Fraction(exact), printed_g=Fraction(scooped), is_flour=is_flour)


FLOUR, SUGAR = printed("flour", 200, 200, is_flour=True), printed("sugar", 100, 106)


def test_a_share_is_held_against_all_flour() -> None:
    assert drift_points((FLOUR, SUGAR)) == (0, 3)


def test_a_line_without_a_weight_has_no_drift() -> None:
    lemon = SheetLine("1", "lemon")
    assert drift_points((FLOUR, lemon, SUGAR)) == (0, None, 3)


def drifted(edition: str, *lines: str) -> SheetDrift:
    component = Component(
        "Sponge",
        tuple(line(*text.split(" ", 2)) for text in lines),
        (says("Stir."),),  # type: ignore[arg-type]
    )
    editions = tables().editions
    sheet = build_sheet(recipe(component), {}, tables(), editions[edition], editions["british-metric"])
    return sheet_drift(sheet)


def test_the_tested_batch_in_its_own_edition_has_not_moved() -> None:
    found = drifted("british-metric", "123 g plain flour", "77 g caster sugar")
    assert [each.points for each in found.lines] == [0, 0]
    assert not found.is_too_far


def test_before_and_after_are_shares_of_the_flour() -> None:
    (part,) = drifted("us-cups", "125 g plain flour", "103 g caster sugar").components
    flour, sugar = part.lines
    assert part.base == "all-purpose flour"
    assert (flour.before, flour.after) == (100, 100)
    assert sugar.before == Fraction(103, 125) * 100  # a cup of 200 g, less a little
    assert sugar.after == Fraction(100, 125) * 100  # half a cup
    assert sugar.points == sugar.after - sugar.before


def test_without_flour_the_heaviest_is_the_base() -> None:
    (part,) = drifted("us-cups", "100 g unsalted butter", "205 g icing sugar").components
    assert part.base == "powdered sugar"


def test_a_part_with_one_weight_has_no_balance() -> None:
    assert drifted("us-cups", "100 g unsalted butter").components == ()


def test_the_worst_line_is_that_which_moved_furthest_either_way() -> None:
    one = LineDrift("flour", "1 cup", Fraction(100), Fraction(100), Fraction(0), 1)
    down = replace(one, name="milk", points=Fraction(-5))
    up = replace(one, name="sugar", points=Fraction(3))
    found = SheetDrift("cake", "us-cups", "12 cakes", (ComponentDrift("Sponge", "flour", (one, down, up)),))
    assert found.worst is down
    assert found.is_too_far


@pytest.mark.parametrize(("points", "is_too_far"), [("4", False), ("4.01", True), ("-4.01", True)])
def test_over_4_points_is_too_far(points: str, is_too_far: bool) -> None:
    """Common practice."""
    assert LineDrift("milk", "", Fraction(50), Fraction(50), Fraction(points), 0).is_too_far is is_too_far
