"""Laws of the measures that a kitchen owns: near enough, few enough, and such as stand in a drawer."""

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from sitegen.kitchen.scoops import choose_scoops
from sitegen.kitchen.sticks import choose_sticks

VOLUMES = st.fractions(Fraction("0.3"), Fraction(5000), max_denominator=100)
EDITIONS = st.sampled_from(
    [
        (Fraction(5), Fraction(15), Fraction(250)),
        (Fraction(5), Fraction(20), Fraction(250)),
        (Fraction("4.92892159375"), Fraction("14.78676478125"), Fraction("236.5882365")),
    ]
)
CUP_PARTS = {Fraction(0), Fraction(1, 4), Fraction(1, 3), Fraction(1, 2), Fraction(2, 3), Fraction(3, 4)}
QUARTERS = {Fraction(0), Fraction(1, 4), Fraction(1, 2), Fraction(3, 4)}


@given(VOLUMES, EDITIONS, st.booleans(), st.booleans())
def test_scoops_are_near_enough_and_such_as_a_kitchen_owns(
    ml: Fraction, measures: tuple[Fraction, Fraction, Fraction], fine: bool, spoons_only: bool
) -> None:
    teaspoon, tablespoon, cup = measures
    chosen = choose_scoops(ml, teaspoon, tablespoon, cup, fine, spoons_only)
    if chosen is None:
        return
    parts = [
        ml for ml in (chosen.cups * cup, chosen.tablespoons * tablespoon, chosen.teaspoons * teaspoon) if ml
    ]
    assert len(parts) <= 2
    assert chosen.millilitres == (parts[0] - parts[1] if chosen.is_less else sum(parts))
    off = (chosen.millilitres - ml) / ml
    assert chosen.fit == "exact" if abs(off) <= Fraction(3, 100) else abs(off) <= Fraction(5, 100)
    assert chosen.fit in ("exact", "scant" if off > 0 else "generous")
    assert not (fine and chosen.fit != "exact")
    assert not (spoons_only and chosen.cups)
    assert chosen.cups % 1 in CUP_PARTS
    assert chosen.tablespoons.denominator == 1
    assert chosen.tablespoons <= 4
    assert chosen.teaspoons % 1 in QUARTERS or chosen.teaspoons == Fraction(1, 8)
    assert chosen.teaspoons * teaspoon < tablespoon or (chosen.cups and chosen.teaspoons == 4)


@given(st.fractions(Fraction(250), Fraction(2300), max_denominator=100), EDITIONS)
def test_there_is_nearly_always_a_measure_from_a_cup_up(
    ml: Fraction, measures: tuple[Fraction, Fraction, Fraction]
) -> None:
    """Where two measures within 3 % are none, a twentieth more or less has one: the gaps are narrow."""
    near = (ml * share for share in (Fraction(1), Fraction(97, 100), Fraction(103, 100)))
    assert any(choose_scoops(one, *measures, fine=False, spoons_only=False) for one in near)


@given(st.fractions(Fraction(5), Fraction(5000), max_denominator=100))
def test_sticks_weigh_what_they_say(grams: Fraction) -> None:
    chosen = choose_sticks(grams)
    if chosen is None:
        return
    off = chosen.grams - grams
    assert abs(off) <= grams * (Fraction(3, 100) if chosen.fit == "exact" else Fraction(5, 100))
    assert chosen.fit in ("exact", "scant" if off > 0 else "generous")
    assert chosen.fit == "exact" or not (chosen.sticks and chosen.tablespoons)
    assert (chosen.sticks * 4).denominator == (chosen.tablespoons * 2).denominator == 1
    assert not (chosen.tablespoons and chosen.sticks.denominator != 1)
    assert chosen.tablespoons < 8
