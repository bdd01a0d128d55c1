"""What the arithmetic of doughs needs beside the balances, and what is unusual in a preferment."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from sitegen.kitchen.balances import Band, Finding
from sitegen.kitchen.dough_temperature import DoughTemperatures
from sitegen.kitchen.formulas import DoughFormula, WaterShares


@dataclass(frozen=True)
class DoughTable:
    """The rows of `data/doughs.yaml`.

    prefermented: how much of all flour is in preferments. inoculation: ripe starter on the other flour.
    sticks: the share of a dough that stays on bowl, hands and table. left_over: the share beyond its pieces
    over which a dough is asked about.
    """

    water: WaterShares
    temperatures: DoughTemperatures
    prefermented: Band
    inoculation: Band
    sticks: Fraction
    left_over: Fraction


def unusual_preferments(dough: DoughFormula, table: DoughTable) -> Iterator[Finding]:
    """Pre-fermented flour and ripe starter outside their bands, in a dough that has them."""
    figures = ((table.prefermented, dough.prefermented), (table.inoculation, dough.inoculation))
    for band, figure in figures:
        if figure and not band.ask_low <= figure <= band.ask_high:
            yield Finding(band, figure, band.what, band.of)
