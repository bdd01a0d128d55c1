"""Bands of a rounding rule: the first that holds a figure decides."""

from fractions import Fraction

import pytest

from sitegen.kitchen.label_rounding import Band, Rounded, RoundingRule

HALF = Fraction(1, 2)
RULE = RoundingRule(
    (
        Band(Fraction(50), False, Fraction(10)),
        Band(Fraction(5), True, Fraction(5)),
        Band(Fraction(1), True, None, Fraction(5)),
    )
)


@pytest.mark.parametrize(
    ("value", "figure", "step"),
    [("55", 60, 10), ("54.9", 50, 10), ("50.1", 50, 10), ("50", 50, 5), ("7.5", 10, 5), ("5", 5, 5)],
)
def test_a_figure_is_rounded_to_its_bands_step_halves_upwards(value: str, figure: int, step: int) -> None:
    assert RULE.rounded(Fraction(value)) == Rounded(Fraction(figure), Fraction(step))


@pytest.mark.parametrize("value", ["4.99", "1"])
def test_a_trace_is_only_said_to_be_less(value: str) -> None:
    assert RULE.rounded(Fraction(value)) == Rounded(Fraction(5), is_less_than=True)


@pytest.mark.parametrize("value", ["0.99", "0"])
def test_what_no_band_holds_counts_as_nothing(value: str) -> None:
    assert RULE.rounded(Fraction(value)) == Rounded(Fraction(0))
