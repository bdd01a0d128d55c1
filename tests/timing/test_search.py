"""A plan within a deadline, or the proof that there is none."""

import pytest

from sitegen.timing.problem import Demand, Gap, Problem, Resource
from sitegen.timing.search import OutOfTries, Search

HANDS, OVEN = Resource("hands"), Resource("oven", change=10)


def hands_only(*lengths: int) -> Problem:
    demands = tuple(Demand(task, 0, 0, length) for task, length in enumerate(lengths))
    return Problem(lengths, (HANDS,), demands, ())


def test_three_jobs_fill_one_pair_of_hands() -> None:
    search = Search(hands_only(5, 7, 3))
    starts = search.starts_within(15, tries=100)
    assert starts is not None
    assert max(start + length for start, length in zip(starts, (5, 7, 3), strict=True)) == 15
    assert search.starts_within(14, tries=100) is None


def test_a_search_can_be_asked_again() -> None:
    search = Search(hands_only(5, 7, 3))
    assert search.starts_within(14, tries=100) is None
    assert search.starts_within(15, tries=100) is not None
    assert search.starts_within(14, tries=100) is None


def test_ranks_say_who_goes_first_where_either_may() -> None:
    assert Search(hands_only(5, 5)).starts_within(10, 100, ranks=[0, 1]) == (0, 5)
    assert Search(hands_only(5, 5)).starts_within(10, 100, ranks=[1, 0]) == (5, 0)


def test_an_oven_changes_its_temperature_between_two_bakes() -> None:
    bakes = (Demand(0, 0, 0, 30, state="160"), Demand(1, 0, 0, 20, state="200"))
    search = Search(Problem((30, 20), (OVEN,), bakes, ()))
    assert search.starts_within(60, 100) is not None
    assert search.starts_within(59, 100) is None


def test_what_stays_in_the_oven_needs_no_change() -> None:
    bakes = (Demand(0, 0, 0, 30, state="220"), Demand(1, 0, 0, 20, state="180"))
    stays = frozenset({frozenset({0, 1})})
    search = Search(Problem((30, 20), (OVEN,), bakes, (Gap(0, 1, 30),), unchanged=stays))
    assert search.starts_within(50, 100) == (0, 30)


def test_three_trays_go_into_an_oven_for_two_in_two_turns() -> None:
    trays = tuple(Demand(task, 0, 0, 10) for task in range(3))
    search = Search(Problem((10, 10, 10), (Resource("oven", 2),), trays, ()))
    assert search.starts_within(20, 100) is not None
    assert search.starts_within(19, 100) is None


def test_gaps_that_contradict_each_other_have_no_plan() -> None:
    search = Search(Problem((10, 5), (), (), (Gap(0, 1, 10), Gap(1, 0, -9))))
    assert not search.is_possible
    assert search.starts_within(1000, 100) is None


def test_a_search_that_may_not_look_says_so() -> None:
    with pytest.raises(OutOfTries):
        Search(hands_only(5, 5)).starts_within(100, tries=0)


def test_what_was_insisted_on_can_be_taken_back() -> None:
    search = Search(hands_only(5, 5))
    search.insist(1, 0, 5)
    assert search.starts_within(10, 100, ranks=[0, 1]) == (5, 0)
    search.give_way(1, 0)
    assert search.starts_within(10, 100, ranks=[0, 1]) == (0, 5)
