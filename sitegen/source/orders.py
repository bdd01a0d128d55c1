"""An order as a kitchen writes it: what is made for a day, as frozen values."""

from dataclasses import dataclass, field
from datetime import time

from sitegen.faults import Place
from sitegen.kitchen.amounts import NOWHERE
from sitegen.kitchen.recipe import BatchAsk, Recipe
from sitegen.source.day_hours import DayHour


@dataclass(frozen=True)
class OrderLine:
    """One recipe of an order, at the batch that is asked for."""

    recipe: Recipe
    ask: BatchAsk
    at: Place = field(default=NOWHERE, compare=False, repr=False)


@dataclass(frozen=True)
class Order:
    """What is made for a day. lines: at least one, each recipe once.

    ready_by: None where the order leaves it open. cooks: pairs of hands; oven_loads: loads that the oven
    takes at a time. rest: the hours of the wall between which nobody works, or None.
    """

    title: str
    lines: tuple[OrderLine, ...]
    ready_by: DayHour | None = None
    cooks: int = 1
    oven_loads: int = 1
    rest: tuple[time, time] | None = None
