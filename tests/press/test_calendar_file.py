"""A plan of the day for a calendar, as iCalendar (RFC 5545)."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

from icalendar import Calendar, Event

from sitegen.press.calendar_file import calendar_file
from sitegen.sheet.work_values import DayPlan
from tests.press.plans import EIGHT_PM, LOAF

STAMP = datetime(2026, 12, 1, 12, tzinfo=UTC)


def events(plan: DayPlan = LOAF) -> list[Event]:
    calendar = Calendar.from_ical(calendar_file(plan, "school.example", STAMP))
    return sorted((each for each in calendar.walk("VEVENT")), key=lambda each: each.start)


def test_every_step_is_an_event_and_so_is_the_ovens_switch() -> None:
    assert [(str(each["summary"]), each.start, each.end) for each in events()] == [
        ("Starter: Stir the flour, water & yeast", EIGHT_PM, EIGHT_PM + timedelta(minutes=5)),
        (
            "Loaf (Sandwich bread): Knead",
            EIGHT_PM + timedelta(minutes=720),
            EIGHT_PM + timedelta(minutes=740),
        ),
        (
            "Switch the oven on: 180 °C fan",
            EIGHT_PM + timedelta(minutes=725),
            EIGHT_PM + timedelta(minutes=726),
        ),
        ("Loaf: Bake", EIGHT_PM + timedelta(minutes=740), EIGHT_PM + timedelta(minutes=780)),
        ("Loaf: Turn out", EIGHT_PM + timedelta(minutes=780), EIGHT_PM + timedelta(minutes=782)),
    ]


def test_an_alarm_rings_for_what_could_be_forgotten_and_for_nothing_else() -> None:
    alarms = [
        (str(alarm["description"]), alarm["trigger"].dt) for each in events() for alarm in each.walk("VALARM")
    ]
    assert alarms == [
        ("Starter, step 1", timedelta(minutes=-5)),
        ("Loaf (Sandwich bread), step 2 (the rest waits for it)", timedelta(minutes=-5)),
        ("Switch the oven on: 180 °C fan", timedelta(0)),
        ("Loaf, step 4 (out of the oven)", timedelta(minutes=-5)),
    ]


def test_what_needs_no_hands_leaves_the_hour_free() -> None:
    assert [str(each["transp"]) for each in events()] == [
        "OPAQUE",
        "OPAQUE",
        "TRANSPARENT",
        "TRANSPARENT",
        "OPAQUE",
    ]


def test_an_event_tells_when_hands_are_free_and_what_then_waits_where() -> None:
    assert str(events()[0]["description"]).splitlines() == [
        "Honey, sesame; a loaf, step 1",
        "Hands-on: 5 min, until 20:05",
        "Then it waits: 715 min, until 08:00",
    ]
    assert "Then it waits in the oven: 40 min, until 09:00" in str(events()[3]["description"])


def test_every_event_has_a_name_of_its_own_that_stays_the_same() -> None:
    names = [str(each["uid"]) for each in events()]
    assert len(set(names)) == 5
    assert all(name.endswith("@school.example") for name in names)
    assert names == [str(each["uid"]) for each in events()]


def test_two_plans_of_one_hour_share_no_name() -> None:
    other = [str(each["uid"]) for each in events(replace(LOAF, title="Another loaf"))]
    assert not set(other) & {str(each["uid"]) for each in events()}


def test_a_plan_on_its_own_clock_has_no_events() -> None:
    rows = tuple(replace(row, begins=None, free_at=None, ends=None) for row in LOAF.rows)
    assert events(replace(LOAF, rows=rows, oven=())) == []


def test_the_same_plan_gives_the_same_bytes() -> None:
    assert calendar_file(LOAF, "school.example", STAMP) == calendar_file(LOAF, "school.example", STAMP)
