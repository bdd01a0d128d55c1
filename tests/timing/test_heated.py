"""How long something stands at a heat, and when the oven must be seen to."""

from fractions import Fraction

from sitegen.kitchen.amounts import single
from sitegen.kitchen.method import OvenSetting
from sitegen.timing.graph import Task
from sitegen.timing.heated import heated_min, joined_stretches
from sitegen.timing.kitchens import Kitchen
from sitegen.timing.oven_calls import oven_calls
from sitegen.timing.plan import plan

FAN_160 = OvenSetting(Fraction(160), "celsius", fan=True)
FAN_200 = OvenSetting(Fraction(200), "celsius", fan=True)


def task(
    index: int, hands_on: int, wait: int, oven: OvenSetting | None = None, after: tuple[int, ...] = ()
) -> Task:
    return Task(index, f"Part {index}", single(hands_on), single(wait), oven, frozenset(after))


def stretch(start: int, end: int) -> tuple[Fraction, Fraction]:
    return Fraction(start), Fraction(end)


def test_stretches_that_touch_are_one() -> None:
    assert joined_stretches([stretch(20, 30), stretch(0, 5), stretch(5, 10), stretch(8, 9)]) == [
        stretch(0, 10),
        stretch(20, 30),
    ]


def test_a_bake_counts_while_it_bakes_and_the_hob_while_one_stands_at_it() -> None:
    made = plan([task(0, 5, 40, FAN_160), task(1, 10, 120, after=(0,))])
    assert heated_min(made, ()) == 40
    assert heated_min(made, {1}) == 50


def test_a_sauce_stirred_while_the_cake_bakes_counts_once() -> None:
    made = plan([task(0, 5, 40, FAN_160), task(1, 10, 0), task(2, 5, 0, after=(0, 1))])
    assert heated_min(made, {1}) == 40


def calls(*tasks: Task, kitchen: Kitchen | None = None) -> list[tuple[int, int, bool]]:
    made = plan(tasks, kitchen or Kitchen())
    return [(int(call.at_min), int(call.oven.degrees), call.from_cold) for call in oven_calls(made)]


def test_the_oven_goes_on_a_quarter_of_an_hour_before_its_first_load() -> None:
    assert calls(task(0, 20, 40, FAN_160)) == [(5, 160, True)]


def test_a_bake_that_begins_the_work_calls_before_it() -> None:
    assert calls(task(0, 5, 40, FAN_160)) == [(-10, 160, True)]


def test_two_loads_in_a_row_at_one_temperature_call_once() -> None:
    assert calls(task(0, 20, 40, FAN_160), task(1, 20, 40, FAN_160)) == [(5, 160, True)]


def test_another_temperature_is_set_when_the_first_bake_is_out() -> None:
    assert calls(task(0, 20, 40, FAN_160), task(1, 20, 30, FAN_200)) == [(5, 160, True), (60, 200, False)]


def test_after_hours_the_oven_is_switched_on_anew() -> None:
    between = task(1, 0, 180, after=(0,))
    made = calls(task(0, 20, 40, FAN_160), between, task(2, 5, 30, FAN_160, after=(1,)))
    assert made == [(5, 160, True), (20 + 40 + 180 + 5 - 15, 160, True)]
