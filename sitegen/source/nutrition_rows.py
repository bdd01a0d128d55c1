"""The tables of nutrition: rows as written in `data/` -> the kitchen's frozen values.

These rows are ours: a wrong one raises at once (pydantic's ValidationError, BrokenTable or KeyError).
"""

from collections.abc import Mapping
from fractions import Fraction

from sitegen.kitchen.label_rounding import Band, RoundingRule
from sitegen.kitchen.nutrition import EnergyFactor
from sitegen.kitchen.nutrition_table import (
    AlcoholLeft,
    BakeLoss,
    Label,
    LabelFigure,
    LabelRow,
    NutritionTable,
)
from sitegen.source.nutrition_files import (
    BakeLossesFile,
    BandFile,
    LabelFile,
    LabelRowFile,
    NutritionFile,
    RoundingFile,
)
from sitegen.source.table_rows import BrokenTable, figure


def nutrition_table(file: NutritionFile, losses: BakeLossesFile) -> NutritionTable:
    """Factors, labels and losses in the files' order."""
    rules = {name: _rule(row) for name, row in file.roundings.items()}
    return NutritionTable(
        factors=tuple(
            EnergyFactor(nutrient, figure(row.kj), figure(row.kcal))
            for nutrient, row in file.energy.factors.items()
        ),
        labels=tuple(_label(style, row, rules) for style, row in file.labels.items()),
        bake_losses=tuple(
            BakeLoss(name, row.heat, row.words, _share(row.share), row.source)
            for name, row in losses.losses.items()
        ),
        alcohol_left=AlcoholLeft(_share(losses.alcohol_left.oven), _share(losses.alcohol_left.hob)),
        hob_words=losses.hob.words,
        not_hob_words=losses.hob.unless_words,
        taken_out=frozenset(losses.taken_out.names),
    )


def _share(text: str) -> Fraction:
    number, space, sign = text.partition(" ")
    if (space, sign) != (" ", "%"):
        raise BrokenTable(text)
    return figure(number) / 100


def _rule(row: RoundingFile) -> RoundingRule:
    return RoundingRule(tuple(_band(band) for band in row.bands))


def _band(row: BandFile) -> Band:
    """One limit, and either a step or 'less than'."""
    limits = [text for text in (row.from_, row.above) if text is not None]
    if len(limits) != 1 or (row.step is None) == (row.less_than is None):
        raise BrokenTable(str(row))
    return Band(
        limit=figure(limits[0]),
        is_inclusive=row.from_ is not None,
        step=None if row.step is None else figure(row.step),
        less_than=None if row.less_than is None else figure(row.less_than),
    )


def _label(style: str, row: LabelFile, rules: Mapping[str, RoundingRule]) -> Label:
    return Label(
        style=style,
        regions=row.regions,
        less_than=row.less_than,
        per_100g=row.per_100g,
        rows=tuple(_label_row(key, each, rules) for key, each in row.rows.items()),
    )


def _label_row(key: str, row: LabelRowFile, rules: Mapping[str, RoundingRule]) -> LabelRow:
    return LabelRow(
        key=key,
        name=row.name,
        figures=tuple(LabelFigure(one.quantity, one.unit, rules[one.rounding]) for one in row.of),
        is_inner=row.inner,
        daily=None if row.daily is None else figure(row.daily),
    )
