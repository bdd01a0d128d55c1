"""Tins by geometry, and what a batch needs in another tin."""

from fractions import Fraction

import pytest

from sitegen.kitchen.recipe import Tin
from sitegen.kitchen.tables import Tables
from sitegen.kitchen.tins import (
    NoCapacity,
    UnknownShape,
    area_cm2,
    capacity_ml,
    depth_ratio,
    fits_as_it_is,
    hole_ml,
    tin_factor,
)


def tin(shape: str, top: str, depth: str, base: str = "", holes: int = 1, number: int = 1) -> Tin:
    """top, base: 'width' or 'width x length', cm."""
    width, length = _sides(top)
    base_width, base_length = _sides(base or top)
    return Tin(shape, width, length, Fraction(depth), base_width, base_length, holes, number)


def _sides(size: str) -> tuple[Fraction, Fraction]:
    width, _, length = size.partition(" x ")
    return Fraction(width), Fraction(length or width)


@pytest.mark.parametrize(
    ("vessel", "ml"),
    [
        (tin("round", "20", "4"), 1257),  # geometry, as are all: inside measures
        (tin("round", "23", "7.5"), 3116),
        (tin("square", "20", "5"), 2000),
        (tin("rectangle", "20 x 30", "4"), 2400),
        (tin("loaf", "11.5 x 21.5", "6.5", base="10 x 20"), 1451),  # UK 900 g loaf
        (tin("loaf", "9.5 x 16", "6", base="8 x 14.5"), 802),  # UK 450 g loaf
        (tin("muffin", "7", "3.2", base="5"), 91),
        (tin("muffin", "4.8", "2", base="3.6"), 28),
        (tin("ring", "22", "5"), 1402),  # half-round floor, core 8 cm
        (tin("tube", "25.4", "10.16"), 4685),  # US 10 x 4 in, core 3 in
    ],
)
def test_capacity_to_the_millilitre(tables: Tables, vessel: Tin, ml: int) -> None:
    assert round(hole_ml(vessel, tables.tins)) == ml


@pytest.mark.parametrize(
    ("vessel", "us_cups", "low", "high"),
    [
        # Charts in US household use: most print less than plain geometry gives, since corners are round.
        (tin("round", "20.32", "5.08"), "7.0", 6, 7),
        (tin("round", "22.86", "5.08"), "8.8", 8, 9),
        (tin("square", "20.32", "5.08"), "8.9", 8, 9),
        (tin("rectangle", "22.86 x 33.02", "5.08"), "16.2", 14, 17),
    ],
)
def test_capacity_against_the_charts(tables: Tables, vessel: Tin, us_cups: str, low: int, high: int) -> None:
    cups = capacity_ml(vessel, tables.tins) / tables.measures.unit_ml("us_cup")
    assert f"{float(cups):.1f}" == us_cups
    assert low <= round(cups, 1) <= high


def test_all_holes_of_all_tins_count(tables: Tables) -> None:
    one, many = tin("muffin", "7", "3.2", base="5"), tin("muffin", "7", "3.2", base="5", holes=12, number=2)
    assert capacity_ml(many, tables.tins) == 24 * hole_ml(one, tables.tins)


def test_a_shallow_ring_is_all_floor(tables: Tables) -> None:
    shallow, deeper = tin("ring", "22", "3.5"), tin("ring", "22", "4.5")
    added = hole_ml(deeper, tables.tins) - hole_ml(shallow, tables.tins)
    assert round(added) == 330  # a band 7 cm wide and 1 cm deep round a mean diameter of 15 cm


def test_a_wider_tin_of_the_same_depth_goes_by_area(tables: Tables) -> None:
    factor = tin_factor(tin("round", "20", "4"), tin("round", "23", "4"), tables.tins)
    assert factor == Fraction(23, 20) ** 2
    assert depth_ratio(tin("round", "20", "4"), tin("round", "23", "4")) == 1


def test_a_square_holds_1_27_rounds_of_its_width(tables: Tables) -> None:
    factor = tin_factor(tin("round", "20", "5"), tin("square", "20", "5"), tables.tins)
    assert round(factor, 2) == Fraction(127, 100)


def test_the_area_is_taken_half_way_up(tables: Tables) -> None:
    assert round(area_cm2(tin("round", "20", "4"), tables.tins)) == 314
    assert area_cm2(tin("loaf", "11 x 21", "6", base="9 x 19"), tables.tins) == pytest.approx(200.3, abs=0.1)


def test_a_tray_holds_no_batter(tables: Tables) -> None:
    with pytest.raises(NoCapacity) as refused:
        capacity_ml(tin("tray", "30 x 40", "1"), tables.tins)
    assert refused.value.shape == "tray"


def test_an_unknown_shape_names_the_known_ones(tables: Tables) -> None:
    with pytest.raises(UnknownShape) as refused:
        capacity_ml(tin("hexagon", "20", "4"), tables.tins)
    assert "round" in refused.value.known


@pytest.mark.parametrize(("factor", "fits"), [("0.89", False), ("0.9", True), ("1.1", True), ("1.11", False)])
def test_within_a_tenth_it_fits_as_it_is(factor: str, fits: bool) -> None:
    assert fits_as_it_is(Fraction(factor)) is fits


def test_tins_are_found_by_the_trade_words(tables: Tables) -> None:
    by_word, by_name = tables.tins.shape_written("Baking tray"), tables.tins.tin_named("12-hole muffin tin")
    assert by_word is not None
    assert by_word.key == "tray"
    assert by_name is not None
    assert by_name.tin.holes == 12
    assert tables.tins.shape_written("bucket") is None
    assert tables.tins.tin_named("bucket") is None


def test_nominal_sizes_go_both_ways(tables: Tables) -> None:
    assert tables.tins.nominal_inches(Fraction(20)) == 8
    assert tables.tins.nominal_cm(Fraction(9)) == 23
    assert tables.tins.nominal_inches(Fraction(21)) is None
    assert tables.tins.nominal_cm(Fraction(2)) is None


def test_a_region_without_words_of_its_own_says_the_british_ones(tables: Tables) -> None:
    assert tables.tins.shape("round").words_in("au").one == "{size} round tin"
