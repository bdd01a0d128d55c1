"""The work of a recipe on one clock, as rows, totals, a picture and notes for print."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.faults import Place
from sitegen.kitchen.recipe import Component, Span
from sitegen.kitchen.rounding import rounded_minutes
from sitegen.sheet.amounts import duration_text
from sitegen.sheet.plan_notes import plan_notes
from sitegen.sheet.setting import Setting
from sitegen.sheet.timeline import timeline_of
from sitegen.sheet.work_values import PlanRow, Timeline, Times
from sitegen.timing.conflict import CannotPlan
from sitegen.timing.graph import tasks_of
from sitegen.timing.hours import clock, iso_duration
from sitegen.timing.plan import Plan, PlannedTask, lowest, plan


@dataclass(frozen=True)
class Work:
    """plan: a row a step, by start. times: the totals. timeline: None where nothing takes time."""

    plan: tuple[PlanRow, ...]
    times: Times
    timeline: Timeline | None
    notes: tuple[str, ...]


class StepsInConflict(Exception):
    """Steps whose bounds on waiting no order of work can keep.

    names: (component, its step from 1). at: the place of the first.
    """

    def __init__(self, names: tuple[tuple[str, int], ...], at: Place) -> None:
        super().__init__(names)
        self.names = names
        self.at = at


def work_of(
    components: Sequence[Component],
    finished_by: Mapping[str, str],
    summaries: Sequence[str],
    setting: Setting,
) -> Work:
    """The plan of all steps for one cook and one oven.

    components: in printed order, with the times of the batch. finished_by: see `timing.graph.tasks_of`.
    summaries: a short text a step, in printed order. Rows are set by the upper figure of each range; the
    total is given as a range. Raises TaskCircle and StepsInConflict where they cannot be put in an order.
    """
    tasks = tasks_of(components, finished_by)
    try:
        longest, shortest = plan(tasks), plan(tasks, pick=lowest)
    except CannotPlan as error:
        raise steps_in_conflict(components, error.tasks) from error
    rows = plan_rows(longest, components, summaries, setting)
    times = _times(longest, shortest)
    return Work(
        plan=rows,
        times=times,
        timeline=timeline_of(rows, _spoken(rows, times)),
        notes=plan_notes(longest, components, finished_by, setting),
    )


def plan_rows(
    made: Plan, components: Sequence[Component], summaries: Sequence[str], setting: Setting
) -> tuple[PlanRow, ...]:
    """A row for each step that takes time, by start."""
    steps = [step for component in components for step in component.steps]
    return tuple(
        _row(one, summaries[one.task.index], steps[one.task.index].heat, setting)
        for one in made.tasks
        if one.hands_on_min or one.wait_min
    )


def steps_in_conflict(components: Sequence[Component], tasks: Sequence[int]) -> StepsInConflict:
    """The names of steps, by their place among all. components: as planned."""
    numbered = [
        (component.title, number, step.at)
        for component in components
        for number, step in enumerate(component.steps, start=1)
    ]
    found = [numbered[task] for task in tasks]
    return StepsInConflict(tuple((title, number) for title, number, _ in found), found[0][2])


def _row(one: PlannedTask, summary: str, heat: str, setting: Setting) -> PlanRow:
    return PlanRow(
        step=one.task.index + 1,
        component=setting.respelled(one.task.component),
        summary=summary,
        start=clock(one.start_min),
        hands_on=duration_text(one.task.hands_on_min),
        wait=duration_text(one.task.wait_min),
        start_min=one.start_min,
        hands_on_min=one.hands_on_min,
        wait_min=one.wait_min,
        uses_oven=one.task.oven is not None,
        heat="oven" if one.task.oven else heat,
    )


def _spoken(rows: Sequence[PlanRow], times: Times) -> str:
    titles = len({row.component for row in rows})
    return (
        f"The plan as a picture: {len(rows)} steps of {titles} parts, {times.start_to_finish} from start to "
        "finish. The table has the same facts."
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
