"""What is to be measured, and what comes of it: the values that the measuring of a line passes on."""

from dataclasses import dataclass
from fractions import Fraction

from sitegen.kitchen.amounts import Amount
from sitegen.kitchen.larder import Ingredient
from sitegen.kitchen.recipe import Choice
from sitegen.kitchen.weighing import is_hens_egg

FINE_ROLES = frozenset({"salt", "leavening", "yeast", "gelatine"})
SPOON_UNITS = frozenset({"tsp", "tbsp", "pinch", "dash"})
COUNT_UNITS = frozenset({"", "leaf", "packet"})
MILLILITRE_UNITS = frozenset({"ml", "l", "cl", "dl"})
USUAL_TOLERANCE = Fraction(3, 100)


def keeps_fine_step(row: Ingredient | None) -> bool:
    """Whether an ingredient keeps the finer step of salt, leavening, yeast and gelatine."""
    return row is not None and bool(row.roles & FINE_ROLES)


@dataclass(frozen=True)
class Measured:
    """An amount as printed.

    amount, beside: the first measure and the one beside it; '' for none.
    exact_g: the weight that the recipe means; printed_g: the weight of what is printed; None unknown.
    count: how many, for what is counted (it decides between 'lemon' and 'lemons'); None else.
    rest: what comes on top of a count, 'plus 26 g of another, beaten', or where a weight is taken from.
    beaten: the weight that comes on top of a count, '26 g'; '' for none.
    """

    amount: str
    beside: str = ""
    exact_g: Fraction | None = None
    printed_g: Fraction | None = None
    count: Fraction | None = None
    rest: str = ""
    beaten: str = ""

    @property
    def all_of_it(self) -> str:
        """The amount in one phrase, as a step takes it: '1 medium + 26 g'."""
        return " + ".join(text for text in (self.amount, self.beaten) if text)


@dataclass(frozen=True)
class Ask:
    """What is to be measured: an amount as written, of a choice, times a factor.

    tolerance: how far cups, spoons and ounces may be off, as a share.
    """

    amount: Amount
    choice: Choice
    row: Ingredient | None
    factor: Fraction
    tolerance: Fraction = USUAL_TOLERANCE

    @property
    def is_fine(self) -> bool:
        return keeps_fine_step(self.row)

    @property
    def is_spooned(self) -> bool:
        """Whether the baker wrote spoons."""
        return self.amount.unit in SPOON_UNITS

    @property
    def is_egg(self) -> bool:
        """Whether hen's eggs are asked for, or their whites or yolks."""
        return self.row is not None and is_hens_egg(self.row)
