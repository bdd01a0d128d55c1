"""A plan of the day as an iCalendar file (RFC 5545): an event a step, alarms for what must not be missed."""

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from hashlib import sha256

from icalendar import Alarm, Calendar, Event

from sitegen.press.prose import to_plain
from sitegen.sheet.work_values import ClockCall, ClockRow, DayPlan

ALARM_BEFORE = timedelta(minutes=5)
AT_THE_SWITCH = timedelta(minutes=1)
"""How long it takes to turn an oven on: an event must end after it begins (RFC 5545, 3.8.2.2)."""
PRODUCER = "-//sitegen//work plan//EN"
WAITS_THERE = ("oven", "fridge", "freezer")


def calendar_file(plan: DayPlan, host: str, stamp: datetime) -> bytes:
    """The file's bytes.

    plan: at hours of a day; a plan on its own clock has no events. host: the school's, so that each event is
    known by a name of its own (UID). stamp: when the plan was made, aware.
    Hours are written in UTC, which every calendar shows on the reader's own wall, and to the second.
    """
    calendar = Calendar()
    calendar.add("prodid", PRODUCER)
    calendar.add("version", "2.0")
    calendar.add("x-wr-calname", plan.title)
    name = sha256(plan.title.encode()).hexdigest()[:12]
    events = [
        *(_oven_event(call, call.at, plan.title) for call in plan.oven if call.at is not None),
        *(_step_event(row, row.begins, end, plan.title) for row, end in _placed(plan) if row.begins and end),
    ]
    for number, event in enumerate(events, 1):
        event.add("uid", f"{name}-{event.start:%Y%m%dT%H%M%SZ}-{number}@{host}")
        event.add("dtstamp", stamp.astimezone(UTC))
        calendar.add_component(event)
    return bytes(calendar.to_ical())


def _oven_event(call: ClockCall, at: datetime, title: str) -> Event:
    event = _event(at, at + AT_THE_SWITCH, _plain(call.words), title)
    event.add("transp", "TRANSPARENT")
    event.add_component(_alarm(_plain(call.words), timedelta(0)))
    return event


def _step_event(row: ClockRow, begins: datetime, ends: datetime, title: str) -> Event:
    """Work, which keeps the cook busy, or a wait alone, which does not; the description tells both."""
    step = row.row
    event = _event(begins, ends, f"{_name(row)}: {to_plain(step.summary)}", "\n".join(_told(row, title)))
    event.add("transp", "OPAQUE" if step.hands_on_min else "TRANSPARENT")
    if row.is_called:
        why = f" ({row.must_start})" if row.must_start else ""
        event.add_component(_alarm(f"{_name(row)}, step {step.step}{why}", ALARM_BEFORE))
    return event


def _placed(plan: DayPlan) -> Iterator[tuple[ClockRow, datetime | None]]:
    """Each row with when hands are free again; of what needs no hands, when its wait is over."""
    yield from ((row, row.free_at if row.row.hands_on_min else row.ends) for row in plan.rows)


def _event(begins: datetime, ends: datetime, summary: str, description: str) -> Event:
    event = Event()
    event.add("dtstart", begins.astimezone(UTC))
    event.add("dtend", ends.astimezone(UTC))
    event.add("summary", _plain(summary))
    event.add("description", _plain(description))
    return event


def _name(row: ClockRow) -> str:
    step = row.row
    return f"{step.component} ({step.product})" if step.product else step.component


def _told(row: ClockRow, title: str) -> list[str]:
    step = row.row
    told = [f"{title}, step {step.step}"]
    if step.hands_on:
        told.append(f"Hands-on: {step.hands_on}, until {row.free}")
    if step.wait:
        place = f" in the {step.heat}" if step.heat in WAITS_THERE else ""
        told.append(f"Then it waits{place}: {step.wait}, until {row.end}")
    return told


def _alarm(words: str, before: timedelta) -> Alarm:
    alarm = Alarm()
    alarm.add("action", "DISPLAY")
    alarm.add("trigger", -before)
    alarm.add("description", words)
    return alarm


def _plain(words: str) -> str:
    return words.replace("\N{NO-BREAK SPACE}", " ")
