"""Whole days as an iCalendar file, read back by the library that wrote it; `tests/outside/` has another."""

from datetime import UTC, date, datetime

from icalendar import Calendar

from sitegen.press.days_file import DayEvent, days_file

STAMP = datetime(2026, 7, 1, 12, tzinfo=UTC)
EVENTS = (
    DayEvent("to-everyone-bay", date(2026, 7, 10), "To everyone: Bay cake; with, marks", "No film"),
    DayEvent("to-everyone-fig", date(2026, 7, 17), "To everyone: Fig cake"),
)


def test_each_day_is_one_event_without_an_hour() -> None:
    """RFC 5545, 3.6.1: a DTSTART of the type DATE without an end is one day."""
    first, second = Calendar.from_ical(days_file("Releases", EVENTS, "tansyrow.example", STAMP)).walk(
        "VEVENT"
    )
    assert first.decoded("dtstart") == date(2026, 7, 10)
    assert (first["uid"], first["summary"]) == ("to-everyone-bay@tansyrow.example", EVENTS[0].title)
    assert first["description"] == "No film"
    assert "description" not in second
    assert "dtend" not in second


def test_the_same_days_give_the_same_bytes() -> None:
    assert days_file("R", EVENTS, "a.example", STAMP) == days_file("R", EVENTS, "a.example", STAMP)
