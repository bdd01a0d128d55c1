"""Tins by geometry, and what a batch needs in another tin."""

from dataclasses import replace
from fractions import Fraction

import pytest

from sitegen.kitchen.recipe import Tin
from sitegen.kitchen.tables import Tables
from sitegen.kitchen.tins import (
    NoCapacity,
    TinTable,
    UnknownShape,
    area_cm2,
    capacity_ml,
    filled_ml,
    fits_as_it_is,
    hole_ml,
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


def test_half_the_depth_of_sloping_sides_is_less_than_half_of_the_tin(tables: Tables) -> None:
    muffin = tin("muffin", "7", "3.2", base="5")
    half = filled_ml(muffin, Fraction(1, 2), tables.tins)
    as_shallow = tin("muffin", "6", "1.6", base="5")
    assert half == hole_ml(as_shallow, tables.tins)
    assert half < hole_ml(muffin, tables.tins) / 2


@pytest.mark.parametrize("fill", ["0", "1/4", "2/3", "1"])
def test_straight_sides_fill_in_step_with_the_depth(tables: Tables, fill: str) -> None:
    square = tin("square", "20", "5")
    assert filled_ml(square, Fraction(fill), tables.tins) == Fraction(fill) * 2000


def test_flutes_take_their_share(tables: Tables) -> None:
    plain = tables.tins.shape("round")
    fluted = TinTable((replace(plain, key="fluted", holds=Fraction("0.925")),), (), ())
    assert hole_ml(tin("fluted", "23", "2.5"), fluted) == Fraction("0.925") * hole_ml(
        tin("round", "23", "2.5"), tables.tins
    )


def test_half_a_ball_is_half_as_deep_as_it_is_wide(tables: Tables) -> None:
    ball = replace(tables.tins.shape("round"), depth_share=Fraction(1, 2))
    assert ball.usual_depth_cm(Fraction(7)) == Fraction("3.5")
    assert tables.tins.shape("round").usual_depth_cm(Fraction(7)) == 5


@pytest.mark.parametrize(
    ("width", "near"),
    [
        ("8.66", 9),  # 22 cm: nobody sells it in inches, and a 9 in tin takes the recipe as it is
        ("9", None),  # sold
        ("7.5", None),  # 7 and 8 in are both over a tenth of the area off
    ],
)
def test_the_width_to_buy_is_the_nearest_that_fits_as_it_is(
    tables: Tables, width: str, near: int | None
) -> None:
    sold = tuple(map(Fraction, (6, 7, 8, 9, 10)))
    assert tables.tins.sold_near(Fraction(width), sold) == near


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
