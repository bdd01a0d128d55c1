"""Tools, spaces and ovens that two steps cannot have at once."""

from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import single
from sitegen.kitchen.method import OvenSetting, Step
from sitegen.kitchen.recipe import Component
from sitegen.timing.graph import Task, tasks_of
from sitegen.timing.kitchens import Kitchen
from sitegen.timing.plan import PlannedTask, highest, plan

FAN_220 = OvenSetting(Fraction(220), "celsius", fan=True)
FAN_180 = OvenSetting(Fraction(180), "celsius", fan=True)


def loaf(title: str, waits_in: str = "", tools: tuple[str, ...] = ()) -> Component:
    shape = Step((), hands_on_min=single(10), wait_min=single(60), waits_in=waits_in, tools=tools)
    return Component(title, (), (shape,))


def test_two_loaves_prove_side_by_side_where_nothing_else_is_said() -> None:
    assert plan(tasks_of([loaf("Rye"), loaf("Wheat")], {})).total_min == 80


def test_a_proofing_box_takes_one_after_the_other() -> None:
    """It is busy while they wait in it, and free while the second is shaped."""
    loaves = [loaf("Rye", "proofing box"), loaf("Wheat", "Proofing box")]
    assert plan(tasks_of(loaves, {})).total_min == 10 + 60 + 60


def test_a_mixer_is_busy_while_hands_work_and_free_in_the_wait() -> None:
    doughs = [loaf("Rye", tools=("mixer",)), loaf("Wheat", tools=("mixer",))]
    assert plan(tasks_of(doughs, {})).total_min == 80
    assert plan(tasks_of(doughs, {}), Kitchen(cooks=2)).total_min == 80


def test_a_mixer_that_runs_alone_is_busy_throughout() -> None:
    doughs = [loaf("Rye", "mixer", ("mixer",)), loaf("Wheat", "mixer", ("mixer",))]
    assert plan(tasks_of(doughs, {})).total_min == 140


def test_a_planned_step_says_when_it_keeps_a_tool_busy() -> None:
    task = tasks_of([loaf("Rye", "box", ("scraper",))], {})[0]
    one = PlannedTask(task, Fraction(0), Fraction(10), Fraction(60))
    assert one.busy_min("scraper") == (0, 10)
    assert one.busy_min("box") == (10, 70)


def test_an_oven_is_turned_down_with_the_loaf_inside() -> None:
    """No ten minutes of waiting before the door: the same loaf goes on at another temperature."""
    bakes = (
        Step((), wait_min=single(15), oven=FAN_220),
        Step((), wait_min=single(25), oven=FAN_180),
    )
    assert plan(tasks_of([Component("Loaf", (), bakes)], {})).total_min == 40


@pytest.mark.parametrize(
    ("loads", "tins", "kitchen", "turns", "share"),
    [
        (1, 2, Kitchen(), 1, 1),
        (3, 6, Kitchen(), 3, 1),
        (3, 6, Kitchen(oven_loads=2), 2, 2),
        (1, 2, Kitchen(oven_tins=4), 1, 2),
        (3, 6, Kitchen(oven_tins=4), 2, 4),
        (1, 2, Kitchen(oven_tins=1), 2, 1),
    ],
)
def test_how_often_an_oven_is_filled(loads: int, tins: int, kitchen: Kitchen, turns: int, share: int) -> None:
    task = Task(0, "Cake", single(0), single(30), FAN_180, frozenset(), loads=loads, tins=tins)
    assert (kitchen.turns(task), kitchen.oven_share(task)) == (turns, share)
    assert kitchen.wait(task, highest) == 30 * turns


def test_a_fridge_takes_all_at_once() -> None:
    task = Task(0, "Cream", single(0), single(30), None, frozenset(), loads=3, tins=3)
    assert Kitchen().turns(task) == 1
