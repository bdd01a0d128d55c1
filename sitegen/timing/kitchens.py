"""Who works where, and what of it two steps cannot have at once."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import lcm

from sitegen.kitchen.amounts import Span
from sitegen.kitchen.method import OvenSetting
from sitegen.timing.graph import Task, most_gap
from sitegen.timing.problem import Demand, Gap, Problem, Resource

Pick = Callable[[Span], Fraction]
HANDS, OVEN = 0, 1
"""Places of the two among a problem's resources; tools and spaces follow."""


@dataclass(frozen=True)
class Kitchen:
    """cooks: pairs of hands.

    oven_loads: loads that the oven takes at one time, all at one temperature; a load is as many tins as a
    recipe was tested with. oven_tins: the same in tins, which then counts instead; None for not said.
    change_min: until the oven stands at another temperature. Source: common practice, 10 to 15 minutes.
    """

    cooks: int = 1
    oven_loads: int = 1
    change_min: Fraction = Fraction(10)
    oven_tins: int | None = None

    @property
    def oven_room(self) -> int:
        """How much the oven takes at one time, in tins where they are said, in loads else."""
        return self.oven_loads if self.oven_tins is None else self.oven_tins

    def oven_share(self, task: Task) -> int:
        """How much of the oven's room a task takes at one time."""
        return min(self._asked(task), self.oven_room)

    def turns(self, task: Task) -> int:
        """How often a task goes through its wait: one oven full after another."""
        return -(-self._asked(task) // self.oven_room) if task.oven is not None else 1

    def wait(self, task: Task, pick: Pick) -> Fraction:
        """Minutes that a task waits, all its turns."""
        return pick(task.wait_min) * self.turns(task)

    def _asked(self, task: Task) -> int:
        return task.loads if self.oven_tins is None else task.tins


@dataclass(frozen=True)
class Night:
    """Minutes on the plan's own clock in which nobody's hands are free; waits go on."""

    start_min: Fraction
    end_min: Fraction


@dataclass(frozen=True)
class Worktop:
    """Tasks as a problem in whole numbers. parts: how many of its units make a minute."""

    problem: Problem
    parts: int

    def minutes(self, units: int) -> Fraction:
        return Fraction(units, self.parts)


def worktop(tasks: Sequence[Task], kitchen: Kitchen, pick: Pick, nights: Sequence[Night] = ()) -> Worktop:
    """The problem that the tasks pose in a kitchen.

    pick: which figure of a range counts. A task takes hands first, then it waits, in the oven where it has
    a setting; a tool is busy as long as the hands are, a space as long as the wait lasts. Resources: hands,
    oven, then each tool and space by name. Nights are fixed work behind the tasks that takes all hands. What
    only waits takes none, yet somebody must be up to begin it: the last resource is for that alone.
    """
    parts = lcm(*(figure.denominator for figure in _figures(tasks, kitchen, pick, nights)))

    def units(minutes: Fraction) -> int:
        return int(minutes * parts)

    names = sorted({name for task in tasks for name in task.kit})
    hands = [units(pick(task.hands_on_min)) for task in tasks]
    lengths = [hand + units(kitchen.wait(task, pick)) for hand, task in zip(hands, tasks, strict=True)]
    demands = [
        demand
        for place, task in enumerate(tasks)
        for demand in _demands(task, place, hands[place], lengths[place], names, kitchen)
    ]
    gaps = [gap for place, task in enumerate(tasks) for gap in _gaps(tasks, task, place, lengths, units)]
    fixed: dict[int, int] = {}
    awake = 2 + len(names)
    if nights:
        demands += [Demand(place, awake, 0, 1) for place, task in enumerate(tasks) if _only_waits(task, pick)]
    for night in nights:
        place = len(lengths)
        fixed[place] = units(night.start_min)
        lengths.append(units(night.end_min - night.start_min))
        demands.append(Demand(place, HANDS, 0, lengths[place], kitchen.cooks))
        demands.append(Demand(place, awake, 0, lengths[place], len(tasks)))
    resources = (
        Resource("hands", kitchen.cooks),
        Resource("oven", kitchen.oven_room, units(kitchen.change_min)),
        *(Resource(name) for name in names),
        Resource("awake", len(tasks)),
    )
    stays = frozenset(frozenset(two) for two in _in_the_oven_throughout(tasks))
    return Worktop(Problem(tuple(lengths), resources, tuple(demands), tuple(gaps), fixed, stays), parts)


def _only_waits(task: Task, pick: Pick) -> bool:
    return not pick(task.hands_on_min) and bool(pick(task.wait_min))


def _demands(
    task: Task, place: int, hands: int, length: int, names: Sequence[str], kitchen: Kitchen
) -> Iterator[Demand]:
    """What a task takes. hands, length: units of its hands-on time, and of the whole."""
    yield Demand(place, HANDS, 0, hands)
    if task.oven is not None:
        yield Demand(place, OVEN, hands, length - hands, kitchen.oven_share(task), _state(task.oven))
    for name in sorted(task.kit):
        begins = 0 if name in task.tools else hands
        ends = length if name == task.space else hands
        yield Demand(place, 2 + names.index(name), begins, ends - begins)


def _gaps(
    tasks: Sequence[Task], task: Task, place: int, lengths: Sequence[int], units: Callable[[Fraction], int]
) -> Iterator[Gap]:
    """The least and greatest gaps after what a task follows."""
    for first in sorted(task.after):
        yield Gap(first, place, lengths[first])
        most = most_gap(tasks[first], task)
        if most is not None:
            yield Gap(place, first, -lengths[first] - units(most))


def _in_the_oven_throughout(tasks: Sequence[Task]) -> Iterator[tuple[int, int]]:
    """Places of two steps of a component in a row that are both baked: the oven is turned with it inside."""
    for place, task in enumerate(tasks[1:], 1):
        before = tasks[place - 1]
        follows = before.component == task.component and before.index in task.after
        if follows and task.oven is not None and before.oven is not None:
            yield place - 1, place


def _figures(tasks: Iterable[Task], kitchen: Kitchen, pick: Pick, nights: Iterable[Night]) -> list[Fraction]:
    """Every figure that must be whole."""
    figures = [kitchen.change_min, *(end for night in nights for end in (night.start_min, night.end_min))]
    for task in tasks:
        figures += [pick(task.hands_on_min), pick(task.wait_min), task.most_gap_min or Fraction(0)]
    return figures


def _state(oven: OvenSetting) -> str:
    return f"{oven.degrees} {oven.scale} {oven.fan}"
