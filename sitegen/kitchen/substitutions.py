"""What may stand in for an ingredient, and how much of it: rows of `data/substitutions.yaml`, exact."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction

PER_WEIGHT_G = Fraction(100)
"""Rows by weight are written for this much of the original."""


@dataclass(frozen=True)
class Substitute:
    """ingredient: a key of the larder. grams: for 100 g of the original, or for one piece; exact, over 0."""

    ingredient: str
    grams: Fraction


@dataclass(frozen=True)
class Swap:
    """One way to do without an ingredient.

    instead_of: its key in the larder. use: everything that takes its place, in the order of work.
    per_piece: whether `use` is for one piece of the original (a pod, a leaf), else for 100 g of it.
    changes: what it does to the bake; method: what to do differently; '' for nothing.
    lacking_in: region ('uk', 'us', 'au') -> why it is hard to get there, a clause.
    differs_in: region -> how what is sold there under its name differs from what the recipe means.
    written_in: regions that the recipe must be written for; empty for any.
    source: a key of `data/sources.yaml`.
    """

    instead_of: str
    use: tuple[Substitute, ...]
    per_piece: bool = False
    changes: str = ""
    method: str = ""
    lacking_in: Mapping[str, str] = field(default_factory=dict, hash=False)
    differs_in: Mapping[str, str] = field(default_factory=dict, hash=False)
    written_in: frozenset[str] = frozenset()
    source: str = ""

    def fits(self, written: str) -> bool:
        """Whether the row is for recipes that are written for that region."""
        return not self.written_in or written in self.written_in

    def reason(self, region: str, written: str) -> str | None:
        """Why a reader in a region needs it, '' where no more is to be said; None where she doesn't.

        written: the region that the recipe is written for: there its words mean what the baker had.
        """
        if not self.fits(written):
            return None
        if region in self.lacking_in:
            return self.lacking_in[region]
        return self.differs_in.get(region) if region != written else None


@dataclass(frozen=True)
class Original:
    """How much is to be replaced, exact. grams: its weight; pieces: how many pods, leaves; None unknown."""

    grams: Fraction | None
    pieces: Fraction | None = None


def ways_without(swaps: Iterable[Swap], ingredient: str, written: str) -> tuple[Swap, ...]:
    """Every way to do without an ingredient, in a recipe that is written for a region."""
    return tuple(swap for swap in swaps if swap.instead_of == ingredient and swap.fits(written))


def needed_in(swaps: Iterable[Swap], ingredient: str, region: str, written: str) -> Swap | None:
    """The first way to do without an ingredient that a region lacks, or sells otherwise; None for no need."""
    ways = ways_without(swaps, ingredient, written)
    return next((swap for swap in ways if swap.reason(region, written) is not None), None)


def differs_in(swaps: Iterable[Swap], ingredient: str, region: str, written: str) -> str:
    """How what a region sells under an ingredient's name differs from what the recipe means; '' for not.

    written: the region that the recipe is written for.
    """
    if region == written:
        return ""
    ways = ways_without(swaps, ingredient, written)
    return next((swap.differs_in[region] for swap in ways if region in swap.differs_in), "")


def substitutes(swap: Swap, original: Original) -> tuple[Substitute, ...] | None:
    """The exact weight of everything that takes the place of an amount.

    Returns grams in `Substitute.grams`; None where the amount is not known in the terms of the row.
    """
    times = original.pieces
    if not swap.per_piece:
        times = None if original.grams is None else original.grams / PER_WEIGHT_G
    if times is None:
        return None
    return tuple(Substitute(one.ingredient, one.grams * times) for one in swap.use)
