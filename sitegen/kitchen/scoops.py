"""Cups and spoons: an amount from the measures that a kitchen owns, fewest scoops first.

Source: common practice.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from math import ceil

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
# What may be taken away from a full measure: '1 cup less 1 tbsp', '2 tbsp less 1/4 tsp'.
TABLESPOONS_LESS = (Fraction(1), Fraction(2))
TEASPOONS_LESS = (Fraction(1, 2), Fraction(1), Fraction(2))
TEASPOONS_LESS_THAN_TABLESPOONS = (Fraction(1, 4), Fraction(1, 2), Fraction(1))
MOST_OF_A_TABLESPOON_LESS = Fraction(1, 3)
MOST_TABLESPOONS_TO_TAKE_FROM = 3
# Beyond these nobody keeps count, and the weight reads better.
MOST_CUPS = 10
MOST_TABLESPOONS = 4
MOST_TABLESPOONS_BESIDE_CUPS = 3
MOST_TEASPOONS_BESIDE_CUPS = 4
MOST_TEASPOONS_BESIDE_TABLESPOONS = Fraction(11, 4)
MOST_SPOONS = 5
NOTHING = Fraction(0)


@dataclass(frozen=True)
class Scoops:
    """One figure each of cups, tablespoons and teaspoons; 0 for one that is not used, two used at most.

    fit: 'exact' (within the tolerance), 'scant' (the measure is a little too much) or 'generous' (a little
    too little). millilitres: what the level measures hold, exact. is_less: the smaller measure is taken
    away from the larger one, '1 cup less 1 tbsp'.
    """

    cups: Fraction
    tablespoons: Fraction
    teaspoons: Fraction
    fit: str
    millilitres: Fraction
    is_less: bool = False


@dataclass(frozen=True)
class _Figures:
    """scoops: how many times a measure is filled; taking away counts as one more than its spoons."""

    cups: Fraction
    tablespoons: Fraction
    teaspoons: Fraction
    scoops: int
    ml: Fraction
    is_less: bool = False

    @property
    def kinds(self) -> int:
        """How many measures are taken from the drawer."""
        return sum(bool(figure) for figure in (self.cups, self.tablespoons, self.teaspoons))


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
    be off, as a share of the amount; 3 % is usual. Only at the usual tolerance (or a wider one) may a
    single measure be up to 5 % off and be called scant or generous.
    Measures: cups 1, 1/2, 1/3, 1/4 and 2/3 and 3/4 as two; whole tablespoons, more than four go to cups;
    teaspoons 1, 1/2, 1/4, 3/4 as two and 1/8 alone; as many teaspoons as fill a tablespoon become one.
    A sum joins two of them at most, or takes a spoon or two away from one: '1 cup less 1 tbsp'.
    Returns None where no sum is near enough, or each would read worse than the weight: then that is printed.
    """
    if ml <= 0:
        return None
    reach = max(tolerance, LOOSE_TOLERANCE)
    sums = _readable_sums(teaspoon_ml, tablespoon_ml, cup_ml, spoons_only)
    first = bisect_left(sums, ml * (1 - reach), key=_ml_of)
    last = bisect_right(sums, ml * (1 + reach), key=_ml_of)
    found = [(abs(figures.ml - ml) / ml, figures) for figures in sums[first:last]]
    close = [one for one in found if one[0] <= tolerance]
    if close:
        return _named(min(close, key=_fewest_then_nearest)[1], "exact")
    loose = [one for one in found if one[0] <= LOOSE_TOLERANCE and one[1].kinds == 1]
    if fine or tolerance < USUAL_TOLERANCE or not loose:
        return None
    chosen = min(loose, key=_fewest_then_nearest)[1]
    return _named(chosen, "scant" if chosen.ml > ml else "generous")


def _ml_of(figures: _Figures) -> Fraction:
    return figures.ml


def _fewest_then_nearest(one: tuple[Fraction, _Figures]) -> tuple[int, bool, Fraction]:
    return one[1].scoops, one[1].is_less, one[0]


def _named(figures: _Figures, fit: str) -> Scoops:
    return Scoops(figures.cups, figures.tablespoons, figures.teaspoons, fit, figures.ml, figures.is_less)


@lru_cache(maxsize=16)
def _readable_sums(
    teaspoon: Fraction, tablespoon: Fraction, cup: Fraction, spoons_only: bool
) -> tuple[_Figures, ...]:
    """Every sum of an edition's measures that reads better than a weight, the smallest first."""
    spoons = _Spoons(teaspoon, tablespoon, cup)
    sums = (*spoons.alone(), *(() if spoons_only else spoons.with_cups()))
    return tuple(sorted(sums, key=_ml_of))


