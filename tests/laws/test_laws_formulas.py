"""Laws of doughs: a formula is of the dough, not of the batch, and loses nothing."""

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from sitegen.kitchen.balances import flour_and_water, unusual
from sitegen.kitchen.contents import Contents, Held
from sitegen.kitchen.dough_temperature import ice_share, measured_friction, water_temperature
from sitegen.kitchen.formulas import DoughFormula, dough_formula
from sitegen.kitchen.recipe import Choice
from sitegen.source.tables import read_tables

TABLES = read_tables()[0]
NAMES = (
    "strong white flour", "rye flour", "water", "whole milk", "egg", "unsalted butter", "honey", "fine salt",
    "instant yeast", "fresh yeast", "sesame seeds", "sourdough starter",
)  # fmt: skip
WEIGHTS = st.fractions(min_value=Fraction(1, 10), max_value=2000, max_denominator=100)
FACTORS = st.fractions(min_value=Fraction(1, 20), max_value=50, max_denominator=50)
DEGREES = st.integers(min_value=0, max_value=40).map(Fraction)


@st.composite
def doughs(draw: st.DrawFn) -> Contents:
    """Some flour and anything else, in the dough itself or in a poolish."""
    held = []
    for name in ("strong white flour", *draw(st.lists(st.sampled_from(NAMES), max_size=8))):
        row = TABLES.larder.find(name)
        assert row is not None
        brought_by = draw(st.sampled_from(("", "Poolish")))
        held.append(Held(Choice(name, row.key), row, draw(WEIGHTS), brought_by))
    return tuple(held)


def formula(contents: Contents) -> DoughFormula:
    assert TABLES.doughs is not None
    kinds = {"Poolish": TABLES.balances.kind("poolish")}
    found = dough_formula(contents, kinds, TABLES.balances, TABLES.doughs.water)
    assert found is not None
    return found


@given(doughs(), FACTORS)
def test_a_formula_does_not_change_with_the_batch(contents: Contents, factor: Fraction) -> None:
    one, other = formula(contents), formula(tuple(held.times(factor) for held in contents))
    assert other.flour_g == one.flour_g * factor
    assert [line.percent for line in other.lines] == [line.percent for line in one.lines]
    figures = ("hydration", "all_water", "salt", "yeast", "prefermented", "inoculation")
    assert [getattr(other, name) for name in figures] == [getattr(one, name) for name in figures]


@given(doughs())
def test_a_formula_loses_nothing(contents: Contents) -> None:
    dough = formula(contents)
    assert sum(line.percent or 0 for line in dough.lines) * dough.flour_g == dough.dough_g
    assert dough.dough_g == sum(held.grams or 0 for held in contents)


@given(doughs())
def test_no_more_than_all_flour_is_pre_fermented(contents: Contents) -> None:
    assert 0 <= formula(contents).prefermented <= 1


@given(doughs(), FACTORS)
def test_what_is_unusual_stays_so_in_any_batch(contents: Contents, factor: Fraction) -> None:
    scaled = tuple(held.times(factor) for held in contents)
    kind = TABLES.balances.kind("tin loaf")
    one, other = (list(unusual(each, each, kind, TABLES.balances)) for each in (contents, scaled))
    assert one == other


@given(WEIGHTS, st.fractions(min_value=Fraction(1, 4), max_value=2, max_denominator=20))
def test_flour_and_water_add_up_to_the_starter(grams: Fraction, hydration: Fraction) -> None:
    flour, water = flour_and_water(grams, hydration)
    assert flour + water == grams
    assert water == flour * hydration


@given(DEGREES, DEGREES, DEGREES, DEGREES, st.lists(DEGREES, max_size=3))
def test_friction_and_water_undo_each_other(
    wanted: Fraction, room: Fraction, flour: Fraction, friction: Fraction, others: list[Fraction]
) -> None:
    water = water_temperature(wanted, room, flour, friction, *others)
    assert measured_friction(wanted, room, flour, water, *others) == friction


@given(st.integers(min_value=1, max_value=30), st.integers(min_value=1, max_value=30))
def test_ice_and_tap_water_come_to_the_wanted_heat(tap: int, below: int) -> None:
    """Heat that the tap water gives is what the ice takes in melting and warming, for any share."""
    wanted = Fraction(tap - below)
    share = ice_share(Fraction(tap), wanted)
    assert (1 - share) * (tap - wanted) == share * (80 + wanted)
