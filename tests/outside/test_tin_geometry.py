"""Capacities of tins against geometry, the charts of the trade, and GNU units."""

import math
import shutil
import subprocess
from collections.abc import Callable
from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import NOWHERE, single
from sitegen.kitchen.bake_times import bake_window
from sitegen.kitchen.recipe import Tin
from sitegen.kitchen.tins import NoCapacity, area_cm2, capacity_ml, filled_ml, hole_ml
from sitegen.source.context import Context
from sitegen.source.tables import read_tables
from sitegen.source.vessels import read_tin

TABLES = read_tables()[0]
CUP_ML = 236.5882365  # US cup, NIST Handbook 44
PINT_ML = 568.26125  # imperial pint, Units of Measurement Regulations 1995


def tin(text: str) -> Tin:
    return read_tin(text, NOWHERE, Context(TABLES))


def ml(text: str) -> float:
    return float(capacity_ml(tin(text), TABLES.tins))


def gnu_units(asked: str, unit: str) -> float:
    program = shutil.which("units")
    if program is None:
        pytest.fail("GNU units is missing: install the package 'units'")
    said = subprocess.run([program, "--terse", asked, unit], capture_output=True, text=True, check=True)
    return float(said.stdout)


# GNU units knows the circle and the ball.
@pytest.mark.parametrize(
    ("text", "asked"),
    [
        ("20 cm round", "circlearea(10 cm) * 5 cm"),
        ("two 23 cm round, 4 cm deep", "2 * circlearea(11.5 cm) * 4 cm"),
        ("9 in springform, 3 in deep", "circlearea(4.5 in) * 3 in"),
        ("7 cm hemisphere", "spherevolume(3.5 cm) / 2"),
        ("6-hole 4 cm hemisphere", "6 * spherevolume(2 cm) / 2"),
        ("10 in tube, 4 in deep", "(circlearea(5 in) - circlearea(1.5 in)) * 4 in"),
        ("13 x 9 in rectangle, 2 in deep", "13 in * 9 in * 2 in"),
    ],
)
def test_a_solid_holds_what_gnu_units_says(text: str, asked: str) -> None:
    assert ml(text) == pytest.approx(gnu_units(asked, "ml"), rel=1e-6)


# Geometry in its own words: the sum of the cross-sections of thin slices.
def summed(depth_cm: Fraction, area_cm2_at: Callable[[float], float], slices: int = 2000) -> float:
    """ml. area_cm2_at: the cross-section at a share of the depth, from the floor."""
    thickness = float(depth_cm) / slices
    return sum(area_cm2_at((index + 0.5) / slices) for index in range(slices)) * thickness


def between(low: Fraction, high: Fraction, share: float) -> float:
    return float(low) + float(high - low) * share


@pytest.mark.parametrize("text", ["muffin 12", "mini-muffin 24", "9 in pie plate", "2 pint pudding basin"])
def test_a_cone_frustum_is_the_sum_of_its_rounds(text: str) -> None:
    hole = tin(text)

    def area(share: float) -> float:
        return math.pi / 4 * between(hole.base_width_cm, hole.width_cm, share) ** 2

    assert float(hole_ml(hole, TABLES.tins)) == pytest.approx(summed(hole.depth_cm, area), rel=1e-5)


@pytest.mark.parametrize("text", ["900 g loaf", "450 g loaf"])
def test_a_prismoid_is_the_sum_of_its_oblongs(text: str) -> None:
    loaf = tin(text)

    def area(share: float) -> float:
        width = between(loaf.base_width_cm, loaf.width_cm, share)
        return width * between(loaf.base_length_cm, loaf.length_cm, share)

    assert float(hole_ml(loaf, TABLES.tins)) == pytest.approx(summed(loaf.depth_cm, area), rel=1e-5)


def test_half_a_ball_is_the_sum_of_its_rounds_up_to_any_level() -> None:
    ball = tin("8 cm hemisphere")
    radius = 4.0
    for fill in (Fraction(1, 4), Fraction(1, 2), Fraction(1)):

        def area(share: float, depth: float = radius * float(fill)) -> float:
            return math.pi * (radius**2 - (radius - share * depth) ** 2)

        level = ball.depth_cm * fill
        assert float(filled_ml(ball, fill, TABLES.tins)) == pytest.approx(summed(level, area), rel=1e-5)


def test_a_ring_with_a_half_round_floor_is_half_a_torus_under_a_band() -> None:
    """Torus: 2 pi^2 R r^2. A 22 cm ring with a core of 8 cm: r = 3.5 cm, R = 7.5 cm, band 1.5 cm high."""
    half_torus = math.pi**2 * 7.5 * 3.5**2
    band = math.pi * (11**2 - 4**2) * 1.5
    assert ml("ring 22 cm") == pytest.approx(half_torus + band, rel=1e-6)


