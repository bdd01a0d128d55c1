"""Faults of an order that show only when it is made: a batch that its recipe cannot give."""

from collections.abc import Iterator, Sequence

from sitegen.faults import Fault, FaultCode, Place, Severity
from sitegen.kitchen.part_errors import RECIPE_AT_FAULT
from sitegen.kitchen.recipe import BatchAsk, Recipe
from sitegen.kitchen.scaling import CannotScale, batch_of
from sitegen.sheet.checks import WHY_NOT, Shelf

CANNOT_MAKE = FaultCode(
    "order-cannot-be-made",
    Severity.ERROR,
    "An order asks for a batch that cannot be worked out from the recipe.",
    "Ask for a sensible count, or for a factor of the recipe.",
    good="24 cupcakes",
    bad="90000 cupcakes",
    file="order.yaml",
)
CODES = (CANNOT_MAKE,)


def order_faults(wanted: Sequence[tuple[Recipe, BatchAsk, Place]], shelf: Shelf) -> Iterator[Fault]:
    """A fault for each batch that cannot be given. wanted: with the place in the order file."""
    for recipe, ask, place in wanted:
        try:
            batch_of(ask, recipe, shelf.bases, shelf.tables, shelf.written)
        except CannotScale as error:
            yield CANNOT_MAKE.fault(place, f"'{recipe.title}' cannot be made so: {WHY_NOT[error.reason]}")
        except RECIPE_AT_FAULT:
            continue
