"""`data/composition.csv` -> what 100 g of each ingredient hold.

A row names an ingredient of the larder, and gives the cells of one food of the published table unchanged, so
that anybody can hold them against it. `filled` names each cell that the table leaves empty and where its
figure was taken instead. These rows are ours: a wrong one raises at once.
"""

import csv
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from sitegen.kitchen.composition import FoodRow, label_composition
from sitegen.kitchen.larder import Larder
from sitegen.source.table_rows import BrokenTable, figure

FILL_MARK = "; "


@dataclass(frozen=True)
class CompositionRow:
    """filled: column -> where its figure comes from, for cells that the row's own source leaves empty."""

    ingredient: str
    food: FoodRow
    filled: tuple[tuple[str, str], ...]
    remark: str


def composition_rows(lines: Iterable[str]) -> Iterator[CompositionRow]:
    """The rows of the table, in its order. Raises BrokenTable, or KeyError for a column that is missing."""
    for row in csv.DictReader(lines):
        yield CompositionRow(row["ingredient"], _food(row), tuple(_filled(row["filled"])), row["remark"])


def with_compositions(larder: Larder, rows: Iterable[CompositionRow]) -> Larder:
    """The larder, each ingredient with its composition where a row has it.

    Raises BrokenTable for a row of an ingredient that is not there, or of one that another row has.
    """
    by_name: dict[str, CompositionRow] = {}
    known = {ingredient.key for ingredient in larder.ingredients}
    for row in rows:
        if row.ingredient not in known or row.ingredient in by_name:
            raise BrokenTable(row.ingredient)
        by_name[row.ingredient] = row
    return Larder.of(
        tuple(
            replace(ingredient, composition=label_composition(by_name[ingredient.key].food))
            if ingredient.key in by_name
            else ingredient
            for ingredient in larder.ingredients
        )
    )


def _food(row: dict[str, str]) -> FoodRow:
    def cell(column: str) -> Fraction:
        return figure(row[column])

    return FoodRow(
        protein=cell("protein"),
        fat=cell("fat"),
        saturates=cell("saturates"),
        carbohydrate=cell("carbohydrate"),
        sugars=cell("sugars"),
        fibre=cell("fibre"),
        sodium_mg=cell("sodium_mg"),
        water=cell("water") if row["water"] else None,
        alcohol=cell("alcohol"),
        polyols=cell("polyols"),
        organic_acids=cell("organic_acids"),
        nitrogen_factor=cell("nitrogen_factor"),
        source=row["source"],
    )


def _filled(text: str) -> Iterator[tuple[str, str]]:
    for part in filter(None, text.split(FILL_MARK)):
        column, _, source = part.partition(" ")
        yield column, source
