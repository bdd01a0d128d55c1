"""Egg grades and weights against the laws and standards that fix them."""

import shutil
import subprocess
from fractions import Fraction

import pytest

from sitegen.kitchen.eggs import EggCount, EggTable, edible_grams, shell_grade, whole_and_beaten
from sitegen.source.tables import read_tables

SHELL = Fraction(12, 100)  # USDA SR28, NDB 01123: refuse 12 %, shell
OUNCE_G = Fraction("28.349523125")


@pytest.fixture(scope="module")
def eggs() -> EggTable:
    return read_tables()[0].eggs


def grades_of(eggs: EggTable, region: str, in_shell_g: Fraction) -> list[str]:
    """Every size of a region whose grade an egg of that weight falls into: by law, one."""
    found = []
    for size in eggs.sizes(region):
        grade = shell_grade(eggs, region, size)
        if grade.from_g <= in_shell_g and (grade.under_g is None or in_shell_g < grade.under_g):
            found.append(size)
    return found


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
    assert grades_of(eggs, "uk", Fraction(in_shell_g)) == [grade]


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
    assert grades_of(eggs, "us", least) == [size]
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


# GNU units 2.22, definitions.units: a large US egg without its shell, of a cookery book. Its white is
# 10 % lighter and its yolk 9 % heavier than USDA's; the whole egg is the same.
@pytest.mark.parametrize(
    ("name", "part", "within"), [("egg", "", "0"), ("eggwhite", "white", "0.1"), ("eggyolk", "yolk", "0.1")]
)
def test_an_american_large_egg_against_gnu_units(eggs: EggTable, name: str, part: str, within: str) -> None:
    program = shutil.which("units")
    if program is None:
        pytest.fail("GNU units is missing: install the package 'units'")
    said = subprocess.run([program, "--terse", name, "g"], capture_output=True, text=True, check=True)
    published = Fraction(said.stdout.strip())
    assert abs(edible_grams(eggs, "us", "large", part) - published) <= Fraction(within) * published


# USDA SR28, NDB 01123: a US cup of whole egg weighs 243 g, 4.86 large ones.
def test_a_cup_of_egg_is_nearly_five_large_ones(eggs: EggTable) -> None:
    assert 243 / edible_grams(eggs, "us", "large") == Fraction("4.86")


# Common practice: a count is turned by mass between regions, and a fraction is weighed from a beaten egg.
@pytest.mark.parametrize(
    ("count", "of_region", "of_size", "region", "size", "part", "whole", "beaten_g"),
    [
        (4, "uk", "medium", "us", "large", "", 4, 0),  # 204 g: four of 50 g, and 4 g that nobody weighs
        (4, "uk", "large", "us", "large", "", 4, 40),  # 240 g: a UK large egg is no US large egg
        (3, "us", "large", "uk", "medium", "", 3, 0),  # 150 g: nine tenths of the third make it a whole one
        (6, "us", "large", "uk", "medium", "white", 5, 28),  # 198 g of white at 34 g each
        (6, "uk", "medium", "au", "extra large", "", 5, 46),  # 306 g at 52 g each
        (7, "uk", "medium", "us", "large", "yolk", 7, 0),
    ],
)
def test_eggs_of_one_region_in_eggs_of_another(
    eggs: EggTable,
    count: int,
    of_region: str,
    of_size: str,
    region: str,
    size: str,
    part: str,
    whole: int,
    beaten_g: int,
) -> None:
    grams = count * edible_grams(eggs, of_region, of_size, part)
    assert whole_and_beaten(grams, edible_grams(eggs, region, size, part)) == EggCount(
        whole, Fraction(beaten_g)
    )
