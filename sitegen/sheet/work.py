"""The work of a recipe on one clock, as rows, totals, a picture and notes for print."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from sitegen import limits
from sitegen.kitchen.recipe import Component
from sitegen.sheet.amounts import duration_text
from sitegen.sheet.conflict_words import TooManySteps, steps_in_conflict
from sitegen.sheet.plan_notes import plan_notes
from sitegen.sheet.setting import Setting
from sitegen.sheet.timeline import timeline_of
from sitegen.sheet.times import times_of
from sitegen.sheet.work_values import PlanRow, Timeline, Times
from sitegen.timing.conflict import CannotPlan
from sitegen.timing.graph import tasks_of
from sitegen.timing.hours import clock
from sitegen.timing.plan import Plan, PlannedTask, lowest, plan


@dataclass(frozen=True)
class Work:
    """plan: a row a step, by start. times: the totals. timeline: None where nothing takes time."""

    plan: tuple[PlanRow, ...]
    times: Times
    timeline: Timeline | None
    notes: tuple[str, ...]


def work_of(
    components: Sequence[Component],
    finished_by: Mapping[str, str],
    summaries: Sequence[str],
    setting: Setting,
) -> Work:
    """The plan of all steps for one cook and one oven.

    components: in printed order, with the times of the batch. finished_by: see `timing.graph.tasks_of`.
    summaries: a short text a step, in printed order. Rows are set by the upper figure of each range; the
    total is given as a range. Raises TaskCircle and StepsInConflict where they cannot be put in an order, and
    TooManySteps.
    """
    tasks = tasks_of(components, finished_by)
    if len(tasks) > limits.STEPS:
        raise TooManySteps(len(tasks))
    try:
        longest, shortest = plan(tasks), plan(tasks, pick=lowest)
    except CannotPlan as error:
        raise steps_in_conflict(components, error) from error
    rows = plan_rows(longest, components, summaries, setting)
    times = times_of(longest, shortest, components)
    return Work(
        plan=rows,
        times=times,
        timeline=timeline_of(rows, _spoken(rows, times)),
        notes=plan_notes(longest, components, setting),
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


def _row(one: PlannedTask, summary: str, heat: str, setting: Setting) -> PlanRow:
    return PlanRow(
        step=one.task.index + 1,
        component=setting.respelled(one.task.component),
        summary=summary,
        start=clock(one.start_min),
        hands_on=duration_text(one.task.hands_on_min),
        wait=_wait_text(one),
        start_min=one.start_min,
        hands_on_min=one.hands_on_min,
        wait_min=one.wait_min,
        uses_oven=one.task.oven is not None,
        heat="oven" if one.task.oven else heat,
    )


def _wait_text(one: PlannedTask) -> str:
    """Its wait as a range; where the oven is filled several times, how often: '2 loads of 22–24 min'."""
    wait = duration_text(one.task.wait_min)
    if not one.wait_min or one.wait_min == one.task.wait_min.high:
        return wait
    turns = int(one.wait_min / one.task.wait_min.high)
    return f"{turns} loads of {wait}" if turns == one.task.loads else f"{turns} times {wait}"


def _spoken(rows: Sequence[PlanRow], times: Times) -> str:
    titles = len({row.component for row in rows})
    return (
        f"The plan as a picture: {len(rows)} steps of {titles} parts, {times.start_to_finish} from start to "
        "finish. The table has the same facts."
    )
