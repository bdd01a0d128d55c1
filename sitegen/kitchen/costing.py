"""What a batch costs, and what a piece must be sold for: exact, and never silent on what has no price."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from sitegen.kitchen.amounts import Amount, Span
from sitegen.kitchen.prices import Charge, Price, PriceList
from sitegen.kitchen.recipe import Choice, IngredientLine
from sitegen.kitchen.shares import MadeComponent

MINUTES_IN_HOUR = 60
WHOLE_EGG, EGG_PARTS = "egg", ("egg white", "egg yolk")
NOTHING = Fraction(0)

WeighChoice = Callable[[Amount, Choice], Span | None]
"""An amount of an ingredient -> its grams, or None."""


class NoMargin(Exception):
    """A margin that no price can give: under 0 or from 100 % on. margin: as a share."""

    def __init__(self, margin: Fraction) -> None:
        super().__init__(margin)
        self.margin = margin


class WhyNoCost(StrEnum):
    """Why a line has no cost."""

    NO_PRICE = "no-price"
    NO_WEIGHT = "no-weight"
    NO_AMOUNT = "no-amount"
    OPTIONAL = "optional"


@dataclass(frozen=True)
class LineCost:
    """What one ingredient line costs in the batch.

    grams: in the batch, None where unknown. money: exact, None where it has no cost, and why_not says why.
    """

    component: str
    line: IngredientLine
    grams: Fraction | None
    money: Fraction | None
    why_not: WhyNoCost | None = None


@dataclass(frozen=True)
class Cost:
    """What a batch costs, in the currency of the price list, exact.

    lines: every ingredient line. labour: of `hands_on_min`, None where it is not counted. per_piece: charges
    of all pieces together. pieces: that the batch makes, kilograms for a yield by weight.
    """

    currency: str
    lines: tuple[LineCost, ...]
    per_piece: tuple[Charge, ...]
    per_batch: tuple[Charge, ...]
    labour: Fraction | None
    hands_on_min: Fraction
    pieces: Fraction

    @property
    def ingredients(self) -> Fraction:
        """Of the lines that have a cost."""
        return sum((line.money for line in self.lines if line.money is not None), NOTHING)

    @property
    def total(self) -> Fraction:
        """Of the whole batch; at least that where `missing` names anything."""
        charges = sum((charge.money for charge in (*self.per_piece, *self.per_batch)), NOTHING)
        return self.ingredients + charges + (self.labour or NOTHING)

    @property
    def each(self) -> Fraction:
        """Of one piece, of one kilogram for a yield by weight."""
        return self.total / self.pieces

    @property
    def missing(self) -> tuple[LineCost, ...]:
        """What goes in and has no cost: no price is known of it, or it cannot be weighed."""
        unknown = (WhyNoCost.NO_PRICE, WhyNoCost.NO_WEIGHT)
        return tuple(line for line in self.lines if line.why_not in unknown)

    @property
    def uncounted(self) -> tuple[LineCost, ...]:
        """What is left to the cook: optional, or without an amount."""
        left = (WhyNoCost.NO_AMOUNT, WhyNoCost.OPTIONAL)
        return tuple(line for line in self.lines if line.why_not in left)


def cost_of(made: Sequence[MadeComponent], pieces: Fraction, prices: PriceList, weigh: WeighChoice) -> Cost:
    """The cost of a batch: all that goes in, what is spare and left over with it.

    made: its components. pieces: that it makes (kilograms for a yield by weight), above 0.
    weigh: as the school's own kitchen does. A count is held against a price by the piece as it is; all else
    by weight. Whites and yolks without a price of their own cost their share of the egg's weight; a fruit
    costs the whole of it, whatever part is taken. Hands-on time is that of the steps as they come: grown by
    the batch, where the caller has let them grow.
    Source: common practice.
    """
    hands_on = sum((_hands_on_min(one) for one in made), NOTHING)
    rate = prices.labour_per_hour
    return Cost(
        currency=prices.currency,
        lines=tuple(line for one in made for line in _line_costs(one, prices, weigh)),
        per_piece=tuple(Charge(charge.name, charge.money * pieces) for charge in prices.per_piece),
        per_batch=prices.per_batch,
        labour=None if rate is None else rate * hands_on / MINUTES_IN_HOUR,
        hands_on_min=hands_on,
        pieces=pieces,
    )


def price_at_margin(cost: Fraction, margin: Fraction) -> Fraction:
    """The price that keeps a margin, before tax: cost / (1 - margin).

    margin: the share of the price (not of the cost) that is kept, 0 to under 1: at 65 % a cost of 0.35 sells
    for 1. Raises NoMargin. Source: common practice, gross margin.
    """
    if not 0 <= margin < 1:
        raise NoMargin(margin)
    return cost / (1 - margin)


def margin_of(price: Fraction, cost: Fraction) -> Fraction:
    """The share of a price that is left when the cost is paid. price: above 0."""
    return (price - cost) / price


def _hands_on_min(made: MadeComponent) -> Fraction:
    spans = (step.hands_on_min for step in made.component.steps)
    return sum((span.middle for span in spans if span), NOTHING)


def _line_costs(made: MadeComponent, prices: PriceList, weigh: WeighChoice) -> Iterator[LineCost]:
    for line, grams in zip(made.component.lines, made.line_grams, strict=True):
        if isinstance(line, IngredientLine):
            money, why_not = _line_cost(line, made.factor, prices, weigh)
            yield LineCost(made.title, line, grams, money, why_not)


def _line_cost(
    line: IngredientLine, factor: Fraction, prices: PriceList, weigh: WeighChoice
) -> tuple[Fraction | None, WhyNoCost | None]:
    if line.amount is None:
        return None, WhyNoCost.NO_AMOUNT
    if line.optional:
        return None, WhyNoCost.OPTIONAL
    price = _price_for(line.chosen, prices)
    if price is None:
        return None, WhyNoCost.NO_PRICE
    bought = _share_of_bought(line.amount, line.chosen, price, weigh)
    if bought is None:
        return None, WhyNoCost.NO_WEIGHT
    return price.money * bought * factor, None


def _price_for(choice: Choice, prices: PriceList) -> Price | None:
    own = prices.price_of(choice.ingredient, choice.size) if choice.ingredient else None
    if own is None and choice.ingredient in EGG_PARTS:
        return prices.price_of(WHOLE_EGG, choice.size)
    return own


def _share_of_bought(amount: Amount, choice: Choice, price: Price, weigh: WeighChoice) -> Fraction | None:
    """What an amount is of the amount that is paid for; None where the two cannot be compared."""
    is_part_of_egg = choice.ingredient in EGG_PARTS or (choice.ingredient == WHOLE_EGG and bool(choice.part))
    is_same_size = not choice.size or not price.choice.size or choice.size == price.choice.size
    if amount.unit == price.amount.unit and is_same_size and not is_part_of_egg:
        return amount.span.middle / price.amount.span.middle
    used = weigh(amount, choice if is_part_of_egg else _whole(choice))
    paid = weigh(price.amount, price.choice)
    if used is None or paid is None or not paid.middle:
        return None
    return used.middle / paid.middle


def _whole(choice: Choice) -> Choice:
    """The choice without the part that is taken of it: a lemon is bought for its zest."""
    return Choice(choice.name, choice.ingredient, choice.size)
