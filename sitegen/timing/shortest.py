"""The shortest plan, with what is proved of it."""

from dataclasses import dataclass

from sitegen.timing.problem import Problem
from sitegen.timing.search import OutOfTries, Search

TRIES_FOR_ALL = 24_000
"""Branches looked at for one deadline, divided by the number of tasks: a larger plan costs more a branch."""


@dataclass(frozen=True)
class Shortest:
    """starts: of each task. span: until all work ends. bound: no plan is shorter than this; equal: proved."""

    starts: tuple[int, ...]
    span: int
    bound: int


def tries_for(problem: Problem) -> int:
    """How many branches one question about a problem may cost: counted, so that every machine stops alike."""
    return TRIES_FOR_ALL // max(len(problem.lengths), 1)


def shortest(problem: Problem, horizon: int) -> Shortest | None:
    """The shortest plan that was found, and how much shorter one could be at most.

    horizon: no plan need be longer. Returns None where no plan exists; raises OutOfTries where none was found
    and none was ruled out.
    Deadlines between what is proved too short and what is known to do are halved until they meet.
    """
    search = Search(problem)
    bound = _least_not_refuted(search, horizon)
    if bound > horizon:
        return None
    best = _ask(search, bound, tries_for(problem)) or _any_plan(search, problem, horizon)
    if best is None:
        return None
    floor = bound
    while floor < problem.span(best):
        deadline = (floor + problem.span(best) - 1) // 2
        try:
            found = search.starts_within(deadline, tries_for(problem))
        except OutOfTries:
            floor = deadline + 1
            continue
        if found is None:
            floor = bound = deadline + 1
        else:
            best = found
    return Shortest(best, problem.span(best), bound)


def _least_not_refuted(search: Search, horizon: int) -> int:
    """The least deadline that is not impossible at first sight; above the horizon where all are."""
    low, high = 0, horizon + 1
    while low < high:
        middle = (low + high) // 2
        if _is_refuted(search, middle):
            low = middle + 1
        else:
            high = middle
    return low


def _is_refuted(search: Search, deadline: int) -> bool:
    try:
        return search.starts_within(deadline, tries=1) is None
    except OutOfTries:
        return False


def _ask(search: Search, deadline: int, tries: int) -> tuple[int, ...] | None:
    try:
        return search.starts_within(deadline, tries)
    except OutOfTries:
        return None


def _any_plan(search: Search, problem: Problem, horizon: int) -> tuple[int, ...] | None:
    """A first plan, however long: it may have to settle each pair of tasks in turn."""
    return search.starts_within(horizon, tries_for(problem) + len(problem.demands) ** 2)
