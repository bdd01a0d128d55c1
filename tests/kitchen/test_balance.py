"""Percentages on flour, and how far rounding moves them."""

from fractions import Fraction

from sitegen.kitchen.balance import baker_percentages, drift


def grams(*weights: int) -> tuple[Fraction, ...]:
    return tuple(map(Fraction, weights))


def test_percentages_are_on_the_flour() -> None:
    assert baker_percentages(grams(500, 320, 10), Fraction(500)) == grams(100, 64, 2)


def test_drift_is_held_against_all_flour_together() -> None:
    points = drift(grams(300, 200, 100), grams(300, 200, 110), (True, True, False))
    assert points == grams(0, 0, 2)


def test_flour_that_is_rounded_up_thins_everything_else() -> None:
    points = drift(grams(100, 100), grams(125, 100), (True, False))
    assert points == grams(0, -20)


def test_without_flour_the_heaviest_line_is_the_base() -> None:
    assert drift(grams(50, 200), grams(60, 200), (False, False)) == grams(5, 0)


def test_nothing_has_no_drift() -> None:
    assert drift((), (), ()) == ()
    assert drift(grams(0), grams(0), (True,)) == grams(0)


def test_printed_away_altogether_is_no_division_by_nothing() -> None:
    assert drift(grams(10, 5), grams(0, 5), (True, False)) == grams(0, 0)
