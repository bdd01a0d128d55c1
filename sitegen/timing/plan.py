"""The work plan: the steps of a recipe on a clock, the shortest way that could be found."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from fractions import Fraction
from functools import lru_cache

from sitegen.kitchen.amounts import Span
from sitegen.timing.conflict import conflict
from sitegen.timing.graph import Task
from sitegen.timing.kitchens import Kitchen, Night, Pick, Worktop, worktop
from sitegen.timing.problem import Problem, backwards
from sitegen.timing.search import OutOfTries
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

    def busy_min(self, name: str) -> tuple[Fraction, Fraction]:
        """From when to when it keeps a tool or space of its own busy."""
        begins = self.start_min if name in self.task.tools else self.free_min
        return begins, self.end_min if name == self.task.space else self.free_min


@dataclass(frozen=True)
class Plan:
    """tasks: by start, then written order. total_min: from the first start to the last end.

    hands_on_min: the sum of all hands-on time. bound_min: no plan is shorter, or, where its start stands
    fast, ready earlier; where it equals the total that is proved. begins_min: from the anchored start to the
    first task, where a night comes first; 0 else.
    """

    tasks: tuple[PlannedTask, ...]
    total_min: Fraction
    hands_on_min: Fraction
    bound_min: Fraction
    begins_min: Fraction = NOTHING

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
    """The shortest plan found, in which everything ends as late as it may without cost, to be fresh.

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
    found = _shortest(backwards(top.problem) if is_counted_back else top.problem, top.problem)
    from_end = backwards(top.problem, 0 if is_counted_back else found.span)
    late = found if is_counted_back else turned_round(found, found.span, top.problem)
    starts = as_written(from_end, late, [-place for place in range(len(from_end.lengths))])
    end = from_end.span(starts) if is_counted_back else found.span
    kept = turned_round(replace(found, starts=starts), end, from_end)
    return _plan_of(tasks, top, kitchen, kept, pick)


def _shortest(problem: Problem, forwards: Problem) -> Shortest:
    """The shortest plan of a problem; forwards: the same as the cook knows it, to tell why there is none."""
    horizon = horizon_of(problem)
    try:
        found = shortest(problem, horizon)
    except OutOfTries as error:
        raise conflict(forwards, horizon, is_certain=False) from error
    if found is None:
        raise conflict(forwards, horizon)
    return found


def forget_plans() -> None:
    """Plans are kept, since every edition of a recipe asks for the same; this lets them go."""
    _planned.cache_clear()


def horizon_of(problem: Problem) -> int:
    """A length of time in which the work is done in any order that can be done at all."""
    changes = sum(resource.change for resource in problem.resources) * len(problem.lengths)
    last_night = max((start + problem.lengths[task] for task, start in problem.fixed.items()), default=0)
    work = sum(length for task, length in enumerate(problem.lengths) if task not in problem.fixed)
    return work + changes + max(last_night, 0)


def turned_round(found: Shortest, end: int, problem: Problem) -> Shortest:
    """What was counted from one end, counted from the other, `end` units away."""
    starts = tuple(end - start - length for start, length in zip(found.starts, problem.lengths, strict=True))
    return replace(found, starts=starts, span=end)


def _plan_of(tasks: Sequence[Task], top: Worktop, kitchen: Kitchen, found: Shortest, pick: Pick) -> Plan:
    begins = min(found.starts[: len(tasks)])
    placed = [
        PlannedTask(
            task,
            top.minutes(found.starts[place] - begins),
            pick(task.hands_on_min),
            kitchen.wait(task, pick),
        )
        for place, task in enumerate(tasks)
    ]
    return Plan(
        tasks=tuple(sorted(placed, key=lambda one: (one.start_min, one.task.index))),
        total_min=top.minutes(found.span - begins),
        hands_on_min=sum((one.hands_on_min for one in placed), NOTHING),
        bound_min=top.minutes(found.bound - begins),
        begins_min=top.minutes(begins),
    )
