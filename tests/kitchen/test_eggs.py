"""Eggs by weight: sizes, grades, and counts without a fraction."""

from fractions import Fraction

import pytest

from sitegen.kitchen.eggs import (
    EggCount,
    ShellGrade,
    UnknownEggSize,
    edible_grams,
    shell_grade,
    whole_and_beaten,
)
from sitegen.kitchen.tables import Tables


@pytest.mark.parametrize(
    ("region", "size", "part", "grams"),
    [
        ("uk", "medium", "", 51),
        ("uk", "medium", "yolk", 17),
        ("us", "large", "", 50),
        ("us", "large", "white", 33),
    ],
)
def test_an_egg_without_its_shell(tables: Tables, region: str, size: str, part: str, grams: int) -> None:
    assert edible_grams(tables.eggs, region, size, part) == grams


def test_an_unknown_size_names_the_known_ones(tables: Tables) -> None:
    with pytest.raises(UnknownEggSize) as refused:
        edible_grams(tables.eggs, "us", "enormous")
    assert refused.value.known == ("medium", "large")


@pytest.mark.parametrize(
    ("grams", "one", "whole", "beaten"),
    [
        ("102", "51", 2, "0"),
        ("76.5", "51", 1, "25.5"),  # one and a half: one and a weighed half
        ("106", "51", 2, "0"),  # a rest under a tenth is dropped
        ("99", "51", 2, "0"),  # a rest over nine tenths makes a whole one
        ("25.5", "51", 0, "25.5"),
        ("4", "51", 0, "4"),  # beside no whole egg nothing is dropped
        ("34", "17", 2, "0"),  # yolks alike
    ],
)
def test_whole_eggs_and_a_weighed_rest(grams: str, one: str, whole: int, beaten: str) -> None:
    assert whole_and_beaten(Fraction(grams), Fraction(one)) == EggCount(whole, Fraction(beaten))


def test_a_grade_reaches_up_to_the_next(tables: Tables) -> None:
    # Commission Regulation (EC) No 589/2008, Article 4
    assert shell_grade(tables.eggs, "uk", "medium") == ShellGrade(Fraction(53), Fraction(63))


def test_the_smallest_and_the_largest_grade_are_open(tables: Tables) -> None:
    assert shell_grade(tables.eggs, "uk", "small") == ShellGrade(Fraction(0), Fraction(53))
    assert shell_grade(tables.eggs, "uk", "large").under_g is None


def test_a_grade_of_another_region_is_unknown(tables: Tables) -> None:
    with pytest.raises(UnknownEggSize) as refused:
        shell_grade(tables.eggs, "us", "small")
    assert refused.value.known == ("medium", "large")
