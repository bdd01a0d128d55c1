"""What an order costs, as texts for the kitchen's own eyes."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from sitegen.kitchen.amounts import Span
from sitegen.kitchen.costing import Cost, cost_of
from sitegen.kitchen.prices import Charge, PriceList
from sitegen.kitchen.recipe import Recipe
from sitegen.kitchen.rounding import rounded_minutes
from sitegen.kitchen.shares import MadeComponent
from sitegen.sheet.amounts import duration_text, joined
from sitegen.sheet.batches import singular
from sitegen.sheet.cost_words import AT_LEAST, PER_KILOGRAM, missing_text, money_text
from sitegen.sheet.making import Making
from sitegen.sheet.order_values import OrderCost, ProductCost
from sitegen.sheet.setting import Setting

GRAMS_IN_KILOGRAM = 1000
NOTHING = Fraction(0)
ONE_BY_ONE = (
    "Each product bears its own share of the base recipes; charges and hands-on time are counted for the day."
)


@dataclass(frozen=True)
class CostedProduct:
    """A recipe at its batch, made by itself."""

    recipe: Recipe
    making: Making

    @property
    def pieces(self) -> Fraction:
        """Pieces that are sold; kilograms for a yield by weight."""
        makes = self.making.batch.makes
        return makes if self.recipe.makes.noun else makes / GRAMS_IN_KILOGRAM


def order_cost(products: Sequence[CostedProduct], day: Making, prices: PriceList) -> OrderCost:
    """The cost of all products and of the whole day.

    day: all of them made together. Charges by the batch are counted once a product, those by the piece for
    what is sold by the piece; hands-on time is that of the day. The products' ingredients make up the day's.
    """
    bare = replace(prices, per_piece=(), per_batch=(), labour_per_hour=None)
    alone = [(one, _cost(one.making.made, one.pieces, bare, one.making.setting)) for one in products]
    whole = _cost(_as_grown(day), _sold(products), _for_day(prices, len(products)), day.setting)
    return OrderCost(
        currency=prices.currency,
        rows=tuple(_row(one, cost, day.setting) for one, cost in alone),
        totals=tuple(_totals(whole)),
        missing=tuple(dict.fromkeys(missing_text(line) for line in whole.missing)),
        notes=tuple(_notes(whole)),
    )


def _cost(made: Sequence[MadeComponent], pieces: Fraction, prices: PriceList, setting: Setting) -> Cost:
    return cost_of(made, pieces, prices, setting.scales.weigh)


def _sold(products: Sequence[CostedProduct]) -> Fraction:
    return sum((one.pieces for one in products if one.recipe.makes.noun), NOTHING)


def _for_day(prices: PriceList, products: int) -> PriceList:
    per_batch = tuple(Charge(charge.name, charge.money * products) for charge in prices.per_batch)
    return replace(prices, per_batch=per_batch)


def _as_grown(day: Making) -> tuple[MadeComponent, ...]:
    """What is made, with the hands-on times that grow with the batch."""
    return tuple(replace(part.made, component=part.component) for part in day.parts)


def _row(one: CostedProduct, cost: Cost, setting: Setting) -> ProductCost:
    least = AT_LEAST if cost.missing else ""
    noun = one.recipe.makes.noun
    piece = setting.respelled(singular(noun)) if noun else PER_KILOGRAM
    return ProductCost(
        product=setting.respelled(one.recipe.title),
        ingredients=least + money_text(cost.ingredients),
        each=f"{least}{money_text(cost.each)} a {piece}",
    )


def _totals(whole: Cost) -> Iterator[tuple[str, str]]:
    least = AT_LEAST if whole.missing else ""
    yield "ingredients", least + money_text(whole.ingredients)
    for charge in (*whole.per_piece, *whole.per_batch):
        yield charge.name, money_text(charge.money)
    if whole.labour is not None:
        minutes = rounded_minutes(whole.hands_on_min)
        yield f"hands-on time, {duration_text(Span(minutes, minutes))}", money_text(whole.labour)
    yield "the whole day", least + money_text(whole.total)


def _notes(whole: Cost) -> Iterator[str]:
    yield ONE_BY_ONE
    if whole.uncounted:
        names = tuple(dict.fromkeys(line.line.chosen.name for line in whole.uncounted))
        yield f"Not counted, as it is left to the cook: {joined(names)}."
