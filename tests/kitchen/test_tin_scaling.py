"""From the tested tin to another: by area where the depth is kept, by capacity where the fill is."""

from dataclasses import replace
from fractions import Fraction

import pytest

from sitegen.kitchen.recipe import Tin
from sitegen.kitchen.tables import Tables
from sitegen.kitchen.tin_scaling import TinRule, tin_scale

HALF = Fraction(1, 2)


def tin(shape: str, width: str, depth: str, length: str = "") -> Tin:
    """Straight sides, inside measures in cm."""
    across, along = Fraction(width), Fraction(length or width)
    return Tin(shape, across, along, Fraction(depth), across, along)


SQUARE_20 = tin("square", "20", "5")


def test_a_wider_round_of_the_same_depth_goes_by_area(tables: Tables) -> None:
    scale = tin_scale(tin("round", "20", "4"), tin("round", "23", "4"), HALF, tables.tins)
    assert scale.factor == Fraction(23, 20) ** 2
    assert scale.depth_ratio == 1
    assert scale.rule is TinRule.DEPTH


def test_brownies_lie_as_deep_in_a_shallower_tin(tables: Tables) -> None:
    """20 cm square, 5 cm deep, to 33 x 23 cm, 4 cm deep: 400 to 759 cm2, whatever the tins could hold."""
    scale = tin_scale(SQUARE_20, tin("rectangle", "23", "4", "33"), HALF, tables.tins)
    assert scale.factor == Fraction(759, 400)
    assert scale.depth_ratio == 1


def test_a_tin_too_shallow_for_the_depth_is_filled_as_the_tested_one(tables: Tables) -> None:
    """Four fifths of 7.5 cm do not go into 4 cm: as full as before, and so about half as deep."""
    scale = tin_scale(tin("round", "20", "7.5"), tin("round", "20", "4"), Fraction(4, 5), tables.tins)
    assert scale.rule is TinRule.FILL
    assert scale.factor == scale.depth_ratio == Fraction(4) / Fraction("7.5")


def test_a_recipe_that_says_no_fill_is_taken_for_two_thirds(tables: Tables) -> None:
    deep, wanted = tin("round", "20", "6"), tin("round", "25", "5")
    assert tin_scale(deep, wanted, None, tables.tins).rule is TinRule.DEPTH  # 4 cm of 5
    assert tin_scale(deep, replace(wanted, depth_cm=Fraction(3)), None, tables.tins).rule is TinRule.FILL


def test_a_loaf_is_filled_as_the_tested_tin(tables: Tables) -> None:
    scale = tin_scale(tin("loaf", "11", "6.5", "21"), tin("loaf", "9", "6", "16"), HALF, tables.tins)
    assert scale.rule is TinRule.FILL
    assert scale.factor == Fraction(9 * 16 * 6) / (11 * 21 * Fraction("6.5"))
    assert scale.depth_ratio == 6 / Fraction("6.5")


def test_from_a_cake_to_a_loaf_the_capacities_count(tables: Tables) -> None:
    scale = tin_scale(SQUARE_20, tin("loaf", "11", "6.5", "21"), HALF, tables.tins)
    assert scale.rule is TinRule.FILL
    assert scale.factor == 11 * 21 * Fraction("6.5") / 2000


@pytest.mark.parametrize(("wanted", "spread"), [("20.5", "0.95"), ("19.5", "1.05")])
def test_within_a_tenth_the_recipe_stays_as_it_is_and_spreads(
    tables: Tables, wanted: str, spread: str
) -> None:
    scale = tin_scale(SQUARE_20, tin("square", wanted, "5"), HALF, tables.tins)
    assert scale.factor == 1
    assert scale.rule is TinRule.AS_IT_IS
    assert round(scale.depth_ratio, 2) == Fraction(spread)


def test_there_and_back_is_the_recipe_again(tables: Tables) -> None:
    one, other = tin("round", "18", "5"), tin("square", "25", "5")
    there = tin_scale(one, other, HALF, tables.tins)
    back = tin_scale(other, one, HALF, tables.tins)
    assert there.factor * back.factor == 1


def test_a_square_takes_1_27_rounds_of_its_width(tables: Tables) -> None:
    scale = tin_scale(tin("round", "20", "5"), SQUARE_20, HALF, tables.tins)
    assert round(scale.factor, 2) == Fraction("1.27")
