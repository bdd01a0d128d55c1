"""A plan of the day as an iCalendar file (RFC 5545): an event a step, alarms for what must not be missed."""

from datetime import UTC, datetime, timedelta

from icalendar import Alarm, Calendar, Event

from sitegen.sheet.work_values import ClockRow, DayPlan

ALARM_BEFORE = timedelta(minutes=5)
PRODUCER = "-//sitegen//work plan//EN"


def calendar_file(plan: DayPlan, host: str, stamp: datetime) -> bytes:
    """The file's bytes.

    plan: at hours of a day; a plan on its own clock has no events. host: the school's, so that each event is
    known by a name of its own (UID). stamp: when the plan was made, aware.
    Hours are written in UTC, which every calendar shows on the reader's own wall.
    """
    calendar = Calendar()
    calendar.add("prodid", PRODUCER)
    calendar.add("version", "2.0")
    calendar.add("x-wr-calname", plan.title)
    for row in plan.rows:
        if row.begins is not None and row.ends is not None:
            calendar.add_component(_event(row, row.begins, row.ends, plan.title, host, stamp))
    return bytes(calendar.to_ical())


def _event(row: ClockRow, begins: datetime, ends: datetime, title: str, host: str, stamp: datetime) -> Event:
    """Work and its wait as one event; what the hands do is told in its description."""
    step = row.row
    event = Event()
    event.add("uid", f"{begins.astimezone(UTC):%Y%m%dT%H%M%SZ}-{step.step}@{host}")
    event.add("dtstamp", stamp.astimezone(UTC))
    event.add("dtstart", begins.astimezone(UTC))
    event.add("dtend", max(ends, begins).astimezone(UTC))
    event.add("summary", f"{step.component}: {step.summary}")
    event.add("description", "\n".join(_told(row, title)))
    event.add("transp", "OPAQUE" if step.hands_on_min else "TRANSPARENT")
    if row.must_start:
        event.add_component(_alarm(f"{step.component}, step {step.step}: {row.must_start}"))
    return event


def _told(row: ClockRow, title: str) -> list[str]:
    step = row.row
    told = [f"{title}, step {step.step}"]
    if step.hands_on:
        told.append(f"Hands-on: {step.hands_on}, until {row.free}")
    if step.wait:
        place = f" ({step.heat})" if step.heat else ""
        told.append(f"Then it waits{place}: {step.wait}, until {row.end}")
    return told


def _alarm(words: str) -> Alarm:
    alarm = Alarm()
    alarm.add("action", "DISPLAY")
    alarm.add("trigger", -ALARM_BEFORE)
    alarm.add("description", words)
    return alarm
