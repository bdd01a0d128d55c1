"""When the oven is switched on before its first load, and set to another temperature between two."""

from dataclasses import dataclass
from fractions import Fraction

from sitegen.kitchen.method import OvenSetting
from sitegen.timing.plan import Plan

HEAT_UP_MIN = Fraction(15)
"""Source: common practice, an oven needs about a quarter of an hour."""
LEFT_ON_MIN = Fraction(45)
"""Between two loads; for longer it is switched off in between. Source: common practice."""


@dataclass(frozen=True)
class OvenCall:
    """A hand on the oven's switch.

    at_min: on the plan's clock, negative before the work begins. oven: what it is set to.
    from_cold: whether it was off before.
    """

    at_min: Fraction
    oven: OvenSetting
    from_cold: bool


def oven_calls(made: Plan) -> tuple[OvenCall, ...]:
    """Each time that the oven is switched on or set anew, so that it is hot for what it then bakes."""
    calls: list[OvenCall] = []
    free_at: Fraction | None = None
    for one in sorted(made.tasks, key=lambda each: each.free_min):
        oven = one.task.oven
        if oven is None or not one.wait_min:
            continue
        if free_at is None or one.free_min - free_at > LEFT_ON_MIN:
            calls.append(OvenCall(one.free_min - HEAT_UP_MIN, oven, from_cold=True))
        elif oven != calls[-1].oven:
            calls.append(OvenCall(max(free_at, one.free_min - HEAT_UP_MIN), oven, from_cold=False))
        free_at = one.end_min if free_at is None else max(free_at, one.end_min)
    return tuple(calls)
