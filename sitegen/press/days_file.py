"""Whole days as an iCalendar file (RFC 5545): what happens on each, without an hour."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import UTC, date, datetime

from icalendar import Calendar, Event

PRODUCER = "-//sitegen//release days//EN"


@dataclass(frozen=True)
class DayEvent:
    """name: its own in the file, and the same when its day is moved. told: more on it, '' for nothing."""

    name: str
    day: date
    title: str
    told: str = ""


def days_file(title: str, events: Iterable[DayEvent], host: str, stamp: datetime) -> bytes:
    """The file's bytes.

    host: the school's, which makes the names of events (UID) unlike those of all others. stamp: when it
    was made, aware. A day without an end lasts one day (RFC 5545, 3.6.1) and keeps nobody busy.
    """
    calendar = Calendar()
    calendar.add("prodid", PRODUCER)
    calendar.add("version", "2.0")
    calendar.add("x-wr-calname", title)
    for one in events:
        event = Event()
        event.add("uid", f"{one.name}@{host}")
        event.add("dtstamp", stamp.astimezone(UTC))
        event.add("dtstart", one.day)
        event.add("summary", one.title)
        if one.told:
            event.add("description", one.told)
        event.add("transp", "TRANSPARENT")
        calendar.add_component(event)
    return bytes(calendar.to_ical())
