"""The shortest plan, and what is proved of it."""

from sitegen.timing.problem import Demand, Gap, Problem, Resource, backwards
from sitegen.timing.shortest import TRIES_FOR_ALL, shortest, tries_for

HANDS = (Resource("hands"),)


def work(lengths: tuple[int, ...], hands: tuple[int, ...], gaps: tuple[Gap, ...] = ()) -> Problem:
    demands = tuple(Demand(task, 0, 0, length) for task, length in enumerate(hands))
    return Problem(lengths, HANDS, demands, gaps)


def test_work_fills_the_wait_of_another_task() -> None:
    found = shortest(work((65, 20), (5, 20)), horizon=85)
    assert found is not None
    assert (found.starts, found.span, found.bound) == ((0, 5), 65, 65)


def test_no_plan_within_the_horizon() -> None:
    assert shortest(work((65, 20), (5, 20)), horizon=64) is None


def test_a_plan_seen_from_its_end_is_as_long() -> None:
    problem = work((65, 20, 10), (5, 20, 10), (Gap(0, 2, 65), Gap(2, 0, -70)))
    one, other = shortest(problem, 200), shortest(backwards(problem), 200)
    assert one is not None
    assert other is not None
    assert one.span == other.span == 75


def test_seen_from_its_end_twice_the_work_is_the_same() -> None:
    problem = work((65, 20), (5, 20), (Gap(0, 1, 65), Gap(1, 0, -70)))
    assert backwards(backwards(problem)) == problem


def test_a_larger_plan_has_fewer_branches_a_question() -> None:
    """The count, not the clock, ends a search, so that every machine stops at the same plan."""
    sizes = [tries_for(work((1,) * count, (1,) * count)) for count in (1, 10, 60)]
    assert sizes == [TRIES_FOR_ALL, TRIES_FOR_ALL // 10, TRIES_FOR_ALL // 60]
