"""How long a recipe takes: ranges for readers, and the durations that machines read."""

from collections.abc import Sequence
from fractions import Fraction

from sitegen.kitchen.amounts import Span
from sitegen.kitchen.recipe import Component
from sitegen.kitchen.rounding import rounded_minutes
from sitegen.sheet.amounts import duration_text
from sitegen.sheet.work_values import Times
from sitegen.timing.heated import heated_min
from sitegen.timing.hours import iso_duration
from sitegen.timing.plan import Plan

NOTHING = Fraction(0)


def times_of(longest: Plan, shortest: Plan, components: Sequence[Component]) -> Times:
    """Totals of the plans by the upper and by the lower figures of all ranges.

    components: as planned. Waiting is what the hands-on time leaves of the whole, never a sum of waits.
    For machines the upper figures count: work away from the hob is preparation, work at it and what stands in
    the oven is cooking; cooling and rising are neither, and count in the total alone.
    Source: https://schema.org/prepTime, cookTime, totalTime.
    """
    steps = [step for component in components for step in component.steps]
    on_hob = {place for place, step in enumerate(steps) if step.heat == "hob"}
    prepared = sum((one.hands_on_min for one in longest.tasks if one.task.index not in on_hob), NOTHING)
    heated = heated_min(longest, on_hob)
    return Times(
        hands_on=_range(shortest.hands_on_min, longest.hands_on_min),
        waiting=_range(_waiting(shortest), _waiting(longest)),
        start_to_finish=_range(shortest.total_min, longest.total_min),
        hands_on_iso=iso_duration(prepared),
        cook_iso=iso_duration(heated) if heated else "",
        total_iso=iso_duration(longest.total_min),
        hands_on_min=longest.hands_on_min,
        total_min=longest.total_min,
    )


def _waiting(made: Plan) -> Fraction:
    return max(made.total_min - made.hands_on_min, NOTHING)


def _range(low: Fraction, high: Fraction) -> str:
    return duration_text(Span(*sorted((rounded_minutes(low), rounded_minutes(high)))))
