"""What stands beside a recipe on its sheet: swaps, nutrition, a dough's formula. Frozen, ready for print."""

from dataclasses import dataclass


@dataclass(frozen=True)
class SheetSwap:
    """What may stand in for an ingredient.

    instead_of: 'self-raising flour'. use: '150 g plain flour + 1 1/2 tsp baking powder', for the amount on
    this sheet. changes: what it does to the bake, a sentence, '' for nothing. reason: why it is shown ('not
    sold in the United States'), '' for none. source: who says so.
    """

    instead_of: str
    use: str
    changes: str
    reason: str
    source: str


@dataclass(frozen=True)
class NutrientRow:
    """One line of the table. name: 'Fat', 'of which saturates'; is_inner: set in under the line above.

    per_portion, per_100g: '12 g', '<0.5 g', '' where the table has no such column. daily: '15 %' of the daily
    value (US), '' elsewhere. key: the same in every edition ('fat', 'salt').
    """

    name: str
    per_portion: str
    per_100g: str
    daily: str = ""
    is_inner: bool = False
    key: str = ""


@dataclass(frozen=True)
class Nutrition:
    """An estimate, rounded as the region's rules say.

    style: 'eu', 'us' or 'au'. portion: '1 cupcake, about 78 g', '' where only 100 g are given. notes: that
    it is an estimate, what was counted, which ingredients (under 5 % of the weight) are missing, which table
    the figures come from. energy: of a portion, else of 100 g, in one unit: '250 kcal'.
    """

    style: str
    portion: str
    rows: tuple[NutrientRow, ...]
    notes: tuple[str, ...]
    energy: str = ""


@dataclass(frozen=True)
class FormulaRow:
    """name: 'strong white flour'. weight: '325 g'. percent: '65 %' of all flour. part: 'Poolish' or ''."""

    name: str
    weight: str
    percent: str
    part: str = ""


@dataclass(frozen=True)
class Formula:
    """A dough in baker's percentages.

    title: of the dough. rows: every ingredient of the whole dough, preferment included. totals: (what,
    figure): ('total flour', '500 g'), ('hydration', '65 %'), ('piece', '85 g dough, about 74 g
    baked'). notes: dough temperature, what was counted.
    """

    title: str
    rows: tuple[FormulaRow, ...]
    totals: tuple[tuple[str, str], ...]
    notes: tuple[str, ...]
