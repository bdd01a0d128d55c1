"""What another depth does to a bake."""

from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import Span
from sitegen.kitchen.bake_times import bake_window


def minutes(low: str | int, high: str | int) -> Span:
    return Span(Fraction(low), Fraction(high))


@pytest.mark.parametrize(
    ("tested", "ratio", "expected", "first_look"),
    [
        (minutes(30, 34), "1", minutes(30, 34), "24"),
        (minutes(40, 44), "5/4", minutes(50, "68.75"), "40"),  # a quarter deeper: up to half as long again
        (minutes(40, 44), "3/4", minutes("22.5", 33), "18"),  # a quarter shallower: from a bit over half
        (minutes(20, 20), "2", minutes(40, 80), "32"),
    ],
)
def test_the_window_runs_from_the_first_to_the_second_power(
    tested: Span, ratio: str, expected: Span, first_look: str
) -> None:
    window = bake_window(tested, Fraction(ratio))
    assert window.expected == expected
    assert window.first_look == Fraction(first_look)
