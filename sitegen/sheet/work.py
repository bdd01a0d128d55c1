"""The work of a recipe on one clock, as rows and totals for print."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.kitchen.recipe import Component, Span
from sitegen.kitchen.rounding import rounded_minutes
from sitegen.sheet.amounts import duration_text
from sitegen.sheet.values import PlanRow, Times
from sitegen.timing.graph import tasks_of
from sitegen.timing.hours import clock, iso_duration
from sitegen.timing.plan import Plan, PlannedTask, lowest, plan


@dataclass(frozen=True)
class Work:
    """plan: a row a step, by start. times: the totals."""

    plan: tuple[PlanRow, ...]
    times: Times


def work_of(
    components: Sequence[Component], finished_by: Mapping[str, str], summaries: Sequence[str]
) -> Work:
    """The plan of all steps for one cook and one oven.

    components: in printed order. finished_by: see `timing.graph.tasks_of`. summaries: a short text a step,
    in printed order. Rows are set by the upper figure of each range; the total is given as a range.
    """
    tasks = tasks_of(components, finished_by)
    longest = plan(tasks)
    shortest = plan(tasks, pick=lowest)
    rows = tuple(
        _row(one, summaries[one.task.index]) for one in longest.tasks if one.task.hands_on_min or one.wait_min
    )
    return Work(rows, _times(longest, shortest))


def _row(one: PlannedTask, summary: str) -> PlanRow:
    return PlanRow(
        step=one.task.index + 1,
        component=one.task.component,
        summary=summary,
        start=clock(one.start_min),
        hands_on=duration_text(one.task.hands_on_min),
        wait=duration_text(one.task.wait_min),
        start_min=one.start_min,
        hands_on_min=one.hands_on_min,
        wait_min=one.wait_min,
        uses_oven=one.task.oven is not None,
    )


def _times(longest: Plan, shortest: Plan) -> Times:
    """Totals: waiting is what the hands-on time leaves of the whole, never a sum of waits."""
    hands_on = _rounded(shortest.hands_on_min, longest.hands_on_min)
    waiting = _rounded(
        max(shortest.total_min - shortest.hands_on_min, Fraction(0)),
        max(longest.total_min - longest.hands_on_min, Fraction(0)),
    )
    return Times(
        hands_on=duration_text(hands_on),
        waiting=duration_text(waiting),
        start_to_finish=duration_text(_rounded(shortest.total_min, longest.total_min)),
        hands_on_iso=iso_duration(longest.hands_on_min),
        cook_iso=iso_duration(max(longest.total_min - longest.hands_on_min, Fraction(0))),
        total_iso=iso_duration(longest.total_min),
    )


def _rounded(low: Fraction, high: Fraction) -> Span:
    return Span(*sorted((rounded_minutes(low), rounded_minutes(high))))
