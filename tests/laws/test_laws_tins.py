"""Laws of tins: limit cases of the solids, levels, and the way from one tin to another and back."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.kitchen.recipe import Tin
from sitegen.kitchen.solids import SOLIDS, box, cylinder, frustum, prismoid, tube
from sitegen.kitchen.tin_scaling import tin_scale
from sitegen.kitchen.tins import TinTable, fits_as_it_is, vessels
from sitegen.source.tables import read_tables

TINS: TinTable = read_tables()[0].tins
NO_CORE = Fraction(0)
LENGTHS = st.fractions(1, 60, max_denominator=16)
SHARES = st.fractions(0, 1, max_denominator=24)
SHAPES = st.sampled_from([shape.key for shape in TINS.shapes if shape.solid])


def tin(width: Fraction, length: Fraction, depth: Fraction, taper: Fraction = Fraction(0)) -> Tin:
    return Tin("any", width, length, depth, width - taper, length - taper)


@st.composite
def tins(draw: st.DrawFn) -> Tin:
    """Any tin with a capacity, of usual proportions, one or several."""
    shape = TINS.shape(draw(SHAPES))
    width = draw(st.fractions(8, 40, max_denominator=4))
    depth = shape.usual_depth_cm(width)
    base = max(width - shape.taper_cm, Fraction(1))
    number = draw(st.integers(1, 4))
    return Tin(shape.key, width, width, depth, base, base, number=number)


@given(LENGTHS, LENGTHS)
def test_a_frustum_with_equal_ends_is_a_cylinder(width: Fraction, depth: Fraction) -> None:
    straight = tin(width, width, depth)
    assert frustum(straight, NO_CORE, depth) == cylinder(straight, NO_CORE, depth)


@given(LENGTHS, LENGTHS)
def test_a_ring_without_a_core_and_with_a_flat_floor_is_a_cylinder(width: Fraction, depth: Fraction) -> None:
    straight = tin(width, width, depth)
    assert tube(straight, NO_CORE, depth) == cylinder(straight, NO_CORE, depth)


@given(LENGTHS, LENGTHS, LENGTHS)
def test_a_prismoid_with_equal_ends_is_a_box(width: Fraction, length: Fraction, depth: Fraction) -> None:
    straight = tin(width, length, depth)
    assert prismoid(straight, NO_CORE, depth) == box(straight, NO_CORE, depth)


@given(LENGTHS, LENGTHS, SHARES)
def test_sloping_sides_hold_less(width: Fraction, depth: Fraction, slope: Fraction) -> None:
    sloping = tin(width, width, depth, taper=slope * width)
    assert frustum(sloping, NO_CORE, depth) <= cylinder(sloping, NO_CORE, depth)
    assert prismoid(sloping, NO_CORE, depth) <= box(sloping, NO_CORE, depth)


@pytest.mark.parametrize("solid", SOLIDS)
@given(LENGTHS, LENGTHS, SHARES, SHARES)
def test_a_higher_level_never_holds_less(
    solid: str, width: Fraction, depth: Fraction, one: Fraction, other: Fraction
) -> None:
    vessel = tin(width, width, depth, taper=width / 4)
    low, high = sorted((one * depth, other * depth))
    core = Fraction(4, 11)
    assert 0 <= SOLIDS[solid](vessel, core, low) <= SOLIDS[solid](vessel, core, high)


@given(tins(), tins(), SHARES)
def test_what_is_scaled_into_another_tin_keeps_its_depth_or_its_fill(
    tested: Tin, wanted: Tin, fill: Fraction
) -> None:
    scale = tin_scale(tested, wanted, fill, TINS)
    assert scale.factor > 0
    if scale.rule == "depth":
        assert scale.depth_ratio == 1
    elif scale.rule == "fill":
        assert scale.depth_ratio == wanted.depth_cm / tested.depth_cm
    else:
        assert scale.factor == 1


@given(tins(), st.integers(2, 5), SHARES)
def test_so_many_times_the_tins_take_so_many_times_the_recipe(
    tested: Tin, number: int, fill: Fraction
) -> None:
    many = Tin(
        tested.shape,
        tested.width_cm,
        tested.length_cm,
        tested.depth_cm,
        tested.base_width_cm,
        tested.base_length_cm,
        number=tested.number * number,
    )
    scale = tin_scale(tested, many, fill, TINS)
    assert scale.factor == number == vessels(many) / vessels(tested)
    assert scale.depth_ratio == 1


@given(tins(), SHARES)
def test_a_tin_takes_its_own_recipe_as_it_is(tested: Tin, fill: Fraction) -> None:
    scale = tin_scale(tested, tested, fill, TINS)
    assert fits_as_it_is(scale.factor)
    assert scale.factor == scale.depth_ratio == 1
