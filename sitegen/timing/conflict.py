"""Why a plan cannot be kept: which bounds on waiting stand in each other's way."""

from dataclasses import replace

from sitegen.timing.problem import Gap, Problem
from sitegen.timing.search import OutOfTries, Search
from sitegen.timing.shortest import tries_for


class CannotPlan(Exception):
    """No order keeps every bound. tasks: places of the steps in conflict, in written order."""

    def __init__(self, tasks: tuple[int, ...]) -> None:
        super().__init__(tasks)
        self.tasks = tasks


def tasks_in_conflict(problem: Problem, horizon: int) -> tuple[int, ...]:
    """The tasks whose bounds on what follows cannot all be kept.

    Bounds are left out one after another as long as the rest still cannot be kept; what stays is a conflict
    from which nothing can be left out.
    """
    free = tuple(gap for gap in problem.gaps if gap.lag >= 0)
    bounds = [gap for gap in problem.gaps if gap.lag < 0]
    for bound in list(bounds):
        others = [gap for gap in bounds if gap is not bound]
        if not _can_be_kept(problem, (*free, *others), horizon):
            bounds = others
    return tuple(sorted({gap.then for gap in bounds} | {gap.first for gap in bounds}))


def _can_be_kept(problem: Problem, gaps: tuple[Gap, ...], horizon: int) -> bool:
    """Whether some plan keeps these gaps; where the search gives up, it is taken that one does."""
    try:
        starts = Search(replace(problem, gaps=gaps)).starts_within(horizon, tries_for(problem))
    except OutOfTries:
        return True
    return starts is not None
