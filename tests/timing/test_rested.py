"""Nights off, as many as the work goes through."""

from datetime import datetime, time
from fractions import Fraction
from zoneinfo import ZoneInfo

import pytest

from sitegen.kitchen.amounts import Span, single
from sitegen.timing.conflict import DAY, NIGHT, CannotPlan
from sitegen.timing.graph import Task
from sitegen.timing.kitchens import Kitchen
from sitegen.timing.plan import Anchor
from sitegen.timing.rested import plan_with_nights

LONDON = ZoneInfo("Europe/London")
SATURDAY_4_PM = datetime(2026, 12, 5, 16, tzinfo=LONDON)
NIGHTS = (time(22), time(7))


def task(
    index: int, hands_on: int, wait: int = 0, after: tuple[int, ...] = (), most: int | None = None
) -> Task:
    wait_min: Span = single(wait)
    gap = None if most is None else Fraction(most)
    return Task(index, "Part", single(hands_on), wait_min, None, frozenset(after), frozenset(), gap)


def test_a_starter_of_twelve_hours_goes_through_the_night_and_is_stirred_before_it() -> None:
    made = plan_with_nights(
        [task(0, 5, wait=12 * 60), task(1, 60, after=(0,))], Kitchen(), SATURDAY_4_PM, NIGHTS
    )
    stirred_by = 22 * 60 - (16 + 24) * 60
    assert made.tasks[0].free_min - made.total_min == stirred_by
    assert made.total_min == 18 * 60 + 5


def test_work_of_many_days_has_every_night_off() -> None:
    """Thirty pieces of eight hours: one fits into each day of fifteen."""
    made = plan_with_nights(
        [task(place, 8 * 60, after=(place - 1,) if place else ()) for place in range(30)],
        Kitchen(),
        SATURDAY_4_PM,
        NIGHTS,
    )
    starts = {int(one.start_min - made.total_min) for one in made.tasks}
    for start in starts:
        hour = (16 * 60 + start) % (24 * 60)
        assert 7 * 60 <= hour <= 14 * 60
    assert made.total_min > 28 * 24 * 60


def test_a_step_longer_than_any_day_is_named() -> None:
    with pytest.raises(CannotPlan) as refused:
        plan_with_nights([task(0, 10), task(1, 16 * 60)], Kitchen(), SATURDAY_4_PM, NIGHTS)
    assert (refused.value.tasks, refused.value.wanted) == ((1,), (DAY,))


def test_steps_bound_to_each_other_beyond_a_day_leave_no_room_for_a_night() -> None:
    chain = [task(place, 4 * 60, after=(place - 1,) if place else (), most=5) for place in range(4)]
    with pytest.raises(CannotPlan) as refused:
        plan_with_nights(chain, Kitchen(), SATURDAY_4_PM, NIGHTS)
    assert NIGHT in refused.value.wanted


@pytest.mark.parametrize("anchor", Anchor)
def test_work_within_a_day_is_as_without_nights(anchor: Anchor) -> None:
    made = plan_with_nights(
        [task(0, 30), task(1, 30, wait=30)], Kitchen(), SATURDAY_4_PM.replace(hour=15), NIGHTS, anchor
    )
    assert made.total_min == 60


def test_who_begins_in_the_night_begins_in_the_morning() -> None:
    made = plan_with_nights([task(0, 30)], Kitchen(), SATURDAY_4_PM.replace(hour=3), NIGHTS, Anchor.START)
    assert (made.begins_min, made.total_min) == (4 * 60, 30)
