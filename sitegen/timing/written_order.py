"""The written order, kept wherever it costs no time."""

from collections.abc import Collection, Sequence
from itertools import pairwise

from sitegen.timing.kitchens import HANDS
from sitegen.timing.problem import Demand, Problem
from sitegen.timing.search import OutOfTries, Search
from sitegen.timing.shortest import Shortest, tries_for

TURNS = 200
"""Neighbours that are tried the other way round; more would cost more time than they are worth."""
TRIES = 40
"""Branches looked at for one turn: with the order in hand given, the oven and tools are soon settled."""


def as_written(problem: Problem, found: Shortest, ranks: Sequence[int]) -> tuple[int, ...]:
    """Starts within the same span, in which tasks of lower rank go first where they may.

    ranks: of each task. Two tasks that follow each other through the cooks' hands against their ranks are
    turned round where all others can stay in their order and the span stays.
    """
    search = Search(problem)
    starts = _asked(search, found.span, tries_for(problem), ranks) or found.starts
    refused: set[tuple[int, int]] = set()
    for _ in range(TURNS):
        in_hand = _in_hand(problem, starts)
        place = _out_of_order(in_hand, ranks, refused)
        if place is None:
            break
        earlier, later = in_hand[place : place + 2]
        turned = [*in_hand[:place], later, earlier, *in_hand[place + 2 :]]
        better = _in_this_order(search, problem, turned, found.span, ranks)
        if better is None:
            refused.add((later.task, earlier.task))
        else:
            starts = better
            refused.clear()
    return starts


def _out_of_order(
    in_hand: Sequence[Demand], ranks: Sequence[int], refused: Collection[tuple[int, int]]
) -> int | None:
    """The place of the first two neighbours whose ranks stand the other way, and were not refused."""
    for place, (earlier, later) in enumerate(pairwise(in_hand)):
        if ranks[later.task] < ranks[earlier.task] and (later.task, earlier.task) not in refused:
            return place
    return None


def _in_hand(problem: Problem, starts: Sequence[int]) -> list[Demand]:
    """The work in the cooks' hands, in the order in which it begins."""
    worked = [one for one in problem.demands if one.resource == HANDS and one.task not in problem.fixed]
    return sorted(
        (one for one in worked if one.length), key=lambda one: (starts[one.task] + one.offset, one.task)
    )


def _in_this_order(
    search: Search, problem: Problem, in_hand: Sequence[Demand], span: int, ranks: Sequence[int]
) -> tuple[int, ...] | None:
    """Starts within a span in which the cooks take up their work in this order; None where none was found."""
    cooks = problem.resources[HANDS].capacity
    insisted = [
        (first.task, then.task, first.offset + (first.length if cooks == 1 else 0) - then.offset)
        for first, then in pairwise(in_hand)
    ]
    for gap in insisted:
        search.insist(*gap)
    try:
        return _asked(search, span, TRIES, ranks)
    finally:
        for first, then, _ in reversed(insisted):
            search.give_way(first, then)


def _asked(search: Search, span: int, tries: int, ranks: Sequence[int]) -> tuple[int, ...] | None:
    try:
        return search.starts_within(span, tries, ranks)
    except OutOfTries:
        return None
