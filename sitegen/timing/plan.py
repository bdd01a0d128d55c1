"""The work plan: the steps of a recipe on a clock, the shortest way that could be found."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from fractions import Fraction
from functools import lru_cache

from sitegen.kitchen.recipe import Span
from sitegen.timing.conflict import CannotPlan, tasks_in_conflict
from sitegen.timing.graph import Task
from sitegen.timing.kitchens import Kitchen, Night, Pick, Worktop, worktop
from sitegen.timing.problem import Problem, backwards
from sitegen.timing.shortest import Shortest, shortest
from sitegen.timing.written_order import as_written

NOTHING = Fraction(0)
AT_HOME = Kitchen()
"""One cook, and an oven that takes one load."""


class Anchor(StrEnum):
    """Which end of the work stands fast on the clock."""

    START = "start"
    END = "end"


@dataclass(frozen=True)
class PlannedTask:
    """A task with its place on the clock.

    start_min: minutes after the first task begins. The hands-on time comes first, then the wait.
    """

    task: Task
    start_min: Fraction
    hands_on_min: Fraction
    wait_min: Fraction

    @property
    def free_min(self) -> Fraction:
        """When the cook is free again."""
        return self.start_min + self.hands_on_min

    @property
    def end_min(self) -> Fraction:
        return self.free_min + self.wait_min


@dataclass(frozen=True)
class Plan:
    """tasks: by start, then written order. total_min: from the first start to the last end.

    hands_on_min: the sum of all hands-on time. bound_min: no plan is shorter; where it equals the total the
    plan is proved shortest.
    """

    tasks: tuple[PlannedTask, ...]
    total_min: Fraction
    hands_on_min: Fraction
    bound_min: Fraction

    @property
    def is_proved(self) -> bool:
        return self.bound_min == self.total_min


def highest(span: Span) -> Fraction:
    """The upper figure of a range: the one that a plan must hold."""
    return span.high


def lowest(span: Span) -> Fraction:
    return span.low


def plan(
    tasks: Sequence[Task],
    kitchen: Kitchen = AT_HOME,
    pick: Pick = highest,
    nights: Sequence[Night] = (),
    anchor: Anchor = Anchor.END,
) -> Plan:
    """The shortest plan found; counted back from its end, it ends everything as late as it may, to be fresh.

    pick: which figure of a range counts. nights: on a clock that stands at 0 at the anchor, so that those
    before the end of the work are negative. Written order is kept wherever it costs no time.
    Raises CannotPlan where no order keeps every bound.
    """
    return _planned(tuple(tasks), kitchen, pick, tuple(nights), anchor)


@lru_cache(maxsize=512)
def _planned(
    tasks: tuple[Task, ...], kitchen: Kitchen, pick: Pick, nights: tuple[Night, ...], anchor: Anchor
) -> Plan:
    if not tasks:
        return Plan((), NOTHING, NOTHING, NOTHING)
    top = worktop(tasks, kitchen, pick, nights)
    is_counted_back = anchor is Anchor.END
    problem = backwards(top.problem) if is_counted_back else top.problem
    found = shortest(problem, horizon_of(problem))
    if found is None:
        raise CannotPlan(tasks_in_conflict(top.problem, horizon_of(problem)))
    ranks = [-place if is_counted_back else place for place in range(len(problem.lengths))]
    kept = as_written(problem, found, ranks)
    if is_counted_back:
        kept = turned_round(problem, kept)
    return _plan_of(tasks, top, kept, pick)


def forget_plans() -> None:
    """Plans are kept, since every edition of a recipe asks for the same; this lets them go."""
    _planned.cache_clear()


def horizon_of(problem: Problem) -> int:
    """A length of time in which the work is done in any order that can be done at all."""
    changes = sum(resource.change for resource in problem.resources) * len(problem.lengths)
    last_night = max((start + problem.lengths[task] for task, start in problem.fixed.items()), default=0)
    work = sum(length for task, length in enumerate(problem.lengths) if task not in problem.fixed)
    return work + changes + max(last_night, 0)


def turned_round(problem: Problem, found: Shortest) -> Shortest:
    """What was counted from the end, counted from the start."""
    starts = tuple(
        found.span - start - length for start, length in zip(found.starts, problem.lengths, strict=True)
    )
    return replace(found, starts=starts)


def _plan_of(tasks: Sequence[Task], top: Worktop, found: Shortest, pick: Pick) -> Plan:
    placed = [
        PlannedTask(
            task,
            top.minutes(found.starts[place]),
            pick(task.hands_on_min),
            pick(task.wait_min),
        )
        for place, task in enumerate(tasks)
    ]
    return Plan(
        tasks=tuple(sorted(placed, key=lambda one: (one.start_min, one.task.index))),
        total_min=top.minutes(found.span),
        hands_on_min=sum((one.hands_on_min for one in placed), NOTHING),
        bound_min=top.minutes(found.bound),
    )
