"""An order + an edition -> OrderSheet: the production day on one page of code."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime

from sitegen.kitchen.editions import Edition
from sitegen.kitchen.orders import Ordered, order_as_recipe
from sitegen.kitchen.prices import PriceList
from sitegen.kitchen.recipe import BatchAsk, Recipe
from sitegen.kitchen.shopping import shopping_of
from sitegen.kitchen.tables import Tables
from sitegen.sheet.amounts import fraction_text
from sitegen.sheet.batches import TIMES_WORDS, counted
from sitegen.sheet.counter_words import OnCounter, counter_of
from sitegen.sheet.day_plan import Wish, day_plan
from sitegen.sheet.egg_note import egg_note
from sitegen.sheet.heat_words import oven_text
from sitegen.sheet.keeping_words import ASSEMBLED, keeping_rows
from sitegen.sheet.making import Making, making_of
from sitegen.sheet.measure_words import ESTIMATES
from sitegen.sheet.order_cost_words import CostedProduct, order_cost
from sitegen.sheet.order_values import OrderProduct, OrderSheet
from sitegen.sheet.shopping_words import names_to_hand, optional_rows, shopping_sections
from sitegen.sheet.tin_words import batch_tin_text
from sitegen.sheet.values import EditionLabel, SheetCaution
from sitegen.sheet.weigh_out_words import product_of, weigh_outs
from sitegen.sheet.work_values import DayPlan


@dataclass(frozen=True)
class OrderKitchen:
    """What an order is made with.

    bases: all recipes by title. edition: the one printed; written: the one that the recipes are written in.
    prices: what the school pays, None where costs are not wanted.
    """

    bases: Mapping[str, Recipe] = field(hash=False)
    tables: Tables
    edition: Edition
    written: Edition
    prices: PriceList | None = None


Wanted = tuple[Recipe, BatchAsk]


def order_sheet(
    title: str, wanted: Sequence[Wanted], wish: Wish, kitchen: OrderKitchen, now: datetime | None = None
) -> OrderSheet:
    """The production day: what is made, bought, weighed out, done when, and what is in it.

    wanted: at least one recipe, each once, with how much of it. now: see `day_plan.day_plan`.
    Raises what `making_of` raises, TooLate, TaskCircle, and StepsInConflict.
    """
    alone = [(recipe, _made_alone(recipe, ask, kitchen)) for recipe, ask in wanted]
    day = _made_together(title, alone, kitchen)
    setting = day.setting
    shopping = shopping_of(day.made, setting.scales, setting.edition, kitchen.prices)
    products = [OnCounter(recipe.title, made.components) for recipe, made in alone]
    costed = [CostedProduct(recipe, made) for recipe, made in alone]
    edition = setting.edition
    return OrderSheet(
        title=title,
        edition=EditionLabel(edition.key, edition.title, edition.language),
        products=tuple(_product(recipe, made) for recipe, made in alone),
        shopping=shopping_sections(shopping, setting),
        optional=optional_rows(shopping, setting),
        to_hand=names_to_hand(shopping, setting),
        egg_note=egg_note(day.components, setting),
        weigh_outs=weigh_outs(day, title),
        plan=_plan(title, day, wish, now),
        counter=counter_of(products, setting),
        cautions=_cautions([made for _, made in alone]),
        estimates_note=ESTIMATES,
        cost=order_cost(costed, day, kitchen.prices) if kitchen.prices else None,
    )


def _made_alone(recipe: Recipe, ask: BatchAsk, kitchen: OrderKitchen) -> Making:
    return making_of(recipe, kitchen.bases, kitchen.tables, kitchen.edition, kitchen.written, ask)


def _made_together(title: str, alone: Sequence[tuple[Recipe, Making]], kitchen: OrderKitchen) -> Making:
    together = order_as_recipe(title, [Ordered(recipe, made.batch.factor) for recipe, made in alone])
    tins = {recipe.title: made.batch.tin for recipe, made in alone if made.batch.tin is not None}
    return making_of(together, kitchen.bases, kitchen.tables, kitchen.edition, kitchen.written, tins=tins)


def _product(recipe: Recipe, made: Making) -> OrderProduct:
    setting, batch = made.setting, made.batch
    return OrderProduct(
        title=setting.respelled(recipe.title),
        makes=setting.respelled(counted(recipe.makes, batch.makes, batch.ask.each if batch.ask else None)),
        how_much=_how_much(made),
        tin=batch_tin_text(recipe, batch, setting),
        oven=_ovens(made),
        loads=_loads(made),
        keeps=_keeps(made),
    )


def _how_much(made: Making) -> str:
    """'double the recipe', '1.14 times the recipe', 'the recipe as written'."""
    factor = made.batch.factor
    if factor == 1:
        return "the recipe as written"
    return TIMES_WORDS.get(factor) or f"{fraction_text(factor)} times the recipe"


def _keeps(made: Making) -> str:
    """How long the finished piece keeps; '' where only its parts are told of."""
    finished = (ASSEMBLED, made.setting.respelled(made.made[-1].title))
    return next((text for what, text in keeping_rows(made.made, made.setting) if what in finished), "")


def _ovens(made: Making) -> str:
    """Every oven setting, in the order of work, each once."""
    ovens = [step.oven for part in made.components for step in part.steps if step.oven]
    setting = made.setting
    texts = (oven_text(oven, setting.edition, setting.tables.ovens) for oven in ovens)
    return ", then ".join(dict.fromkeys(texts))


def _loads(made: Making) -> str:
    """How often the oven is filled with it, '' for what is not baked."""
    loads = [part.growth.loads for part in made.parts for step in part.component.steps if step.oven]
    if not loads:
        return ""
    return f"{max(loads)} oven loads" if max(loads) > 1 else "1 oven load"


def _plan(title: str, day: Making, wish: Wish, now: datetime | None) -> DayPlan:
    """The joint work; each row names the product with the component."""
    plan = day_plan(title, day.in_batch, day.summaries, wish, day.setting, now)
    respelled = day.setting.respelled
    products = {respelled(part.made.title): respelled(product_of(part)) for part in day.parts}
    rows = tuple(replace(one, row=replace(one.row, product=products[one.row.component])) for one in plan.rows)
    return replace(plan, rows=rows)


def _cautions(makings: Sequence[Making]) -> tuple[SheetCaution, ...]:
    """Each caution once, red ones first, else in the order of the products."""
    found = {one.key: one for made in makings for one in made.cautions.cautions}
    return tuple(sorted(found.values(), key=lambda one: one.level != "red"))
