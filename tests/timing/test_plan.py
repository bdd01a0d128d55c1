"""One cook, one oven, one clock."""

from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import Span
from sitegen.kitchen.method import OvenSetting
from sitegen.timing.chain import deciding_chain, free_gaps
from sitegen.timing.conflict import CannotPlan
from sitegen.timing.graph import Task
from sitegen.timing.kitchens import Kitchen, Night
from sitegen.timing.plan import Anchor, Plan, PlannedTask, lowest, plan

FAN_160 = OvenSetting(Fraction(160), "celsius", fan=True)
FAN_200 = OvenSetting(Fraction(200), "celsius", fan=True)
MIXER = frozenset({"mixer"})


def span(minutes: int) -> Span:
    return Span(Fraction(minutes), Fraction(minutes))


def task(
    index: int,
    hands_on: int,
    wait: int = 0,
    oven: OvenSetting | None = None,
    after: tuple[int, ...] = (),
    tools: frozenset[str] = frozenset(),
    most_gap: int | None = None,
) -> Task:
    gap = None if most_gap is None else Fraction(most_gap)
    return Task(index, "Part", span(hands_on), span(wait), oven, frozenset(after), tools, gap)


def placed(made: Plan, index: int) -> PlannedTask:
    return next(one for one in made.tasks if one.task.index == index)


def test_hands_on_work_fills_the_wait_of_another_task() -> None:
    made = plan([task(0, 5, wait=60), task(1, 20)])
    assert made.total_min == 65
    assert made.hands_on_min == 25


def test_one_cook_never_has_two_things_in_hand() -> None:
    made = plan([task(0, 30), task(1, 20), task(2, 10)])
    assert made.total_min == 60


def test_two_cooks_share_the_work() -> None:
    made = plan([task(0, 30), task(1, 20), task(2, 10)], Kitchen(cooks=2))
    assert made.total_min == 30


def test_an_oven_takes_time_to_another_temperature() -> None:
    made = plan([task(0, 5, 40, FAN_160), task(1, 5, 30, FAN_200)])
    bakes = sorted((one.free_min, one.end_min) for one in made.tasks)
    assert bakes[1][0] - bakes[0][1] == 10
    assert made.total_min == 5 + 40 + 10 + 30


def test_two_loads_at_one_temperature_follow_each_other_at_once() -> None:
    made = plan([task(0, 5, 40, FAN_160), task(1, 5, 30, FAN_160)])
    assert made.total_min == 75


def test_a_large_oven_takes_two_loads_at_one_temperature_and_never_at_two() -> None:
    large = Kitchen(oven_loads=2)
    assert plan([task(0, 5, 40, FAN_160), task(1, 5, 30, FAN_160)], large).total_min == 45
    assert plan([task(0, 5, 40, FAN_160), task(1, 5, 30, FAN_200)], large).total_min == 85


def test_a_tool_is_in_one_pair_of_hands() -> None:
    made = plan([task(0, 20, tools=MIXER), task(1, 20, tools=MIXER)], Kitchen(cooks=2))
    assert made.total_min == 40


def test_what_must_be_used_soon_is() -> None:
    made = plan([task(0, 10, most_gap=5), task(1, 30), task(2, 10, after=(0,))])
    assert placed(made, 2).start_min - placed(made, 0).end_min <= 5
    assert made.total_min == 50


def test_bounds_that_no_order_can_keep_are_named() -> None:
    syrup = task(0, 5, most_gap=10)
    with pytest.raises(CannotPlan) as refused:
        plan([syrup, task(1, 0, wait=60), task(2, 5, after=(0, 1, 3)), task(3, 20, after=(0,))])
    assert refused.value.tasks == (0, 2)


def test_the_longest_chain_begins_first_where_that_is_shorter() -> None:
    made = plan([task(0, 30), task(1, 5, wait=120)])
    assert made.total_min == 125
    assert [one.task.index for one in made.tasks] == [1, 0]


