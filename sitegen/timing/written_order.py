"""The written order, kept wherever it costs no time."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from sitegen.timing.kitchens import HANDS
from sitegen.timing.problem import Demand, Problem
from sitegen.timing.search import OutOfTries, Search
from sitegen.timing.shortest import Shortest, tries_for

TURNS = 40
"""Neighbours that are tried the other way round; more would cost more time than they are worth."""


def as_written(problem: Problem, found: Shortest, ranks: Sequence[int]) -> tuple[int, ...]:
    """Starts within the same span, in which tasks of lower rank go first where they may.

    ranks: of each task. Two tasks that follow each other through the cook's hands against their ranks are
    turned round where the span stays.
    """
    search = Search(problem)
    starts = _asked(search, problem, found.span, ranks) or found.starts
    refused: set[tuple[int, int]] = set()
    for _ in range(TURNS):
        turned = next(
            (two for two in _out_of_order(problem, starts, ranks) if _tasks(two) not in refused), None
        )
        if turned is None:
            break
        first, then = turned
        search.insist(first.task, then.task, first.offset + first.length - then.offset)
        better = _asked(search, problem, found.span, ranks)
        if better is None:
            search.give_way(first.task, then.task)
            refused.add(_tasks(turned))
        else:
            starts = better
    return starts


def _out_of_order(
    problem: Problem, starts: Sequence[int], ranks: Sequence[int]
) -> Iterator[tuple[Demand, Demand]]:
    """Neighbours in the cook's hands whose ranks stand the other way, as they should stand."""
    worked = [one for one in problem.demands if one.resource == HANDS and one.task not in problem.fixed]
    in_turn = sorted((one for one in worked if one.length), key=lambda one: starts[one.task] + one.offset)
    for earlier, later in pairwise(in_turn):
        if ranks[later.task] < ranks[earlier.task]:
            yield later, earlier


def _tasks(two: tuple[Demand, Demand]) -> tuple[int, int]:
    return two[0].task, two[1].task


def _asked(search: Search, problem: Problem, span: int, ranks: Sequence[int]) -> tuple[int, ...] | None:
    try:
        return search.starts_within(span, tries_for(problem), ranks)
    except OutOfTries:
        return None
