"""Butter by the stick, as it is sold and marked in the United States.

Source: a stick is a quarter of a pound, eight tablespoons marked on its wrapper (NIST Handbook 44,
Appendix C, for the pound; USDA SR28 01145 for stick and tablespoon).
"""

from dataclasses import dataclass, replace
from fractions import Fraction

from sitegen.kitchen.rounding import to_step

STICK_G = Fraction(1133980925, 10**7)
TABLESPOONS_IN_STICK = 8
TABLESPOON_G = STICK_G / TABLESPOONS_IN_STICK
HALF_STICK = Fraction(TABLESPOONS_IN_STICK, 2)
HALF_TABLESPOON = Fraction(1, 2)
USUAL_TOLERANCE = Fraction(3, 100)
LOOSE_TOLERANCE = Fraction(5, 100)
ALONE_TOLERANCE = Fraction(2, 100)
"""How far off sticks without tablespoons may be: half a tablespoon more is soon cut."""
NOTHING = Fraction(0)


@dataclass(frozen=True)
class Sticks:
    """Butter in US sticks (to a quarter) and tablespoons (to a half).

    grams: of what is printed, exact. fit: 'exact' (within the tolerance), 'scant' (a little too much is
    printed) or 'generous' (a little too little).
    """

    sticks: Fraction
    tablespoons: Fraction
    grams: Fraction
    fit: str = "exact"


def choose_sticks(grams: Fraction, tolerance: Fraction = USUAL_TOLERANCE) -> Sticks | None:
    """The fewest cuts: whole and half sticks, quarters of a second one, else tablespoons to the half.

    grams: exact, over 0. tolerance: how far off as a share; only at the usual one may a single figure be up
    to 5 % off and be called scant or generous. 160 g is '1 stick + 3 1/2 tbsp', 200 g is '1 3/4 sticks',
    110 g a scant stick. Returns None where no half tablespoon is near enough.
    """
    alone = min(tolerance, ALONE_TOLERANCE)
    for step, limit in ((HALF_STICK, alone), (HALF_STICK / 2, alone), (HALF_TABLESPOON, tolerance)):
        tablespoons = to_step(grams / TABLESPOON_G, step)
        printed = tablespoons * TABLESPOON_G
        if printed and abs(printed - grams) <= limit * grams:
            return _said(tablespoons, printed)
    return _loose(grams) if tolerance >= USUAL_TOLERANCE else None


def _loose(grams: Fraction) -> Sticks | None:
    """The nearest half tablespoon where it makes one figure and is no more than 5 % off."""
    tablespoons = to_step(grams / TABLESPOON_G, HALF_TABLESPOON)
    nearest = _said(tablespoons, tablespoons * TABLESPOON_G)
    is_one_figure = bool(nearest.sticks) != bool(nearest.tablespoons)
    if not is_one_figure or abs(nearest.grams - grams) > LOOSE_TOLERANCE * grams:
        return None
    return replace(nearest, fit="scant" if nearest.grams > grams else "generous")


def _said(tablespoons: Fraction, grams: Fraction) -> Sticks:
    """Sticks where they come out to a half, or to a quarter beside a whole one; tablespoons on top else."""
    sticks = tablespoons / TABLESPOONS_IN_STICK
    if sticks * 2 % 1 == 0 or (sticks > 1 and sticks * 4 % 1 == 0):
        return Sticks(sticks, NOTHING, grams)
    whole, rest = divmod(tablespoons, TABLESPOONS_IN_STICK)
    return Sticks(Fraction(whole), rest, grams)
