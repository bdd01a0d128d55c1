"""Why a plan cannot be kept."""

from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import single
from sitegen.kitchen.method import OvenSetting
from sitegen.timing.conflict import CannotPlan
from sitegen.timing.graph import Task
from sitegen.timing.kitchens import Kitchen
from sitegen.timing.plan import plan

HOT = OvenSetting(Fraction(220), "celsius", fan=True)
WARM = OvenSetting(Fraction(150), "celsius", fan=True)


def task(
    index: int,
    hands_on: int,
    wait: int = 0,
    oven: OvenSetting | None = None,
    after: tuple[int, ...] = (),
    most: int | None = None,
    tools: frozenset[str] = frozenset(),
) -> Task:
    bound = None if most is None else Fraction(most)
    return Task(index, f"Part {index}", single(hands_on), single(wait), oven, frozenset(after), tools, bound)


def refused(*tasks: Task, kitchen: Kitchen | None = None) -> CannotPlan:
    with pytest.raises(CannotPlan) as caught:
        plan(tasks, kitchen or Kitchen())
    return caught.value


def test_a_bound_shorter_than_what_stands_between_contradicts_the_times_alone() -> None:
    problem = refused(task(0, 5, most=10), task(1, 0, wait=60, after=(0,)), task(2, 5, after=(0, 1)))
    assert (problem.tasks, problem.wanted) == ((0, 2), ())


def test_two_bakes_that_must_end_together_want_the_oven_at_two_temperatures() -> None:
    hot, warm = task(0, 0, 30, HOT, most=5), task(1, 0, 30, WARM, most=5)
    problem = refused(hot, warm, task(2, 5, after=(0, 1)))
    assert (problem.tasks, problem.wanted) == ((0, 1, 2), ("oven",))


def test_the_same_two_bakes_at_one_temperature_go_into_a_large_oven() -> None:
    steps = [task(0, 0, 30, HOT, most=5), task(1, 0, 30, HOT, most=5), task(2, 5, after=(0, 1))]
    assert plan(steps, Kitchen(oven_loads=2)).total_min == 35


def test_two_things_whipped_at_the_last_minute_want_two_cooks() -> None:
    steps = [task(0, 10, most=5), task(1, 10, most=5), task(2, 5, after=(0, 1))]
    assert refused(*steps).wanted == ("hands",)
    assert plan(steps, Kitchen(cooks=2)).total_min == 15


def test_two_things_whipped_at_the_last_minute_by_two_cooks_want_two_mixers() -> None:
    mixer = frozenset({"mixer"})
    steps = [task(0, 10, most=5, tools=mixer), task(1, 10, most=5, tools=mixer), task(2, 5, after=(0, 1))]
    assert refused(*steps, kitchen=Kitchen(cooks=2)).wanted == ("mixer",)


def test_steps_that_are_no_part_of_the_conflict_are_not_named() -> None:
    bystanders = [task(3, 5, wait=20, most=30), task(4, 5, after=(3,))]
    steps = [task(0, 10, most=5), task(1, 10, most=5), task(2, 5, after=(0, 1)), *bystanders]
    assert refused(*steps).tasks == (0, 1, 2)
