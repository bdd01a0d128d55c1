"""Calendar files read back by `ical`, a general-purpose iCalendar library that did not write them.

Source of the rules: RFC 5545, Internet Calendaring and Scheduling Core Object Specification, 2009.
"""

from datetime import UTC, date, datetime, time
from zoneinfo import ZoneInfo

import pytest
from ical.calendar import Calendar
from ical.calendar_stream import IcsCalendarStream

from sitegen.press.calendar_file import calendar_file
from sitegen.press.days_file import DayEvent, days_file
from sitegen.sheet.day_plan import Wish
from sitegen.sheet.work_values import DayPlan
from sitegen.timing.kitchens import Kitchen
from tests.outside.demo_plans import SLUGS, demo_plan

LONDON = ZoneInfo("Europe/London")
STAMP = datetime(2026, 1, 1, 12, tzinfo=UTC)
NIGHTS = (time(22), time(7))
READY = {
    "winter": datetime(2026, 12, 5, 16, tzinfo=LONDON),
    "clocks go forward": datetime(2026, 3, 29, 11, tzinfo=LONDON),
    "clocks go back": datetime(2026, 10, 25, 11, tzinfo=LONDON),
}


def written(slug: str, ready: datetime) -> tuple[DayPlan, bytes]:
    plan = demo_plan(slug, Wish(Kitchen(), ready, rest=NIGHTS))
    return plan, calendar_file(plan, "school.example", STAMP)


def read(file: bytes) -> Calendar:
    return IcsCalendarStream.calendar_from_ics(file.decode())


def test_a_release_day_is_read_back_as_a_whole_day() -> None:
    """RFC 5545, 3.6.1: an event whose start is a DATE and that has no end lasts that day."""
    day = DayEvent("to-everyone-bay", date(2026, 7, 10), "To everyone: Bay cake; with, marks", "No film")
    (event,) = read(days_file("Releases", [day], "school.example", STAMP)).events
    assert (event.uid, event.dtstart, event.summary) == ("to-everyone-bay@school.example", day.day, day.title)
    assert (event.computed_duration.days, event.description) == (1, "No film")


@pytest.mark.parametrize("when", READY)
@pytest.mark.parametrize("slug", SLUGS)
def test_every_step_is_read_back_at_its_hour(slug: str, when: str) -> None:
    plan, file = written(slug, READY[when])
    steps = sorted(
        (event.dtstart, event.dtend)
        for event in read(file).events
        if not str(event.summary).startswith(("Switch the oven", "Set the oven"))
    )
    assert steps == sorted(
        (row.begins, row.free_at if row.row.hands_on_min else row.ends) for row in plan.rows
    )


@pytest.mark.parametrize("when", READY)
@pytest.mark.parametrize("slug", SLUGS)
def test_the_oven_and_all_that_could_be_forgotten_ring(slug: str, when: str) -> None:
    plan, file = written(slug, READY[when])
    rung = [event for event in read(file).events if event.alarm]
    assert len(rung) == sum(row.is_called for row in plan.rows) + len(plan.oven)
    assert all(
        alarm.action == "DISPLAY" and alarm.description for event in rung for alarm in event.alarm or []
    )


@pytest.mark.parametrize("slug", SLUGS)
def test_names_are_unique_and_ends_follow_starts(slug: str) -> None:
    """3.8.4.7: UID is globally unique; 3.8.2.2: DTEND is later than DTSTART."""
    events = read(written(slug, READY["winter"])[1]).events
    assert len({event.uid for event in events}) == len(events)
    assert all(event.dtend is not None and event.dtend > event.dtstart for event in events)


@pytest.mark.parametrize("slug", SLUGS)
def test_lines_end_and_fold_as_the_standard_says(slug: str) -> None:
    """3.1: lines end in CRLF and hold 75 octets at most."""
    file = written(slug, READY["winter"])[1]
    lines = file.split(b"\r\n")
    assert lines[-1] == b""
    assert b"\n" not in b"".join(lines)
    assert max(len(line) for line in lines) <= 75
