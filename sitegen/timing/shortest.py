"""The shortest plan, with what is proved of it."""

from dataclasses import dataclass
from itertools import product

from sitegen.timing.problem import Problem, backwards
from sitegen.timing.search import OutOfTries, Search

TRIES_FOR_ALL = 24_000
"""Branches looked at for one deadline, divided by the number of tasks: a larger plan costs more a branch."""

QUESTIONS = 6
"""Questions whose branches a plan may use up in all, so that one of 60 steps takes under two seconds."""
MORE_TRIES = 4
MORE_TIME = (0, 10, 30, 100)
"""Per cent over the bound at which a first plan is looked for."""


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
    Deadlines between what is proved too short and what is known to do are halved until they meet, or until
    all branches are spent that a plan may cost.
    """
    search = Search(problem)
    bound = _least_not_refuted(search, horizon)
    if bound > horizon:
        return None
    views = _Views(problem, search)
    best = _first_plan(views, problem, bound, horizon)
    if best is None:
        return None
    floor = bound
    while floor < problem.span(best) and views.tries_left > 0:
        deadline = (floor + problem.span(best) - 1) // 2
        try:
            found = views.plan_within(deadline, best)
        except OutOfTries:
            floor = deadline + 1
            continue
        if found is None:
            floor = bound = deadline + 1
        else:
            best = found
    return Shortest(best, problem.span(best), bound)


class _Views:
    """A problem seen from its start and from its end: what is hard to find from one is easy from the other.

    tries_left: branches that may still be looked at, in all.
    """

    def __init__(self, problem: Problem, search: Search) -> None:
        self._problem = problem
        self._search = search
        self._from_end = None if problem.fixed else Search(backwards(problem))
        self._tries = tries_for(problem)
        self.tries_left = QUESTIONS * self._tries

    def plan_within(self, deadline: int, best: tuple[int, ...] | None = None) -> tuple[int, ...] | None:
        """A plan within a deadline: by what looks promising, by what is near the best plan so far, by all.

        Each is looked for from both ends. Raises OutOfTries.
        """
        near = [] if best is None else [(best, 1)]
        for ranks, doubts in ((None, 0), *near, (None, None)):
            for is_turned in (False, True) if self._from_end else (False,):
                try:
                    return self._looked_at(is_turned, deadline, ranks, doubts)
                except OutOfTries:
                    continue
        raise OutOfTries

    def _looked_at(
        self, is_turned: bool, deadline: int, ranks: tuple[int, ...] | None, doubts: int | None
    ) -> tuple[int, ...] | None:
        search = self._from_end if is_turned and self._from_end else self._search
        tries = min(self._tries, self.tries_left)
        turned_ranks = tuple(-rank for rank in ranks) if ranks and is_turned else ranks
        try:
            found = search.starts_within(deadline, tries, turned_ranks, doubts)
        finally:
            self.tries_left -= tries - search.tries_left
        if found is None or not is_turned:
            return found
        lengths = self._problem.lengths
        return tuple(deadline - start - length for start, length in zip(found, lengths, strict=True))


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


def _first_plan(views: _Views, problem: Problem, bound: int, horizon: int) -> tuple[int, ...] | None:
    """A first plan: at the least deadline that may do, else with more and more time; None for none at all."""
    for extra in MORE_TIME:
        deadline = min(bound + bound * extra // 100, horizon)
        try:
            found = views.plan_within(deadline)
        except OutOfTries:
            continue
        if found is not None or deadline == horizon:
            return found
    return _hard_won_plan(problem, bound, horizon)


def _hard_won_plan(problem: Problem, bound: int, horizon: int) -> tuple[int, ...] | None:
    """A first plan where the usual ways gave up: with more doubts, and in the written order."""
    search = Search(problem)
    tries = MORE_TRIES * tries_for(problem)
    deadlines = [min(bound * percent // 100, horizon) for percent in (125, 200)]
    written = range(len(problem.lengths))
    for doubts, deadline, ranks in product((1, 2, 3), (*deadlines, horizon), (None, written)):
        try:
            found = search.starts_within(deadline, tries, ranks, doubts)
        except OutOfTries:
            continue
        if found is not None:
            return found
    return search.starts_within(horizon, tries)
