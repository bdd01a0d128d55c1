"""Eggs by weight: sizes, grades, and counts without a fraction."""

from fractions import Fraction

import pytest

from sitegen.kitchen.eggs import EggCount, UnknownEggSize, edible_grams, grade_by_weight, whole_and_beaten
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


@pytest.mark.parametrize(
    ("region", "shell_g", "size"),
    [
        ("uk", "52.9", "small"),  # Commission Regulation (EC) No 589/2008, Article 4
        ("uk", "53", "medium"),
        ("uk", "63", "large"),
        ("us", "56.7", "large"),  # USDA AMS 56: 24 oz a dozen
    ],
)
def test_the_grade_of_an_egg_in_its_shell(tables: Tables, region: str, shell_g: str, size: str) -> None:
    assert grade_by_weight(tables.eggs, region, Fraction(shell_g)) == size


def test_an_egg_below_every_grade_has_none(tables: Tables) -> None:
    with pytest.raises(UnknownEggSize):
        grade_by_weight(tables.eggs, "us", Fraction(30))
