"""What a larger batch does to times."""

from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import single
from sitegen.kitchen.method import OvenSetting, Step
from sitegen.kitchen.recipe import Component, Tin
from sitegen.timing.graph import tasks_of
from sitegen.timing.growth import Growth, grown, growth_of
from sitegen.timing.kitchens import Kitchen
from sitegen.timing.plan import plan

FAN_160 = OvenSetting(Fraction(160), "celsius", fan=True)
WHISK = Step((), hands_on_min=single(5))
PIPE = Step((), hands_on_min=single(20), grows=True)
BAKE = Step((), wait_min=single(25), oven=FAN_160)
TWENTY_CM, FOUR_CM = Fraction(20), Fraction(4)
TWO_TINS = Tin("round", TWENTY_CM, TWENTY_CM, FOUR_CM, TWENTY_CM, TWENTY_CM, number=2)
CAKES = Component("Cakes", (), (WHISK, PIPE, BAKE))


def test_piping_grows_and_whisking_stays() -> None:
    whisk, pipe, _ = grown(CAKES, growth_of(Fraction(4))).steps
    assert whisk.hands_on_min == single(5)
    assert pipe.hands_on_min == single(80)


def test_a_smaller_batch_is_piped_faster_and_baked_as_long() -> None:
    made = grown(CAKES, growth_of(Fraction(1, 2)))
    assert [task.hands_on_min.high for task in tasks_of([made], {})] == [5, 10, 0]
    assert tasks_of([made], {})[2].wait_min == single(25)


@pytest.mark.parametrize(
    ("factor", "loads"),
    [(Fraction(1, 2), 1), (Fraction(1), 1), (Fraction(11, 10), 1), (Fraction(3, 2), 2), (Fraction(4), 4)],
)
def test_the_oven_takes_as_many_loads_as_tins_full(factor: Fraction, loads: int) -> None:
    assert growth_of(factor).loads == loads


def test_loads_follow_each_other_in_the_oven() -> None:
    tasks = tasks_of([grown(CAKES, Growth(Fraction(2), loads=2))], {})
    assert plan(tasks).tasks[-1].wait_min == 50


def test_an_oven_with_room_for_all_loads_takes_them_at_once() -> None:
    tasks = tasks_of([grown(CAKES, Growth(Fraction(4), loads=4))], {})
    waits = [plan(tasks, Kitchen(oven_loads=room)).tasks[-1].wait_min for room in (1, 2, 3, 4, 9)]
    assert waits == [100, 50, 50, 25, 25]


def test_tins_count_where_the_oven_is_told_in_tins() -> None:
    """Two tins a load: an oven for one tin is filled four times for two loads, one for four tins once."""
    growth = growth_of(Fraction(2), TWO_TINS)
    assert growth == Growth(Fraction(2), loads=2, tins=4)
    tasks = tasks_of([grown(CAKES, growth)], {})
    waits = [plan(tasks, Kitchen(oven_tins=room)).tasks[-1].wait_min for room in (1, 2, 3, 4)]
    assert waits == [100, 50, 50, 25]
