"""What a recipe costs, at any batch: for the terminal, never for a leaf of the output."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from pathlib import Path

from sitegen.kitchen.costing import Cost, cost_of
from sitegen.kitchen.declared import tables_of
from sitegen.kitchen.part_errors import RECIPE_AT_FAULT
from sitegen.kitchen.prices import PriceList
from sitegen.kitchen.recipe import BatchAsk, Recipe
from sitegen.kitchen.scaling import Batch, CannotScale, batch_of, tested_batch
from sitegen.release.asking import (
    AtFault,
    BatchWords,
    NotAsked,
    batch_asked,
    recipe_named,
    school_without_errors,
)
from sitegen.release.proof import proof
from sitegen.sheet.batches import batch_label
from sitegen.sheet.checks import WHY_NOT
from sitegen.sheet.cost_words import CostSheet, cost_sheet
from sitegen.sheet.making import made_as_grown
from sitegen.sheet.setting import Setting
from sitegen.source.library import read_content
from sitegen.source.misread import Misread
from sitegen.source.prices import read_margin
from sitegen.source.school import Content, School

GRAMS_IN_KILOGRAM = 1000


@dataclass(frozen=True)
class _Counter:
    """What a cost is counted with."""

    recipe: Recipe
    bases: Mapping[str, Recipe]
    setting: Setting
    prices: PriceList

    def batch(self, ask: BatchAsk | None) -> Batch:
        if ask is None:
            return tested_batch(self.recipe)
        return batch_of(ask, self.recipe, self.bases, self.setting.tables, self.setting.written)

    def cost(self, batch: Batch) -> Cost:
        made = made_as_grown(self.recipe, self.bases, batch, self.setting)
        if self.recipe.makes.noun:
            return cost_of(made, batch.makes, self.prices, self.setting.scales.weigh)
        # What is made by weight is not sold by the piece.
        by_weight = replace(self.prices, per_piece=())
        return cost_of(made, batch.makes / GRAMS_IN_KILOGRAM, by_weight, self.setting.scales.weigh)


def asked_cost(root: Path, name: str, words: BatchWords, margin: str = "") -> CostSheet:
    """What a batch of one recipe costs. name: its slug or title.

    margin: '65 %' or '65', '' for the list's own.
    Faults of other recipes do not stand in the way. Raises NotAsked and AtFault.
    """
    content = read_content(root)
    recipe = recipe_named(content, name)
    school = school_without_errors(content, recipe)
    if content.prices is None:
        raise NotAsked("there is no content/prices.yaml", "'sitegen schema prices' tells what stands in it")
    share = _margin(margin, content.prices)
    ask = batch_asked(words, recipe, content)
    counter = _counter(recipe, content, school, content.prices)
    try:
        batch = counter.batch(ask)
        label = batch_label(ask, recipe, batch.makes, counter.setting)
        return cost_sheet(recipe, label.title, counter.cost(batch), share)
    except CannotScale as problem:
        raise NotAsked(f"'{recipe.title}' cannot be made so: {WHY_NOT[problem.reason]}") from problem
    except RECIPE_AT_FAULT as problem:
        raise AtFault(proof(root).errors, content.texts) from problem


def _counter(recipe: Recipe, content: Content, school: School, prices: PriceList) -> _Counter:
    bases = {each.title: each for each in content.recipes}
    tables = tables_of(recipe, bases, content.tables)
    written = tables.editions[school.written_in]
    return _Counter(recipe, bases, Setting(tables, written, written), prices)


def _margin(words: str, prices: PriceList) -> Fraction | None:
    if not words.strip():
        return prices.margin
    try:
        return read_margin(f"{words.strip().removesuffix('%').strip()} %")
    except Misread as problem:
        raise NotAsked(problem.sentence, problem.way_out) from problem
