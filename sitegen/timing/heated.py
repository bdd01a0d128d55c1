"""How long something stands at a heat."""

from collections.abc import Collection, Iterable
from fractions import Fraction

from sitegen.timing.plan import Plan

Stretch = tuple[Fraction, Fraction]


def heated_min(made: Plan, on_hob: Collection[int]) -> Fraction:
    """Minutes of a plan in which something is in the oven or is worked on the hob; together they count once.

    on_hob: indices of the steps whose hands-on time is spent at the hob.
    """
    at_hob = [(one.start_min, one.free_min) for one in made.tasks if one.task.index in on_hob]
    baking = [(one.free_min, one.end_min) for one in made.tasks if one.task.oven is not None]
    stretches = [*at_hob, *baking]
    return sum((end - start for start, end in joined_stretches(stretches)), Fraction(0))


def joined_stretches(stretches: Iterable[Stretch]) -> list[Stretch]:
    """Stretches in order, those that touch or overlap made one."""
    found: list[Stretch] = []
    for start, end in sorted(stretches):
        if found and start <= found[-1][1]:
            found[-1] = (found[-1][0], max(end, found[-1][1]))
        else:
            found.append((start, end))
    return found
