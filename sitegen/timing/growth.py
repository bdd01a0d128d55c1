"""What a batch does to the times of a component: piping grows, an oven takes several loads, a mix stays."""

from dataclasses import dataclass, replace
from fractions import Fraction
from math import ceil

from sitegen.kitchen.method import Step
from sitegen.kitchen.recipe import Component, Tin

FITS_ONE_MORE = Fraction(15, 100)
"""How much over a load still goes in with it. Source: common practice, a tin that is a little fuller."""


@dataclass(frozen=True)
class Growth:
    """factor: how much of the component as written is made.

    loads: how often an oven is filled that takes as much as the tested one. tins: in all of them.
    """

    factor: Fraction
    loads: int
    tins: int = 1


def growth_of(factor: Fraction, tested: Tin | None = None, wanted: Tin | None = None) -> Growth:
    """The growth of a component in a batch.

    tested, wanted: the recipe's tin and the one that this batch is baked in, where it is another. As many
    tins as the tested batch has are one load; in the same tins, as many loads as times the batch was made.
    """
    if tested is not None and wanted is not None and wanted != tested:
        return Growth(factor, ceil(Fraction(wanted.number, tested.number)), wanted.number)
    loads = max(ceil(factor - FITS_ONE_MORE), 1)
    return Growth(factor, loads, loads * (tested.number if tested else 1))


def grown(component: Component, growth: Growth) -> Component:
    """The component with the times that its batch asks for.

    Hands-on times that are said to grow are multiplied; a step in the oven is gone through once a load; all
    others stay.
    """
    return replace(component, steps=tuple(_grown(step, growth) for step in component.steps))


def _grown(step: Step, growth: Growth) -> Step:
    hands_on = step.hands_on_min
    if step.grows and hands_on is not None:
        hands_on = hands_on.times(growth.factor)
    if not (step.oven and step.wait_min):
        return replace(step, hands_on_min=hands_on)
    return replace(step, hands_on_min=hands_on, loads=growth.loads, tins=growth.tins)
