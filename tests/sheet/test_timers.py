"""Timers for the waits of steps: whole seconds, from the wait as it is printed."""

from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import Span
from sitegen.sheet.timers import step_timer
from tests.sheet.pantry import minutes, says


def test_a_range_rings_at_its_lower_figure_to_look_and_again_at_its_upper() -> None:
    timer = step_timer(says("Bake.", wait_min=minutes(22, 24)))
    assert timer is not None
    assert timer.rings_s == (22 * 60, 24 * 60)
    assert timer.wait == "22–24\N{NO-BREAK SPACE}min"


@pytest.mark.parametrize(
    ("low", "high", "rings_s"),
    [("30", "30", (1800,)), ("1/2", "1/2", (30,)), ("3/2", "5/2", (90, 150)), ("0", "5", (300,))],
)
def test_one_figure_rings_once_and_parts_of_a_minute_are_counted(
    low: str, high: str, rings_s: tuple[int, ...]
) -> None:
    timer = step_timer(says("Cool.", wait_min=Span(Fraction(low), Fraction(high))))
    assert timer is not None
    assert timer.rings_s == rings_s


def test_a_bake_in_two_loads_has_the_timer_of_one() -> None:
    timer = step_timer(says("Bake.", wait_min=minutes(22, 24), loads=2))
    assert timer is not None
    assert timer.rings_s == (1320, 1440)
    assert "loads" not in timer.wait


def test_twelve_hours_have_a_timer_and_more_have_none() -> None:
    assert step_timer(says("Chill.", wait_min=minutes(8 * 60, 12 * 60))) is not None
    assert step_timer(says("Prove.", wait_min=minutes(12 * 60, 14 * 60))) is None


def test_no_wait_has_no_timer() -> None:
    assert step_timer(says("Whisk.", hands_on_min=minutes(4))) is None
