"""Who works where, and what of it two steps cannot have at once."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import lcm

from sitegen.kitchen.recipe import OvenSetting, Span
from sitegen.timing.graph import Task, most_gap
from sitegen.timing.problem import Demand, Gap, Problem, Resource

Pick = Callable[[Span], Fraction]


@dataclass(frozen=True)
class Kitchen:
    """cooks: pairs of hands. oven_loads: loads that the oven takes at one time, all at one temperature.

    change_min: until the oven stands at another temperature. Source: common practice, 10 to 15 minutes.
    """

    cooks: int = 1
    oven_loads: int = 1
    change_min: Fraction = Fraction(10)


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
    a setting; a tool is busy as long as the hands are. Resources: hands, oven, then each tool by name.
    """
    parts = lcm(*(figure.denominator for figure in _figures(tasks, kitchen, pick, nights)))

    def units(minutes: Fraction) -> int:
        return int(minutes * parts)

    tools = sorted({tool for task in tasks for tool in task.tools})
    resources = (
        Resource("hands", kitchen.cooks),
        Resource("oven", kitchen.oven_loads, units(kitchen.change_min)),
        *(Resource(tool) for tool in tools),
    )
    demands: list[Demand] = []
    gaps: list[Gap] = []
    lengths: list[int] = []
    for place, task in enumerate(tasks):
        hands, wait = units(pick(task.hands_on_min)), units(pick(task.wait_min))
        lengths.append(hands + wait)
        demands.append(Demand(place, 0, 0, hands))
        if task.oven is not None:
            demands.append(Demand(place, 1, hands, wait, state=_state(task.oven)))
        demands += [Demand(place, 2 + tools.index(tool), 0, hands) for tool in sorted(task.tools)]
    for place, task in enumerate(tasks):
        for first in sorted(task.after):
            gaps.append(Gap(first, place, lengths[first]))
            most = most_gap(tasks[first], task)
            if most is not None:
                gaps.append(Gap(place, first, -lengths[first] - units(most)))
    fixed: dict[int, int] = {}
    for night in nights:
        place = len(lengths)
        fixed[place] = units(night.start_min)
        lengths.append(units(night.end_min - night.start_min))
        demands.append(Demand(place, 0, 0, lengths[place], kitchen.cooks))
    return Worktop(Problem(tuple(lengths), resources, tuple(demands), tuple(gaps), fixed), parts)


def _figures(tasks: Iterable[Task], kitchen: Kitchen, pick: Pick, nights: Iterable[Night]) -> list[Fraction]:
    """Every figure that must be whole."""
    figures = [kitchen.change_min, *(end for night in nights for end in (night.start_min, night.end_min))]
    for task in tasks:
        figures += [pick(task.hands_on_min), pick(task.wait_min), task.most_gap_min or Fraction(0)]
    return figures


def _state(oven: OvenSetting) -> str:
    return f"{oven.degrees} {oven.scale} {oven.fan}"
