"""Balance: how the parts of a bake stand to one another, held against the bands of its kind."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from difflib import get_close_matches
from fractions import Fraction

from sitegen.kitchen.contents import Contents, Held

WHOLE = "whole"
DOUGH, PREFERMENT = "dough", "preferment"


@dataclass(frozen=True)
class GroupTerm:
    """One way to count for a group: by any of `roles` or by name, and by none of what it must not be.

    part: 'white' or 'yolk' of an egg named by its count, '' for any. share: of the weight that counts.
    """

    roles: frozenset[str] = frozenset()
    names: frozenset[str] = frozenset()
    unless_roles: frozenset[str] = frozenset()
    unless_names: frozenset[str] = frozenset()
    part: str = ""
    share: Fraction = Fraction(1)

    def counts(self, held: Held) -> bool:
        """Whether an ingredient counts for it."""
        if held.roles & self.unless_roles or held.key in self.unless_names:
            return False
        if self.part and held.choice.part != self.part:
            return False
        return bool(held.roles & self.roles) or held.key in self.names


@dataclass(frozen=True)
class Band:
    """Where a figure usually lies, the weight of `what` over the weight of `of`, both sums of groups.

    low, high: the usual ends, as a ratio (60 % is 3/5). ask_low, ask_high: outside them it is asked about.
    stop: over it a slip is nearly certain, None where nothing says so. in_percent: how the trade says it.
    only_with, unless: groups that must and must not be there; families: of kinds that it holds for, empty
    for all, '' among them for a component without a kind. code: of the advice. source: who says so.
    """

    what: tuple[str, ...]
    of: tuple[str, ...]
    low: Fraction
    high: Fraction
    ask_low: Fraction
    ask_high: Fraction
    source: str
    in_percent: bool = True
    stop: Fraction | None = None
    only_with: tuple[str, ...] = ()
    unless: tuple[str, ...] = ()
    families: frozenset[str] = frozenset()
    code: str = "balance-unusual"


@dataclass(frozen=True)
class Kind:
    """A kind of the trade. family: 'cake', 'dough', ... loses: share that bakes off, low and high."""

    key: str
    family: str
    bands: tuple[Band, ...]
    loses: tuple[Fraction, Fraction] | None = None


@dataclass(frozen=True)
class Finding:
    """A figure outside its band, exact, as a ratio.

    what, of: those of the band's groups that are there; both sides of the figure.
    """

    band: Band
    figure: Fraction
    what: tuple[str, ...]
    of: tuple[str, ...]

    @property
    def is_slip(self) -> bool:
        """Whether it is more than can work."""
        return self.band.stop is not None and self.figure > self.band.stop


@dataclass(frozen=True)
class BalanceTable:
    """The rows of `data/balances.yaml`. everywhere: bands of leavening, salt and yeast for any flour."""

    groups: Mapping[str, tuple[GroupTerm, ...]] = field(default_factory=dict, hash=False)
    kinds: tuple[Kind, ...] = ()
    everywhere: tuple[Band, ...] = ()

    def kind(self, key: str) -> Kind | None:
        """The kind of that name, or None."""
        return next((kind for kind in self.kinds if kind.key == key), None)

    def near(self, key: str) -> tuple[str, ...]:
        """Up to three kinds whose names look like this one, or hold it."""
        keys = {kind.key.casefold(): kind.key for kind in self.kinds}
        word = key.casefold()
        close = get_close_matches(word, keys, n=3, cutoff=0.6)
        holding = (known for known in keys if word in known or known in word)
        return tuple(keys[known] for known in dict.fromkeys([*close, *holding]))[:3]

    def weight(self, contents: Iterable[Held], *groups: str) -> Fraction:
        """What counts for any of the groups, grams, exact; what cannot be weighed counts for nothing."""
        return sum((self._counted(held, groups) for held in contents), Fraction(0))

    def is_counted(self, held: Held, group: str) -> bool:
        """Whether an ingredient counts for a group at all."""
        return group == WHOLE or any(term.counts(held) for term in self.groups[group])

    def _counted(self, held: Held, groups: Iterable[str]) -> Fraction:
        if held.grams is None:
            return Fraction(0)
        shares = (Fraction(1) if group == WHOLE else self._share(held, group) for group in groups)
        return held.grams * sum(shares, Fraction(0))

    def _share(self, held: Held, group: str) -> Fraction:
        return next((term.share for term in self.groups[group] if term.counts(held)), Fraction(0))


def flour_and_water(grams: Fraction, hydration: Fraction) -> tuple[Fraction, Fraction]:
    """A ripe starter or a poolish as its flour and its water, grams, exact.

    grams: of it, 0 or more; yeast and salt apart. hydration: as a ratio, 1 for 100 %.
    Formula: flour = weight / (1 + hydration).
    """
    flour = grams / (1 + hydration)
    return flour, grams - flour


def unusual(contents: Contents, own: Contents, kind: Kind | None, table: BalanceTable) -> Iterator[Finding]:
    """What a component has outside the bands: those of its kind, and of leavening, salt and yeast.

    contents: all that it is made of. own: what its own lines bring: without flour among it, and without a
    kind, nothing is said, as what it takes of has been judged already.
    A band is passed over where its base weighs nothing, or where something that it counts cannot be weighed.
    """
    bands: list[Band] = list(kind.bands) if kind else []
    family = kind.family if kind else ""
    if kind or table.weight(own, "flour"):
        bands += [band for band in table.everywhere if not band.families or family in band.families]
    for band in bands:
        figure = _figure(contents, band, table)
        if figure is not None and not band.ask_low <= figure <= band.ask_high:
            yield Finding(band, figure, *(_there(contents, side, table) for side in (band.what, band.of)))


def _there(contents: Contents, groups: tuple[str, ...], table: BalanceTable) -> tuple[str, ...]:
    """The groups that weigh something, all of them where none does."""
    return tuple(group for group in groups if table.weight(contents, group)) or groups


def _figure(contents: Contents, band: Band, table: BalanceTable) -> Fraction | None:
    """The figure that a band is about; None where the band says nothing of these contents."""
    if any(table.weight(contents, group) for group in band.unless):
        return None
    if not all(table.weight(contents, group) for group in band.only_with):
        return None
    if any(_is_missed(held, band, table) for held in contents):
        return None
    base = table.weight(contents, *band.of)
    return table.weight(contents, *band.what) / base if base else None


def _is_missed(held: Held, band: Band, table: BalanceTable) -> bool:
    """Whether an ingredient of unknown weight, or one of which nothing is known, might change the figure."""
    if not held.roles:
        return True
    if held.grams is not None:
        return False
    return any(table.is_counted(held, group) for group in (*band.what, *band.of, *band.unless))
