"""Why a plan cannot be kept: which bounds on waiting stand in each other's way, and over what."""

from collections.abc import Iterable
from dataclasses import replace

from sitegen.timing.problem import Problem
from sitegen.timing.search import OutOfTries, Search
from sitegen.timing.shortest import tries_for

NIGHT, DAY = "night", "day"


class CannotPlan(Exception):
    """No order keeps every bound.

    tasks: places of the steps in conflict, in written order. wanted: what would end the conflict if there
    were plenty of it: names of resources ('hands', 'oven', 'mixer'), NIGHT for nights with work, DAY for
    longer days; empty where the bounds contradict the times alone. is_certain: False where none was found in
    good time.
    """

    def __init__(self, tasks: tuple[int, ...], wanted: tuple[str, ...] = (), is_certain: bool = True) -> None:
        super().__init__(tasks, wanted, is_certain)
        self.tasks = tasks
        self.wanted = wanted
        self.is_certain = is_certain


def conflict(problem: Problem, horizon: int, is_certain: bool = True) -> CannotPlan:
    """The steps whose bounds on what follows cannot all be kept, and what they want at one time.

    Bounds are left out one after another as long as the rest still cannot be kept; what stays is a conflict
    from which nothing can be left out.
    """
    free = tuple(gap for gap in problem.gaps if gap.lag >= 0)
    bounds = [gap for gap in problem.gaps if gap.lag < 0]
    for bound in list(bounds):
        others = [gap for gap in bounds if gap is not bound]
        if not _can_be_kept(replace(problem, gaps=(*free, *others)), horizon):
            bounds = others
    narrowed = replace(problem, gaps=(*free, *bounds))
    tasks = sorted({task for gap in bounds for task in (gap.then, gap.first)})
    return CannotPlan(tuple(tasks), tuple(_wanted(narrowed, horizon)), is_certain)


def _wanted(problem: Problem, horizon: int) -> Iterable[str]:
    """What ends the conflict where there is plenty of it."""
    if problem.fixed and _can_be_kept(_without_nights(problem), horizon):
        yield NIGHT
    for place, resource in enumerate(problem.resources):
        demands = tuple(one for one in problem.demands if one.resource != place)
        if _can_be_kept(replace(problem, demands=demands), horizon):
            yield resource.name


def _without_nights(problem: Problem) -> Problem:
    return replace(problem, demands=tuple(one for one in problem.demands if one.task not in problem.fixed))


def _can_be_kept(problem: Problem, horizon: int) -> bool:
    """Whether some plan keeps these gaps; where the search gives up, it is taken that one does."""
    try:
        starts = Search(problem).starts_within(horizon, tries_for(problem))
    except OutOfTries:
        return True
    return starts is not None
