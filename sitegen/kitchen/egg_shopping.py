"""Eggs to buy: whole ones, and those that are cracked for white and yolk, which serve each other."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from fractions import Fraction
from math import ceil

from sitegen.kitchen.eggs import NEARLY_NOTHING

NONE = Fraction(0)


@dataclass(frozen=True)
class EggsToBuy:
    """All hen's eggs of one size.

    whole, whites, yolks: what is needed, in eggs, exact. grams: the same without the shell, exact.
    """

    size: str
    whole: Fraction = NONE
    whites: Fraction = NONE
    yolks: Fraction = NONE
    grams: Fraction = NONE

    @property
    def number(self) -> int:
        """Eggs to crack: whole ones, then as many as whites or yolks need, whichever needs more.

        What goes in is added up first and rounded once, each way of use by itself: a rest of a beaten egg
        is no white. Source: common practice.
        """
        return _eggs(self.whole) + self.separated

    @property
    def separated(self) -> int:
        """Eggs that are cracked for their white or yolk."""
        return _eggs(max(self.whites, self.yolks))

    @property
    def spare_whites(self) -> Fraction:
        """Whites that nothing takes, in eggs, exact; 0 where under a tenth of one is left."""
        return _noticed(self.separated - self.whites)

    @property
    def spare_yolks(self) -> Fraction:
        return _noticed(self.separated - self.yolks)

    def with_part(self, part: str, eggs: Fraction, grams: Fraction) -> "EggsToBuy":
        """The same and more. part: 'white', 'yolk' or '' for whole ones. eggs: how many, exact."""
        more = {"white": (NONE, eggs, NONE), "yolk": (NONE, NONE, eggs)}.get(part, (eggs, NONE, NONE))
        whole, whites, yolks = more
        return replace(
            self,
            whole=self.whole + whole,
            whites=self.whites + whites,
            yolks=self.yolks + yolks,
            grams=self.grams + grams,
        )


@dataclass(frozen=True)
class EggUse:
    """What a line takes of eggs. part: 'white', 'yolk' or ''. eggs: how many; grams: without the shell."""

    size: str
    part: str
    eggs: Fraction
    grams: Fraction


def eggs_to_buy(uses: Iterable[EggUse]) -> tuple[EggsToBuy, ...]:
    """A row for each size, in the order in which they are first used."""
    rows: dict[str, EggsToBuy] = {}
    for use in uses:
        row = rows.get(use.size, EggsToBuy(use.size))
        rows[use.size] = row.with_part(use.part, use.eggs, use.grams)
    return tuple(rows.values())


def _eggs(needed: Fraction) -> int:
    """Whole eggs for what is needed; a rest under a tenth of one is dropped beside others."""
    return max(ceil(needed - NEARLY_NOTHING), 1) if needed else 0


def _noticed(left: Fraction) -> Fraction:
    return left if left >= NEARLY_NOTHING else NONE
