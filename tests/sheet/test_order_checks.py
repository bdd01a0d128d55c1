"""Batches of an order that no recipe can give."""

from fractions import Fraction

from sitegen.faults import Place
from sitegen.kitchen.recipe import BatchAsk, BatchKind, Component, Makes
from sitegen.sheet.checks import Shelf
from sitegen.sheet.order_checks import order_faults
from tests.sheet.pantry import line, recipe, tables

HERE = Place("content/orders/a.yaml", 3, 3, 5)
SHELF = Shelf({}, tables(), (), tables().editions["british-metric"])
CAKES = recipe(Component("Cake", (line(100, "g", "plain flour"),), ()), makes=Makes(Fraction(12), "cakes"))


def faults(count: int) -> list[tuple[str, Place]]:
    ask = BatchAsk(BatchKind.MAKES, makes=Fraction(count))
    return [(fault.code, fault.place) for fault in order_faults([(CAKES, ask, HERE)], SHELF)]


def test_a_sensible_count_has_no_fault() -> None:
    assert faults(36) == []


def test_an_absurd_one_is_marked_in_the_order() -> None:
    assert faults(90000) == [("order-cannot-be-made", HERE)]
