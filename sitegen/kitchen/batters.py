"""Will it fit: what a batter fills of its tin, and whether that is too much."""

from dataclasses import dataclass
from fractions import Fraction

from sitegen.kitchen.recipe import Tin
from sitegen.kitchen.tins import TinTable, capacity_ml, filled_ml, vessels
from sitegen.kitchen.word_marks import has_word

MARGIN = Fraction(1, 10)


@dataclass(frozen=True)
class BatterKind:
    """A row of `data/batters.yaml`.

    words: of a component's kind. roles: of an ingredient, where the kind says nothing of it.
    lightest, densest: g/ml. brim: the most of a tin's capacity that it may fill before baking.
    most_weight: g for each ml of the tin, for a dough that may stand well above the rim; None for others.
    called: what print calls it ('batter', 'dough').
    """

    key: str
    lightest: Fraction
    densest: Fraction
    brim: Fraction
    called: str
    source: str
    words: tuple[str, ...] = ()
    roles: frozenset[str] = frozenset()
    most_weight: Fraction | None = None

    @property
    def fits_all(self) -> bool:
        """Whether it is the row for what no other row knows."""
        return not self.words and not self.roles


@dataclass(frozen=True)
class Fill:
    """What a batter fills of its tins at its densest, so that no tin is called full which might not be.

    grams: of the batter. most_g: what the tins take at the very most; wanted_g: what fills them as far as the
    recipe says, and a tenth of their depth beyond that, never over `most_g`. All exact.
    """

    grams: Fraction
    most_g: Fraction
    wanted_g: Fraction

    @property
    def is_over(self) -> bool:
        """Whether the batter cannot go in, however it was beaten."""
        return self.grams > self.most_g

    @property
    def is_high(self) -> bool:
        """Whether the batter stands higher than the recipe says by more than a tenth of the depth."""
        return self.grams > self.wanted_g


def batter_kind(kind: str, roles: frozenset[str], kinds: tuple[BatterKind, ...]) -> BatterKind | None:
    """The row of a component: by the words of its kind, else by what it holds, else the one for all.

    kind: as the baker wrote it, or ''. roles: of all that goes into it. None for a table without rows.
    """
    named = next((row for row in kinds if has_word(kind, row.words)), None)
    held = next((row for row in kinds if roles & row.roles), None)
    return named or held or next((row for row in kinds if row.fits_all), None)


def fill_of(grams: Fraction, tin: Tin, fill: Fraction | None, kind: BatterKind, table: TinTable) -> Fill:
    """How a batter's weight stands to what its tins take.

    fill: how full the recipe says the tin is, as a share of its depth; None where it does not say.
    A dough goes by its weight for each ml of the tin, since it rises to several times its volume.
    Raises NoCapacity, UnknownShape. Source: common practice.
    """
    capacity = capacity_ml(tin, table)
    most_g = capacity * kind.brim * kind.densest
    if kind.most_weight is not None:
        return Fill(grams, most_g, min(capacity * kind.most_weight, most_g))
    if fill is None:
        return Fill(grams, most_g, most_g)
    up_to = filled_ml(tin, min(fill + MARGIN, Fraction(1)), table) * vessels(tin)
    return Fill(grams, most_g, min(up_to * kind.densest, most_g))
