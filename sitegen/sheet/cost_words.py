"""What a batch costs, as texts for the kitchen's own eyes: the terminal and the production sheet.

Money is rounded here and nowhere else: a cost to the nearest hundredth of the currency's unit, a price up
to the next, so that the margin is kept.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor

from sitegen.kitchen.amounts import Span, single
from sitegen.kitchen.costing import Cost, LineCost, WhyNoCost, price_at_margin
from sitegen.kitchen.recipe import Recipe
from sitegen.kitchen.rounding import rounded_grams, rounded_minutes
from sitegen.sheet.amounts import decimal_text, duration_text, grams_text
from sitegen.sheet.batches import singular

HALF = Fraction(1, 2)
HUNDREDTHS = 100
PER_KILOGRAM = "kilogram"
AT_LEAST = "at least "


@dataclass(frozen=True)
class CostRow:
    """One row. part: title of the component, '' for what is for the whole. money: '1.20', '' for none."""

    part: str
    what: str
    money: str


@dataclass(frozen=True)
class CostSheet:
    """What a batch costs.

    title: 'Lemon shortbread, 12 squares'. currency: ISO 4217. rows: ingredients, then charges and labour.
    totals: (what, money): ingredients, whole batch, each piece, its price. missing: what has no cost, with
    the reason; the totals then begin with 'at least'. notes: what was counted and how.
    """

    title: str
    currency: str
    rows: tuple[CostRow, ...]
    totals: tuple[tuple[str, str], ...]
    missing: tuple[str, ...]
    notes: tuple[str, ...]


def cost_sheet(recipe: Recipe, batch_title: str, cost: Cost, margin: Fraction | None) -> CostSheet:
    """The texts of a cost. margin: share of the price that is kept, under 1; None where none is asked for."""
    return CostSheet(
        title=f"{recipe.title}, {batch_title}",
        currency=cost.currency,
        rows=tuple(_rows(cost)),
        totals=tuple(_totals(recipe, cost, margin)),
        missing=tuple(dict.fromkeys(missing_text(line) for line in cost.missing)),
        notes=tuple(_notes(cost, margin)),
    )


def money_text(money: Fraction) -> str:
    """A cost to the nearest hundredth, halves up: '4.31'; what is less than half of one is '<0.01'."""
    if 0 < money * HUNDREDTHS < HALF:
        return "<0.01"
    return _hundredths_text(floor(money * HUNDREDTHS + HALF))


def price_text(price: Fraction) -> str:
    """A price up to the next hundredth: '0.86'."""
    return _hundredths_text(ceil(price * HUNDREDTHS))


def _hundredths_text(hundredths: int) -> str:
    whole, rest = divmod(hundredths, HUNDREDTHS)
    return f"{whole}.{rest:02d}"


def _rows(cost: Cost) -> Iterator[CostRow]:
    for line in cost.lines:
        if line.money is not None:
            yield CostRow(line.component, _line_text(line), money_text(line.money))
    for charge in (*cost.per_piece, *cost.per_batch):
        yield CostRow("", charge.name, money_text(charge.money))
    if cost.labour is not None:
        minutes = rounded_minutes(cost.hands_on_min)
        yield CostRow("", f"hands-on time, {duration_text(Span(minutes, minutes))}", money_text(cost.labour))


def _line_text(line: LineCost) -> str:
    chosen = line.line.chosen
    name = chosen.name if chosen.part in chosen.name else f"{chosen.name} {chosen.part}"
    if line.grams is None or not line.grams:
        return name
    return f"{grams_text(single(rounded_grams(line.grams, fine=line.grams < 10)))} {name}"


def _totals(recipe: Recipe, cost: Cost, margin: Fraction | None) -> Iterator[tuple[str, str]]:
    least = AT_LEAST if cost.missing else ""
    piece = singular(recipe.makes.noun) if recipe.makes.noun else PER_KILOGRAM
    yield "ingredients", least + money_text(cost.ingredients)
    yield "the batch", least + money_text(cost.total)
    yield f"a {piece}", least + money_text(cost.each)
    if margin is not None:
        price = price_text(price_at_margin(cost.each, margin))
        yield f"price of a {piece} at a margin of {_percent(margin)}", least + price


def _percent(share: Fraction) -> str:
    return f"{decimal_text(share * 100)} %"


def missing_text(line: LineCost) -> str:
    has_price = line.why_not is not WhyNoCost.NO_PRICE
    why = "its amount cannot be held against its price" if has_price else "no price"
    return f"{line.line.chosen.name} ({why})"


def _notes(cost: Cost, margin: Fraction | None) -> Iterator[str]:
    if cost.uncounted:
        yield f"Not counted, as it is left to the cook: {_names(cost.uncounted)}."
    if cost.labour is not None:
        yield "Hands-on time grows with the batch where a step says so; else it is that of the test."
    if margin is not None:
        yield "The margin is a share of the price, before tax: price = cost / (1 - margin)."


def _names(lines: Sequence[LineCost]) -> str:
    return ", ".join(dict.fromkeys(line.line.chosen.name for line in lines))
