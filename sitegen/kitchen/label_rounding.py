"""How laws round the figures of a table of nutrition. Pure rules; only the sheet calls them, at the very end.

The bands themselves stand in `data/nutrition.yaml`, each with its source.
"""

from dataclasses import dataclass
from fractions import Fraction

from sitegen.kitchen.rounding import to_step

NOTHING = Fraction(0)


@dataclass(frozen=True)
class Band:
    """One stretch of a rule.

    limit: where it begins; is_inclusive: whether the limit itself is in it. step: to which a figure is
    rounded, halves upwards; None where it is only said to be less than `less_than`.
    """

    limit: Fraction
    is_inclusive: bool
    step: Fraction | None
    less_than: Fraction | None = None

    def holds(self, value: Fraction) -> bool:
        return value >= self.limit if self.is_inclusive else value > self.limit


@dataclass(frozen=True)
class Rounded:
    """A figure for print.

    step: to which it was rounded, None where it was not. is_less_than: it is said only that there is less.
    """

    figure: Fraction
    step: Fraction | None = None
    is_less_than: bool = False


@dataclass(frozen=True)
class RoundingRule:
    """bands: the highest first; what is in none of them counts as nothing."""

    bands: tuple[Band, ...]

    def rounded(self, value: Fraction) -> Rounded:
        """A figure as the rule declares it.

        value: exact, 0 or more, in the unit that the rule is written for.
        """
        band = next((band for band in self.bands if band.holds(value)), None)
        if band is None:
            return Rounded(NOTHING)
        if band.step is None:
            return Rounded(band.less_than or NOTHING, is_less_than=True)
        return Rounded(to_step(value, band.step), band.step)


def percent_of(value: Fraction, daily: Fraction) -> Fraction:
    """A share of a daily value, to the nearest whole percent. Source: 21 CFR 101.9(d)(7)(ii)."""
    return to_step(value * 100 / daily, Fraction(1))
