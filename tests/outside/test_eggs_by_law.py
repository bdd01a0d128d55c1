"""Egg grades and weights against the laws and standards that fix them."""

from fractions import Fraction

import pytest

from sitegen.kitchen.eggs import EggTable, edible_grams, grade_by_weight
from sitegen.source.tables import read_tables

SHELL = Fraction(12, 100)  # USDA SR28, NDB 01123: refuse 12 %, shell
OUNCE_G = Fraction("28.349523125")


@pytest.fixture(scope="module")
def eggs() -> EggTable:
    return read_tables()[0].eggs


# Commission Regulation (EC) No 589/2008, Article 4, as kept in United Kingdom law.
@pytest.mark.parametrize(
    ("in_shell_g", "grade"),
    [
        ("40", "small"),
        ("52.9", "small"),
        ("53", "medium"),
        ("62.9", "medium"),
        ("63", "large"),
        ("72.9", "large"),
        ("73", "extra large"),
        ("80", "extra large"),
    ],
)
def test_a_british_egg_is_graded_by_its_weight(eggs: EggTable, in_shell_g: str, grade: str) -> None:
    assert grade_by_weight(eggs, "uk", Fraction(in_shell_g)) == grade


# The same Article; the shell by USDA SR28, NDB 01123.
@pytest.mark.parametrize(("size", "lowest_g", "highest_g"), [("medium", 53, 63), ("large", 63, 73)])
def test_a_british_egg_holds_the_middle_of_its_grade(
    eggs: EggTable, size: str, lowest_g: int, highest_g: int
) -> None:
    middle = Fraction(lowest_g + highest_g, 2) * (1 - SHELL)
    assert abs(edible_grams(eggs, "uk", size) - middle) < Fraction(1, 2)


# USDA AMS 56: the least net weight of a dozen. USDA SR28, NDB 01123: the edible weights.
@pytest.mark.parametrize(
    ("size", "dozen_oz", "in_shell_g", "edible_g"),
    [
        ("jumbo", 30, "70.9", 63),
        ("extra large", 27, "63.8", 56),
        ("large", 24, "56.7", 50),
        ("medium", 21, "49.6", 44),
        ("small", 18, "42.5", 38),
    ],
)
def test_an_american_egg_is_a_twelfth_of_the_least_dozen(
    eggs: EggTable, size: str, dozen_oz: int, in_shell_g: str, edible_g: int
) -> None:
    least = dozen_oz * OUNCE_G / 12
    assert abs(least - Fraction(in_shell_g)) < Fraction(5, 100)
    assert grade_by_weight(eggs, "us", least) == size
    assert edible_grams(eggs, "us", size) == edible_g
    assert abs(least * (1 - SHELL) - edible_g) < Fraction(7, 10)


# USDA SR28: NDB 01124 white 33 g, 01125 yolk 17 g, of a large egg.
@pytest.mark.parametrize(("part", "grams"), [("white", 33), ("yolk", 17), ("", 50)])
def test_the_parts_of_an_american_large_egg(eggs: EggTable, part: str, grams: int) -> None:
    assert edible_grams(eggs, "us", "large", part) == grams


def test_white_and_yolk_make_the_egg_of_every_row(eggs: EggTable) -> None:
    assert [row for row in eggs.rows if row.white_g + row.yolk_g != row.whole_g] == []


def test_a_white_is_about_twice_its_yolk_in_every_row(eggs: EggTable) -> None:
    """USDA's large egg: 33 to 17."""
    shares = [row.white_g / row.yolk_g for row in eggs.rows]
    assert min(shares) > Fraction(18, 10)
    assert max(shares) < Fraction(21, 10)


def test_a_british_medium_egg_answers_an_american_large_one(eggs: EggTable) -> None:
    british, american = edible_grams(eggs, "uk", "medium"), edible_grams(eggs, "us", "large")
    assert abs(british / american - 1) < Fraction(5, 100)


def test_an_editions_usual_egg_is_a_size_of_its_region() -> None:
    tables, _ = read_tables()
    for edition in tables.editions.values():
        assert edition.egg_size in tables.eggs.sizes(edition.egg_region)