# Published charts of US pan sizes, in US cups: what they say of a pan, and the most that plain geometry of
# its nominal size runs over the upper figure (nominal sizes are outer ones, and corners are round).
@pytest.mark.parametrize(
    ("text", "low", "high", "over"),
    [
        ("8 in round, 2 in deep", "6", "7", "1.00"),
        ("9 in round, 2 in deep", "8", "26/3", "1.02"),
        ("10 in round, 2 in deep", "43/4", "11", "1.00"),
        ("8 in square, 2 in deep", "8", "8", "1.11"),
        ("9 in square, 2 in deep", "10", "10", "1.13"),
        ("13 x 9 in rectangle, 2 in deep", "14", "15", "1.09"),
        ("15 x 10 in rectangle, 1 in deep", "10", "10", "1.04"),
        ("9 in springform, 2 1/2 in deep", "10", "10", "1.11"),
        ("9 in springform, 3 in deep", "12", "12", "1.11"),
        ("10 in tube, 4 in deep", "16", "16", "1.24"),
        ("jumbo muffin", "3/4", "1", "1.07"),
    ],
)
def test_a_pan_against_the_charts(text: str, low: str, high: str, over: str) -> None:
    cups = ml(text) / tin(text).holes / CUP_ML
    assert cups >= float(Fraction(low))
    assert cups <= float(Fraction(high)) * float(over)


# Common practice, and what labels of such tins say.
@pytest.mark.parametrize(
    ("text", "low_ml", "high_ml"),
    [
        ("20 cm round, 5 cm deep", 1550, 1590),  # 1.57 l
        ("900 g loaf", 1400, 1900),
        ("450 g loaf", 700, 900),
        ("muffin 12", 12 * 80, 12 * 100),
        ("bun", 12 * 40, 12 * 60),
        ("mini-muffin 24", 24 * 25, 24 * 30),
        ("ring 22 cm", 1200, 1500),
        ("9 in pie plate", 947, 1200),  # 4 US cups
    ],
)
def test_a_tin_holds_what_its_label_says(text: str, low_ml: int, high_ml: int) -> None:
    assert low_ml <= ml(text) <= high_ml


# A basin of so many imperial pints holds them.
@pytest.mark.parametrize(("name", "pints"), [("1 pint", 1), ("2 pint", 2), ("3 pint", 3)])
def test_a_pudding_basin_holds_its_pints(name: str, pints: int) -> None:
    assert ml(f"{name} pudding basin") == pytest.approx(pints * PINT_ML, rel=0.01)


# Nearest swaps by area, common practice: within 5 %.
@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        ("20 cm round", "18 cm square", 0.97),
        ("23 cm round", "20 cm square", 1.04),
        ("8 in round", "20 cm round", 1.03),
        ("9 in round", "23 cm round", 0.99),
        ("13 x 9 in rectangle", "30 x 25 cm rectangle", 1.01),
        ("20 cm square", "20 cm round", 1.27),  # a square holds 1.27 rounds of its width
    ],
)
def test_tins_that_stand_in_for_each_other(one: str, other: str, ratio: float) -> None:
    found = area_cm2(tin(one), TABLES.tins) / area_cm2(tin(other), TABLES.tins)
    assert float(found) == pytest.approx(ratio, abs=0.01)


# Common practice: how many holes a tin of its kind has.
@pytest.mark.parametrize(("text", "holes"), [("muffin", 12), ("bun", 12), ("mini-muffin", 24)])
def test_a_tin_has_the_holes_that_its_kind_is_sold_with(text: str, holes: int) -> None:
    assert tin(text).holes == holes


# Common practice: grams of batter for a tin, against what it holds at the fill that the trade names.
@pytest.mark.parametrize(
    ("text", "fill", "density", "low_g", "high_g"),
    [
        ("muffin 12", "2/3", 0.95, 12 * 45, 12 * 75),  # a cupcake case, two-thirds full
        ("muffin 12", "3/4", 0.95, 12 * 50, 12 * 85),  # to three-quarters
        ("bun", "3/4", 0.95, 12 * 30, 12 * 40),  # a fairy-cake case
        ("mini-muffin 24", "2/3", 0.95, 24 * 12, 24 * 20),  # a mini case
        ("20 cm sandwich, 4 cm deep", "2/5", 0.85, 400, 530),  # a sandwich layer
    ],
)
def test_a_tin_at_its_usual_fill_holds_its_usual_batter(
    text: str, fill: str, density: float, low_g: int, high_g: int
) -> None:
    one = tin(text)
    held = float(filled_ml(one, Fraction(fill), TABLES.tins)) * one.holes * density
    assert low_g <= held <= high_g


# Common practice: dough for a loaf tin, 1 g to 2.2 to 2.6 ml level with the rim, at most 0.65 g/ml above it.
@pytest.mark.parametrize(("text", "low_g", "high_g"), [("900 g loaf", 850, 950), ("450 g loaf", 420, 500)])
def test_the_dough_of_a_loaf_tin_is_within_what_a_loaf_may_be(text: str, low_g: int, high_g: int) -> None:
    (bread,) = (row for row in TABLES.batters if row.key == "bread")
    assert bread.most_weight is not None
    most = ml(text) * float(bread.most_weight)
    assert low_g < most
    assert high_g <= most * 1.02


# Heat equation: the depth alone sets the time of a flat layer; published baking of genoise found time as the
# square of the length (American Journal of Physics 74 (6), 2006).
@pytest.mark.parametrize(
    ("ratio", "square"), [("5/4", 1.56), ("3/4", 0.56), ("3/2", 2.25), ("1", 1.0), ("5/8", 0.39)]
)
def test_the_far_end_of_the_window_is_the_square_of_the_depth(ratio: str, square: float) -> None:
    window = bake_window(single(100), Fraction(ratio)).expected
    ends = (float(window.low) / 100, float(window.high) / 100)
    assert square == pytest.approx(ends[1] if Fraction(ratio) >= 1 else ends[0], abs=0.01)


def test_a_flat_tray_holds_nothing() -> None:
    with pytest.raises(NoCapacity):
        hole_ml(tin("baking tray"), TABLES.tins)
