"""Butter by the American stick."""

from fractions import Fraction

import pytest

from sitegen.kitchen.sticks import choose_sticks


@pytest.mark.parametrize(
    ("grams", "sticks", "tablespoons"),
    [
        ("113.4", "1", "0"),  # NIST Handbook 44: a quarter of a pound
        ("227", "2", "0"),
        ("160", "1", "3.5"),
        ("57", "1/2", "0"),
        ("170", "3/2", "0"),
        ("200", "7/4", "0"),  # print says 1 3/4 sticks, not 1 stick + 6 tbsp
        ("85", "0", "6"),  # but six tablespoons, not 3/4 stick
        ("350", "3", "0.5"),  # three sticks are 2.8 % less
        ("345", "3", "0"),
        ("14", "0", "1"),
    ],
)
def test_butter_by_the_stick(grams: str, sticks: str, tablespoons: str) -> None:
    chosen = choose_sticks(Fraction(grams))
    assert chosen is not None
    assert (chosen.sticks, chosen.tablespoons) == (Fraction(sticks), Fraction(tablespoons))


@pytest.mark.parametrize("grams", ["2", "10"])
def test_butter_between_two_half_tablespoons_is_weighed(grams: str) -> None:
    assert choose_sticks(Fraction(grams)) is None


def test_a_tight_balance_takes_the_nearest_half_tablespoon_or_none() -> None:
    assert choose_sticks(Fraction(163), Fraction(1, 100)) is not None
    assert choose_sticks(Fraction(160), Fraction(1, 100)) is None
