"""One cook, one oven, one clock."""

from fractions import Fraction

from sitegen.kitchen.recipe import OvenSetting, Span
from sitegen.timing.graph import Task
from sitegen.timing.plan import plan

FAN_160 = OvenSetting(Fraction(160), "celsius", fan=True)
FAN_200 = OvenSetting(Fraction(200), "celsius", fan=True)


def span(minutes: int) -> Span:
    return Span(Fraction(minutes), Fraction(minutes))


def task(
    index: int, hands_on: int, wait: int = 0, oven: OvenSetting | None = None, after: tuple[int, ...] = ()
) -> Task:
    return Task(index, "Part", span(hands_on), span(wait), oven, frozenset(after))


def test_hands_on_work_fills_the_wait_of_another_task() -> None:
    made = plan([task(0, 5, wait=60), task(1, 20)])
    assert made.total_min == 65
    assert made.hands_on_min == 25


def test_one_cook_never_has_two_things_in_hand() -> None:
    made = plan([task(0, 30), task(1, 20), task(2, 10)])
    assert made.total_min == 60


def test_two_bakes_take_turns_in_one_oven() -> None:
    made = plan([task(0, 5, 40, FAN_160), task(1, 5, 30, FAN_200)])
    bakes = sorted((one.free_min, one.end_min) for one in made.tasks)
    assert bakes[0][1] <= bakes[1][0]
    assert made.total_min == 75


def test_the_longest_chain_begins_first_where_that_is_shorter() -> None:
    made = plan([task(0, 30), task(1, 5, wait=120)])
    assert [one.task.index for one in made.tasks] == [1, 0]
    assert made.total_min == 125


def test_the_written_order_stays_where_it_costs_nothing() -> None:
    made = plan([task(0, 10), task(1, 10), task(2, 10)])
    assert [one.task.index for one in made.tasks] == [0, 1, 2]


def test_a_range_counts_by_the_figure_that_is_asked_for() -> None:
    baked = Task(0, "Cake", span(10), Span(Fraction(22), Fraction(24)), FAN_160, frozenset())
    assert plan([baked]).total_min == 34
    assert plan([baked], pick=lambda minutes: minutes.low).total_min == 32


def test_a_recipe_without_steps_takes_no_time() -> None:
    assert plan([]).total_min == 0