def test_the_written_order_stays_where_it_costs_nothing() -> None:
    made = plan([task(0, 10), task(1, 10), task(2, 10)])
    assert [one.task.index for one in made.tasks] == [0, 1, 2]


def test_work_is_finished_as_late_as_it_may_be() -> None:
    made = plan([task(0, 5, wait=60), task(1, 10)])
    assert placed(made, 1).end_min == 65


def test_nobody_works_at_night() -> None:
    night = Night(Fraction(-600), Fraction(-60))
    made = plan([task(0, 30), task(1, 20, wait=30, after=(0,)), task(2, 5, after=(1,))], nights=[night])
    for one in made.tasks:
        end = one.free_min - made.total_min
        start = one.start_min - made.total_min
        assert end <= night.start_min or start >= night.end_min
    assert placed(made, 2).end_min == made.total_min


def test_work_that_begins_in_the_evening_goes_on_in_the_morning() -> None:
    """Ready at 630 at the earliest, so that nothing is gained by beginning before 10."""
    night = Night(Fraction(60), Fraction(600))
    made = plan([task(0, 50), task(1, 30, after=(0,))], nights=[night], anchor=Anchor.START)
    assert made.begins_min == 10
    assert made.begins_min + placed(made, 0).end_min == 60
    assert made.begins_min + placed(made, 1).start_min == 600
    assert made.begins_min + made.total_min == 630
    assert made.is_proved


def test_a_range_counts_by_the_figure_that_is_asked_for() -> None:
    baked = Task(0, "Cake", span(10), Span(Fraction(22), Fraction(24)), FAN_160, frozenset())
    assert plan([baked]).total_min == 34
    assert plan([baked], pick=lowest).total_min == 32


def test_half_minutes_are_kept() -> None:
    half = Span(Fraction(5, 2), Fraction(5, 2))
    made = plan([Task(0, "Part", half, half, None, frozenset())])
    assert made.total_min == 5


def test_a_plan_says_what_is_proved_of_it() -> None:
    made = plan([task(0, 30), task(1, 5, wait=120), task(2, 10, 20, FAN_160)])
    assert made.bound_min == made.total_min
    assert made.is_proved


def test_the_chain_that_decides_the_total() -> None:
    made = plan([task(0, 5, wait=60), task(1, 10), task(2, 10, after=(0, 1))])
    assert [one.task.index for one in deciding_chain(made)] == [0, 2]


def test_the_chain_goes_through_a_busy_oven() -> None:
    made = plan([task(0, 5, 40, FAN_160), task(1, 5, 30, FAN_160)])
    assert [one.task.index for one in deciding_chain(made)] == [0, 1]


def test_the_chain_goes_through_an_oven_that_work_already_begun_waits_for() -> None:
    """The hands of the second bake start before the first one does, so as to end when the oven is free."""
    made = plan([task(0, 0, 2), task(1, 0, 10, FAN_160, after=(0,)), task(2, 11, 1, FAN_160)])
    assert made.total_min == 13
    assert [one.task.index for one in deciding_chain(made)] == [0, 1, 2]


def test_long_work_that_ends_at_the_door_of_a_busy_oven_began_before_its_bake() -> None:
    made = plan([task(0, 0, 1, FAN_160), task(1, 2, 0, FAN_160)], anchor=Anchor.START)
    assert placed(made, 0).start_min == 1
    assert [one.task.index for one in deciding_chain(made)] == [1]


def test_the_chain_goes_through_an_oven_that_changes_its_temperature() -> None:
    made = plan([task(0, 5, 40, FAN_160), task(1, 5, 30, FAN_200)])
    assert len(deciding_chain(made)) == 2


def test_free_stretches_of_over_a_quarter_of_an_hour() -> None:
    made = plan([task(0, 5, wait=60), task(1, 10, wait=10, after=(0,))])
    assert free_gaps(made) == ((Fraction(5), Fraction(65)),)


def test_a_recipe_without_steps_takes_no_time() -> None:
    assert plan([]).total_min == 0
