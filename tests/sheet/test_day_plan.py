"""Work put at hours of a day."""

from dataclasses import replace
from datetime import datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest

from sitegen.kitchen.method import OvenSetting
from sitegen.kitchen.recipe import Component
from sitegen.sheet.conflict_words import StepsInConflict, conflict_text
from sitegen.sheet.day_plan import TooLate, Wish, day_plan
from sitegen.sheet.work_values import DayPlan
from sitegen.timing.kitchens import Kitchen
from sitegen.timing.plan import Anchor
from tests.sheet.pantry import minutes, says, setting

LONDON = ZoneInfo("Europe/London")
FOUR_PM = datetime(2026, 12, 5, 16, tzinfo=LONDON)
NIGHTS = (time(22), time(7))
FAN_160 = OvenSetting(minutes(160).low, "celsius", fan=True)
CAKE = Component(
    "Cake",
    (),
    (
        says("Beat.", hands_on_min=minutes(20), within_min=minutes(10).low),
        says("Fill.", hands_on_min=minutes(5)),
        says("Bake.", wait_min=minutes(30, 40), oven=FAN_160),
        says("Turn out.", hands_on_min=minutes(5), wait_min=minutes(50)),
    ),
)
STARTER = Component("Starter", (), (says("Stir.", hands_on_min=minutes(5), wait_min=minutes(12 * 60)),))
LOAF = replace(CAKE, title="Loaf", steps=(replace(CAKE.steps[0], after=("Starter",)), *CAKE.steps[1:]))


def planned(*components: Component, wish: Wish | None = None, now: datetime | None = None) -> DayPlan:
    summaries = [f"Step {number}" for number in range(1, 1 + sum(len(part.steps) for part in components))]
    return day_plan("Test", components, summaries, wish or wished(), setting(), now)


def wished(hour: datetime | None = FOUR_PM, anchor: Anchor = Anchor.END, rested: bool = False) -> Wish:
    return Wish(Kitchen(), hour, anchor, NIGHTS if rested else None)


def test_work_is_ready_at_the_hour() -> None:
    made = planned(CAKE)
    assert (made.starts, made.ready) == ("14:00, Saturday 5 December 2026", "16:00, Saturday 5 December 2026")
    assert [(row.start, row.free, row.end) for row in made.rows] == [
        ("14:00", "14:20", "14:20"),
        ("14:20", "14:25", "14:25"),
        ("14:25", "14:25", "15:05"),
        ("15:05", "15:10", "16:00"),
    ]


def test_work_begins_at_the_hour() -> None:
    made = planned(CAKE, wish=wished(anchor=Anchor.START))
    assert made.starts.startswith("16:00")
    assert made.ready.startswith("18:00")
    assert made.proof == "No plan for one cook and this oven is ready earlier: proved."


def test_without_an_hour_the_clock_is_its_own() -> None:
    made = planned(CAKE, wish=wished(hour=None))
    assert (made.starts, made.ready) == ("", "")
    assert [(row.start, row.day, row.begins) for row in made.rows][1] == ("+0:20", "", None)


def test_what_must_not_be_missed_is_marked_and_what_could_be_forgotten_is_called() -> None:
    marks = [(row.must_start.replace("\N{NO-BREAK SPACE}", " "), row.is_called) for row in planned(CAKE).rows]
    assert marks == [("", True), ("within 10 min of step 1", False), ("", False), ("out of the oven", True)]


def test_a_step_after_free_hands_is_called() -> None:
    rows = planned(STARTER, LOAF).rows
    assert (rows[1].must_start, rows[1].is_called) == ("the rest waits for it", True)


def test_the_hand_on_the_ovens_switch_has_its_hour() -> None:
    call = planned(CAKE).oven[0]
    assert (call.start, call.at) == ("14:10", FOUR_PM - timedelta(minutes=110))
    assert call.words.startswith("Switch the oven on: 160")


def test_the_chain_that_decides_the_total_is_given_by_numbers() -> None:
    assert planned(CAKE).chain == (1, 2, 3, 4)


def test_one_step_after_another_is_told_only_where_it_takes_longer() -> None:
    icing = Component("Icing", (), (says("Stir.", hands_on_min=minutes(10)),))
    assert planned(CAKE).written_order == ""
    assert planned(CAKE, icing).written_order.replace("\N{NO-BREAK SPACE}", " ") == "2 h 10 min"


def test_nobody_stirs_at_night() -> None:
    made = planned(STARTER, LOAF, wish=wished(rested=True))
    assert made.rows[0].start == "21:55"
    assert made.rows[0].day == "Friday 4 December 2026"


def test_a_step_that_no_day_is_long_enough_for_is_named() -> None:
    with pytest.raises(StepsInConflict) as refused:
        planned(replace(CAKE, steps=(says("Lay.", hands_on_min=minutes(16 * 60)),)), wish=wished(rested=True))
    assert conflict_text(refused.value) == "no day between two nights off is long enough for step 1 of 'Cake'"


def test_too_late_comes_with_the_earliest_hour() -> None:
    now = FOUR_PM - timedelta(hours=1)
    with pytest.raises(TooLate) as refused:
        planned(CAKE, now=now)
    assert refused.value.earliest == now + timedelta(hours=2)


def test_the_earliest_hour_minds_the_nights() -> None:
    """At nine in the evening it is too late for the 65 minutes until the cake is out of the oven, and no
    filled tin goes into it by itself at night."""
    now = FOUR_PM.replace(hour=21)
    with pytest.raises(TooLate) as refused:
        planned(CAKE, wish=wished(FOUR_PM.replace(hour=21, minute=30), rested=True), now=now)
    assert refused.value.earliest == FOUR_PM.replace(day=6, hour=8, minute=35)


def test_the_earliest_hour_is_a_whole_minute_that_can_be_kept() -> None:
    now = FOUR_PM - timedelta(minutes=60, seconds=20)
    with pytest.raises(TooLate) as refused:
        planned(CAKE, now=now)
    earliest = refused.value.earliest
    assert earliest == FOUR_PM + timedelta(minutes=60)
    assert planned(CAKE, wish=wished(earliest), now=now).ready.startswith("17:00")


def test_work_that_begins_just_now_is_in_time() -> None:
    assert planned(CAKE, now=FOUR_PM - timedelta(hours=2)).starts.startswith("14:00")


@pytest.mark.parametrize(
    ("ready", "starts"),
    [
        (datetime(2026, 3, 29, 2, 30, tzinfo=LONDON), "23:30, Saturday 28 March 2026"),
        (datetime(2026, 10, 25, 2, 30, tzinfo=LONDON), "01:30, Sunday 25 October 2026"),
    ],
    ids=["clocks go forward", "clocks go back"],
)
def test_a_change_of_clocks_costs_no_minute_of_work(ready: datetime, starts: str) -> None:
    made = planned(CAKE, wish=wished(ready))
    assert made.starts == starts
    first, last = made.rows[0].begins, made.rows[-1].ends
    assert first is not None
    assert last is not None
    assert last.timestamp() - first.timestamp() == 120 * 60