@dataclass(frozen=True)
class _Spoons:
    """The measures of one edition, ml."""

    teaspoon: Fraction
    tablespoon: Fraction
    cup: Fraction

    def alone(self) -> Iterator[_Figures]:
        """Spoons without cups."""
        for count in range(MOST_TABLESPOONS + 1):
            most = MOST_TEASPOONS_BESIDE_TABLESPOONS if count else self.tablespoon / self.teaspoon
            for teaspoons, scoops in self._teaspoon_figures():
                if teaspoons <= most and 0 < count + scoops <= MOST_SPOONS:
                    yield self._sum(NOTHING, Fraction(count), teaspoons, count + scoops)
            if 0 < count <= MOST_TABLESPOONS_TO_TAKE_FROM:
                yield from self._tablespoons_less(Fraction(count))
        yield self._sum(NOTHING, NOTHING, SMALLEST_TEASPOON, 1)

    def with_cups(self) -> Iterator[_Figures]:
        """Cups, alone or with spoons of one kind."""
        for cups, scoops in self._cup_figures():
            yield self._sum(cups, NOTHING, NOTHING, scoops)
            for count in range(1, MOST_TABLESPOONS_BESIDE_CUPS + 1):
                yield self._sum(cups, Fraction(count), NOTHING, scoops + count)
            for teaspoons, spoons in self._teaspoons_beside_cups():
                yield self._sum(cups, NOTHING, teaspoons, scoops + spoons)
            for tablespoons in TABLESPOONS_LESS:
                yield self._cups_less(cups, tablespoons, NOTHING, scoops)
            for teaspoons in TEASPOONS_LESS:
                if teaspoons * self.teaspoon < self.tablespoon:
                    yield self._cups_less(cups, NOTHING, teaspoons, scoops)

    def _sum(self, cups: Fraction, tablespoons: Fraction, teaspoons: Fraction, scoops: int) -> _Figures:
        ml = cups * self.cup + tablespoons * self.tablespoon + teaspoons * self.teaspoon
        return _Figures(cups, tablespoons, teaspoons, scoops, ml)

    def _cups_less(
        self, cups: Fraction, tablespoons: Fraction, teaspoons: Fraction, cup_scoops: int
    ) -> _Figures:
        ml = cups * self.cup - tablespoons * self.tablespoon - teaspoons * self.teaspoon
        scoops = cup_scoops + ceil(tablespoons + teaspoons) + 1
        return _Figures(cups, tablespoons, teaspoons, scoops, ml, is_less=True)

    def _tablespoons_less(self, tablespoons: Fraction) -> Iterator[_Figures]:
        for teaspoons in TEASPOONS_LESS_THAN_TABLESPOONS:
            less_ml = teaspoons * self.teaspoon
            if less_ml < MOST_OF_A_TABLESPOON_LESS * self.tablespoon:
                ml, scoops = tablespoons * self.tablespoon - less_ml, int(tablespoons) + ceil(teaspoons) + 1
                yield _Figures(NOTHING, tablespoons, teaspoons, scoops, ml, is_less=True)

    def _cup_figures(self) -> list[tuple[Fraction, int]]:
        figures = [
            (cups + part, cups + scoops)
            for cups in range(MOST_CUPS + 1)
            for part, scoops in CUP_FRACTIONS.items()
        ]
        return [one for one in figures if 0 < one[0] <= MOST_CUPS]

    def _teaspoons_beside_cups(self) -> list[tuple[Fraction, int]]:
        """Those below a tablespoon, and four, which no tablespoon and a teaspoon need be fetched for."""
        below = [one for one in self._teaspoon_figures() if one[0]]
        return [*below, (Fraction(MOST_TEASPOONS_BESIDE_CUPS), MOST_TEASPOONS_BESIDE_CUPS)]

    def _teaspoon_figures(self) -> list[tuple[Fraction, int]]:
        """Every figure below a tablespoon, 0 among them; an eighth joins nothing and is left out."""
        in_tablespoon = self.tablespoon / self.teaspoon
        return [
            (whole + part, whole + scoops)
            for whole in range(ceil(in_tablespoon))
            for part, scoops in TEASPOON_FRACTIONS.items()
            if whole + part < in_tablespoon
        ]
