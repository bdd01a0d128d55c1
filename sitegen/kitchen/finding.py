"""By what a recipe is found in a list beside its tags: its times, its tin, what it does without."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from sitegen.kitchen.allergens import Regime, named_in
from sitegen.kitchen.larder import Ingredient

NO_TIN = "none"


@dataclass(frozen=True)
class TimeBand:
    """title: 'in an hour'. over_min, to_min: more than so many minutes, and up to and with so many, exact.

    to_min: None for no end.
    """

    key: str
    title: str
    over_min: Fraction
    to_min: Fraction | None

    def holds(self, minutes: Fraction) -> bool:
        """Whether a time belongs here; what takes no time at all belongs nowhere."""
        return 0 < minutes > self.over_min and (self.to_min is None or minutes <= self.to_min)


@dataclass(frozen=True)
class TinFamily:
    """Shapes of tins that a reader thinks of as one. title: 'loaf tin'."""

    key: str
    title: str


@dataclass(frozen=True)
class AllergenGroup:
    """A group of the law's allergens that people ask for.

    title: 'nuts'; titles: regime -> the same, where its word is another. names: regime -> what belongs to the
    group in its words; a regime that is missing has no such group. roles: what has one of these counts too.
    """

    key: str
    title: str
    names: Mapping[Regime, tuple[str, ...]] = field(hash=False)
    titles: Mapping[Regime, str] = field(default_factory=dict, hash=False)
    roles: frozenset[str] = frozenset()

    def title_in(self, regime: Regime) -> str:
        return self.titles.get(regime, self.title)

    def is_in(self, row: Ingredient, regime: Regime) -> bool:
        """Whether an ingredient brings any of the group, by the law of a region."""
        return bool(self.roles & row.roles or set(self.names.get(regime, ())) & set(named_in(row, regime)))


@dataclass(frozen=True)
class SearchWords:
    """How a search compares words. passed_over: never looked for. letters: folded to plain ones.

    endings: (ending, what stands for it), taken off one after another.
    """

    passed_over: tuple[str, ...] = ()
    letters: tuple[tuple[str, str], ...] = ()
    endings: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True)
class FindingTable:
    """The rows of `data/finding.yaml`, in the order of the list."""

    start_to_finish: tuple[TimeBand, ...] = ()
    hands_on: tuple[TimeBand, ...] = ()
    tins: tuple[TinFamily, ...] = ()
    without: tuple[AllergenGroup, ...] = ()
    words: SearchWords = SearchWords()
