"""What a school pays: a price list, as frozen values. It is for the kitchen and never for a reader."""

from dataclasses import dataclass
from fractions import Fraction

from sitegen.faults import Place
from sitegen.kitchen.amounts import NOWHERE, Amount
from sitegen.kitchen.recipe import Choice


@dataclass(frozen=True)
class Price:
    """What is paid for an amount of an ingredient: 1.20 per 1.5 kg.

    choice: the ingredient, with its size where the price is for one. money: in the list's currency, 0 or
    more.
    """

    choice: Choice
    money: Fraction
    amount: Amount
    at: Place = NOWHERE


@dataclass(frozen=True)
class Charge:
    """What is paid beside ingredients. name: 'cupcake case'. money: in the list's currency."""

    name: str
    money: Fraction


@dataclass(frozen=True)
class PriceList:
    """currency: ISO 4217.

    per_piece: for each piece that is sold; per_batch: for each making, whatever its size.
    labour_per_hour: of hands-on time, None where it is not counted. margin: share of the price that is kept
    (13/20 for 65 %), None where none is set.
    """

    currency: str
    prices: tuple[Price, ...]
    per_piece: tuple[Charge, ...] = ()
    per_batch: tuple[Charge, ...] = ()
    labour_per_hour: Fraction | None = None
    margin: Fraction | None = None

    def price_of(self, ingredient: str, size: str = "") -> Price | None:
        """The price of an ingredient (its key in the larder), or None.

        That of the very size goes before one without a size, and that before one of another size.
        """
        rows = [price for price in self.prices if price.choice.ingredient == ingredient]
        nearness = {size: 0, "": 1}
        return min(rows, key=lambda price: nearness.get(price.choice.size, 2), default=None)
