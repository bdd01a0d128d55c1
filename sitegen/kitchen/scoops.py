"""Cups, spoons and sticks: an amount from the measures that a kitchen owns, fewest scoops first.

Sources: common practice; a stick of butter is a quarter of a pound (NIST Handbook 44, Appendix C).
"""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from math import ceil, floor

from sitegen.kitchen.rounding import to_step

USUAL_TOLERANCE = Fraction(3, 100)
LOOSE_TOLERANCE = Fraction(5, 100)
# What a kitchen fills in one or two goes: the figure -> scoops.
CUP_FRACTIONS = {
    Fraction(0): 0,
    Fraction(1, 4): 1,
    Fraction(1, 3): 1,
    Fraction(1, 2): 1,
    Fraction(2, 3): 2,
    Fraction(3, 4): 2,
}
TEASPOON_FRACTIONS = {Fraction(0): 0, Fraction(1, 4): 1, Fraction(1, 2): 1, Fraction(3, 4): 2}
SMALLEST_TEASPOON = Fraction(1, 8)
MOST_TABLESPOONS = 4
MOST_TABLESPOONS_BESIDE_CUPS = 3
STICK_G = Fraction(1133980925, 10**7)
TABLESPOONS_IN_STICK = 8
NOTHING = Fraction(0)


@dataclass(frozen=True)
class Scoops:
    """One figure each of cups, tablespoons and teaspoons; 0 for one that is not used.

    fit: 'exact' (within the tolerance), 'scant' (the measure is a little too much) or 'generous' (a little
    too little). millilitres: what the level measures hold, exact.
    """

    cups: Fraction
    tablespoons: Fraction
    teaspoons: Fraction
    fit: str
    millilitres: Fraction


@dataclass(frozen=True)
class Sticks:
    """Butter in US sticks (whole or half) and tablespoons. grams: of what is printed, exact."""

    sticks: Fraction
    tablespoons: Fraction
    grams: Fraction


@dataclass(frozen=True)
class _Figures:
    cups: Fraction
    tablespoons: Fraction
    teaspoons: Fraction
    scoops: int
    ml: Fraction


@lru_cache(maxsize=4096)
def choose_scoops(
    ml: Fraction,
    teaspoon_ml: Fraction,
    tablespoon_ml: Fraction,
    cup_ml: Fraction,
    fine: bool,
    spoons_only: bool,
    tolerance: Fraction = USUAL_TOLERANCE,
) -> Scoops | None:
    """The fewest scoops that give an amount, the nearest of these.

    ml: wanted, exact, over 0. *_ml: the edition's measures. fine: salt, leavening, yeast, gelatine, which
    are never scant or generous. spoons_only: for what is only ever spooned. tolerance: how far the sum may
    be off, as a share of the amount; 3 % is usual. Only at the usual tolerance (or a wider one) may a sum
    be up to 5 % off and be called scant or generous.
    Measures: cups 1, 1/2, 1/3, 1/4 and 2/3 and 3/4 as two; whole tablespoons, more than four go to cups;
    teaspoons 1, 1/2, 1/4, 3/4 as two and 1/8 alone; as many teaspoons as fill a tablespoon become one.
    Returns None where no sum is near enough: then the weight is printed.
    """
    if ml <= 0:
        return None
    spoons = _Spoons(teaspoon_ml, tablespoon_ml, cup_ml)
    reach = max(tolerance, LOOSE_TOLERANCE)
    found = [
        (abs(figures.ml - ml) / ml, figures) for figures in spoons.near(ml, reach, spoons_only=spoons_only)
    ]
    close = [one for one in found if one[0] <= tolerance]
    if close:
        return _named(min(close, key=_fewest_then_nearest)[1], "exact")
    loose = [one for one in found if one[0] <= LOOSE_TOLERANCE]
    if fine or tolerance < USUAL_TOLERANCE or not loose:
        return None
    chosen = min(loose, key=_fewest_then_nearest)[1]
    return _named(chosen, "scant" if chosen.ml > ml else "generous")


def _fewest_then_nearest(one: tuple[Fraction, _Figures]) -> tuple[int, Fraction]:
    return one[1].scoops, one[0]


def _named(figures: _Figures, fit: str) -> Scoops:
    return Scoops(figures.cups, figures.tablespoons, figures.teaspoons, fit, figures.ml)


@dataclass(frozen=True)
class _Spoons:
    """The measures of one edition, ml."""

    teaspoon: Fraction
    tablespoon: Fraction
    cup: Fraction

    def near(self, ml: Fraction, reach: Fraction, *, spoons_only: bool) -> Iterator[_Figures]:
        """All allowed sums within a share of an amount."""
        least, most = ml * (1 - reach), ml * (1 + reach)
        teaspoons = self._teaspoon_figures()
        for cups, cup_scoops in self._cup_figures(ml, spoons_only=spoons_only):
            for tablespoons in self._tablespoon_figures(ml, cups, spoons_only=spoons_only):
                so_far = cups * self.cup + tablespoons * self.tablespoon
                if so_far > most or so_far + self.tablespoon < least:
                    continue
                for spoon, spoon_scoops in teaspoons:
                    total = so_far + spoon * self.teaspoon
                    if total and least <= total <= most:
                        scoops = cup_scoops + int(tablespoons) + spoon_scoops
                        yield _Figures(cups, tablespoons, spoon, scoops, total)

    def _cup_figures(self, ml: Fraction, *, spoons_only: bool) -> list[tuple[Fraction, int]]:
        if spoons_only:
            return [(NOTHING, 0)]
        whole = floor(ml / self.cup)
        return [
            (cups + part, cups + scoops)
            for cups in range(max(whole - 1, 0), whole + 2)
            for part, scoops in CUP_FRACTIONS.items()
        ]

    def _tablespoon_figures(self, ml: Fraction, cups: Fraction, *, spoons_only: bool) -> list[Fraction]:
        if spoons_only:
            whole = floor(ml / self.tablespoon)
            return [Fraction(count) for count in range(max(whole - 1, 0), whole + 2)]
        most = MOST_TABLESPOONS_BESIDE_CUPS if cups else MOST_TABLESPOONS
        return [Fraction(count) for count in range(most + 1)]

    def _teaspoon_figures(self) -> list[tuple[Fraction, int]]:
        """Every figure below a tablespoon."""
        in_tablespoon = self.tablespoon / self.teaspoon
        figures = [
            (whole + part, whole + scoops)
            for whole in range(ceil(in_tablespoon))
            for part, scoops in TEASPOON_FRACTIONS.items()
            if whole + part < in_tablespoon
        ]
        return [*figures, (SMALLEST_TEASPOON, 1)]


def choose_sticks(grams: Fraction, tolerance: Fraction = USUAL_TOLERANCE) -> Sticks | None:
    """Butter as US sticks and tablespoons, to half a tablespoon: 160 g is '1 stick + 3 1/2 tbsp'.

    grams: exact, over 0. tolerance: how far off as a share. Half a stick is said where nothing is left over.
    Returns None where no half tablespoon is near enough.
    """
    tablespoon_g = STICK_G / TABLESPOONS_IN_STICK
    tablespoons = to_step(grams / tablespoon_g, Fraction(1, 2))
    printed = tablespoons * tablespoon_g
    if not printed or abs(printed - grams) > tolerance * grams:
        return None
    sticks, rest = divmod(tablespoons, TABLESPOONS_IN_STICK)
    if rest == Fraction(TABLESPOONS_IN_STICK, 2):
        return Sticks(sticks + Fraction(1, 2), NOTHING, printed)
    return Sticks(Fraction(sticks), rest, printed)
