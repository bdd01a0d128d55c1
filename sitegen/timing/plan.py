"""The work plan: tasks on a clock for one cook and one oven."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.kitchen.recipe import Span
from sitegen.timing.graph import Task

Pick = Callable[[Span], Fraction]
Rank = Callable[[Task], tuple[Fraction, int]]


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

    hands_on_min: the sum of all hands-on time.
    """

    tasks: tuple[PlannedTask, ...]
    total_min: Fraction
    hands_on_min: Fraction


def plan(tasks: Sequence[Task], pick: Pick = lambda span: span.high) -> Plan:
    """Put tasks on a clock as early as they can go: one cook, one oven, one load at a time.

    pick: which figure of a range counts (the upper one unless told otherwise).
    Tasks are placed one after another, each at its earliest gap. Two orders are tried, the longest
    remaining chain first and as written; the shorter plan wins, the written order where they tie.
    Source: list scheduling by critical path, a textbook rule; the total is short, not proved shortest.
    """
    tails = _tails(tasks, pick)
    ranks: tuple[Rank, ...] = (
        lambda task: (Fraction(0), task.index),
        lambda task: (-tails[task.index], task.index),
    )
    plans = [_place_all(tasks, pick, rank) for rank in ranks]
    return min(plans, key=lambda made: made.total_min)


def _tails(tasks: Sequence[Task], pick: Pick) -> dict[int, Fraction]:
    """The longest chain of minutes from the start of each task to the end of the work."""
    followers: dict[int, list[int]] = {task.index: [] for task in tasks}
    for task in tasks:
        for index in task.after:
            followers[index].append(task.index)
    lengths = {task.index: pick(task.hands_on_min) + pick(task.wait_min) for task in tasks}
    tails: dict[int, Fraction] = {}
    pending = list(followers)
    while pending:
        ready = [index for index in pending if all(next_one in tails for next_one in followers[index])]
        for index in ready:
            after = max((tails[next_one] for next_one in followers[index]), default=Fraction(0))
            tails[index] = lengths[index] + after
        pending = [index for index in pending if index not in tails]
    return tails


def _place_all(tasks: Sequence[Task], pick: Pick, rank: Rank) -> Plan:
    placed: dict[int, PlannedTask] = {}
    waiting = list(tasks)
    while waiting:
        ready = [task for task in waiting if task.after <= placed.keys()]
        task = min(ready, key=rank)
        placed[task.index] = _place(task, pick, placed)
        waiting.remove(task)
    in_order = tuple(sorted(placed.values(), key=lambda one: (one.start_min, one.task.index)))
    return Plan(
        tasks=in_order,
        total_min=max((one.end_min for one in in_order), default=Fraction(0)),
        hands_on_min=sum((one.hands_on_min for one in in_order), Fraction(0)),
    )


def _place(task: Task, pick: Pick, placed: dict[int, PlannedTask]) -> PlannedTask:
    """The task at the earliest start that its forerunners, the cook and the oven allow."""
    hands_on, wait = pick(task.hands_on_min), pick(task.wait_min)
    earliest = max((placed[index].end_min for index in task.after), default=Fraction(0))
    others = placed.values()
    starts = {earliest}
    starts |= {one.free_min for one in others}
    starts |= {one.end_min - hands_on for one in others if one.task.oven}
    for start in sorted(start for start in starts if start >= earliest):
        candidate = PlannedTask(task, start, hands_on, wait)
        if not any(_clash(candidate, one) for one in others):
            return candidate
    last = max(one.end_min for one in others)
    return PlannedTask(task, last, hands_on, wait)


def _clash(one: PlannedTask, other: PlannedTask) -> bool:
    """Whether two tasks want the cook's hands, or the oven, at the same time."""
    hands = _overlap(one.start_min, one.free_min, other.start_min, other.free_min)
    oven = one.task.oven is not None and other.task.oven is not None
    return hands or (oven and _overlap(one.free_min, one.end_min, other.free_min, other.end_min))


def _overlap(start: Fraction, end: Fraction, other_start: Fraction, other_end: Fraction) -> bool:
    return start < other_end and other_start < end
