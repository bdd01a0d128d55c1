"""The tables behind an estimate of nutrition: factors, losses, and what each region's label says."""

from dataclasses import dataclass
from fractions import Fraction

from sitegen.kitchen.label_rounding import RoundingRule
from sitegen.kitchen.nutrition import EnergyFactor, Quantity
from sitegen.kitchen.recipe import IngredientLine, Line


@dataclass(frozen=True)
class LabelFigure:
    """One figure of a line. unit: as printed, '' for a bare number."""

    quantity: Quantity
    unit: str
    rule: RoundingRule


@dataclass(frozen=True)
class LabelRow:
    """One line of a region's table.

    key: the same in every region ('fat'). name: as the region's law words it. figures: mostly one; energy
    may stand in two units. daily: the daily value of the first figure's quantity, in its unit, or None.
    """

    key: str
    name: str
    figures: tuple[LabelFigure, ...]
    is_inner: bool = False
    daily: Fraction | None = None


@dataclass(frozen=True)
class Label:
    """A region's table of nutrition.

    style: 'eu', 'us', 'au'. less_than: how it says so: '<' or 'less than '. per_100g: whether a column for
    100 g stands beside the portion's.
    """

    style: str
    regions: tuple[str, ...]
    less_than: str
    per_100g: bool
    rows: tuple[LabelRow, ...]


@dataclass(frozen=True)
class BakeLoss:
    """What a kind of component loses of its weight, as water, from what goes in to what has cooled.

    heat: 'oven' or 'hob'. words: of its kind or title, any of which brings this row; empty for all others.
    share: of the weight that goes in. source: a key of `data/sources.yaml`.
    """

    name: str
    heat: str
    words: tuple[str, ...]
    share: Fraction
    source: str


@dataclass(frozen=True)
class AlcoholLeft:
    """How much of its alcohol a component keeps: out of the oven, off the boil. Shares."""

    oven: Fraction = Fraction(1)
    hob: Fraction = Fraction(1)


@dataclass(frozen=True)
class NutritionTable:
    """bake_losses: the narrower rows first. hob_words: of a method, each tells of boiling, unless one of
    `unless_words` stands there. taken_out: what is steeped and lifted out, by the larder's key.
    """

    factors: tuple[EnergyFactor, ...] = ()
    labels: tuple[Label, ...] = ()
    bake_losses: tuple[BakeLoss, ...] = ()
    alcohol_left: AlcoholLeft = AlcoholLeft()
    hob_words: tuple[str, ...] = ()
    not_hob_words: tuple[str, ...] = ()
    taken_out: frozenset[str] = frozenset()

    def is_eaten(self, line: Line) -> bool:
        """Whether what a line brings stays in the dish."""
        return not isinstance(line, IngredientLine) or line.chosen.ingredient not in self.taken_out

    def label(self, region: str) -> Label | None:
        """The table that a region prints, or None."""
        return next((label for label in self.labels if region in label.regions), None)
