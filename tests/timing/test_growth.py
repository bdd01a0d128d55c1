"""What a larger batch does to times."""

from fractions import Fraction

import pytest

from sitegen.kitchen.recipe import Component, OvenSetting, Step, single
from sitegen.timing.graph import tasks_of
from sitegen.timing.growth import Growth, grown, growth_of

FAN_160 = OvenSetting(Fraction(160), "celsius", fan=True)
WHISK = Step((), hands_on_min=single(5))
PIPE = Step((), hands_on_min=single(20), grows=True)
BAKE = Step((), wait_min=single(25), oven=FAN_160)
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
    made = grown(CAKES, Growth(Fraction(2), loads=2))
    assert tasks_of([made], {})[2].wait_min == single(50)
