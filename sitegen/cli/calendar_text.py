"""The release calendar as rows of texts, as plain text, as JSON, and as events of a calendar file."""

import json
from collections.abc import Iterator
from dataclasses import asdict
from datetime import date
from itertools import groupby

from sitegen.press.days_file import DayEvent
from sitegen.release.calendar import Entry, Goes, Readiness, ReleaseCalendar
from sitegen.release.tally import counted
from sitegen.sheet.days import WEEKDAYS

READY = "ready"


def day_words(day: date) -> str:
    """'Friday 2026-12-04': the same in every region, and it sorts."""
    return f"{WEEKDAYS[day.weekday()]} {day.isoformat()}"


def lacks(readiness: Readiness) -> tuple[str, ...]:
    """What is not ready, the worst first; () for a recipe that has all."""
    return tuple(_lacks(readiness))


def _lacks(readiness: Readiness) -> Iterator[str]:
    if readiness.errors:
        yield counted(readiness.errors, "error")
    pictures = readiness.pictures
    if pictures is not None:
        if not pictures.finished:
            yield "no photo of the finished bake"
        if pictures.bare_steps:
            yield f"{pictures.bare_steps} of {counted(pictures.steps, 'step')} without a photo"
        if not pictures.film:
            yield "no film"
        elif not pictures.captions:
            yield "no captions"
    if readiness.advice:
        yield counted(readiness.advice, "piece of advice", "pieces of advice")


def readiness_words(readiness: Readiness) -> str:
    return "; ".join(lacks(readiness)) or READY


def entry_words(entry: Entry) -> str:
    """'Plum cake (ingredients)', 'Plum cake: Oil corrected from 150 g to 100 g.'."""
    if entry.goes is Goes.CHANGE_NOTICE:
        return f"{entry.title}: {entry.told}"
    return f"{entry.title} ({entry.told})" if entry.told else entry.title


def stops(calendar: ReleaseCalendar) -> str:
    """The sentence on errors in files that are not listed; '' for none."""
    told = ", ".join(f"{file} ({errors})" for file, errors in calendar.elsewhere.items())
    return f"Errors elsewhere stop every publish: {told}" if told else ""


def plain_calendar(calendar: ReleaseCalendar) -> str:
    """A block a day, a line for each thing that goes out on it; then the drafts."""
    blocks = [f"From {day_words(calendar.on)}, {calendar.time_zone}"]
    for day, entries in groupby(calendar.entries, key=lambda entry: entry.day):
        blocks.append("\n".join([day_words(day), *map(_plain_entry, entries)]))
    if not calendar.entries:
        blocks.append("Nothing goes out.")
    if calendar.drafts:
        drafts = (f"  {draft.title}: {readiness_words(draft.readiness)}" for draft in calendar.drafts)
        blocks.append("\n".join(["Drafts", *drafts]))
    blocks.append(stops(calendar))
    return "\n\n".join(block for block in blocks if block) + "\n"


def _plain_entry(entry: Entry) -> str:
    ready = readiness_words(entry.readiness)
    if entry.goes is Goes.CHANGE_NOTICE:
        return f"  {entry.goes:<14}  {entry.title}: {ready}\n{'':18}{entry.told}"
    return f"  {entry.goes:<14}  {entry_words(entry)}: {ready}"


def calendar_json(calendar: ReleaseCalendar) -> str:
    """All of it, days as ISO 8601."""
    return json.dumps(asdict(calendar), ensure_ascii=False, indent=2, default=date.isoformat) + "\n"


def calendar_events(calendar: ReleaseCalendar) -> Iterator[DayEvent]:
    """An event for each thing that goes out; that of a release keeps its name when it is moved."""
    for entry in calendar.entries:
        kind = entry.goes.replace(" ", "-")
        is_notice = entry.goes is Goes.CHANGE_NOTICE
        name = f"{kind}-{entry.slug}" + (f"-{entry.day.isoformat()}" if is_notice else "")
        told = [entry.told] if is_notice else []
        missing = [f"Not ready: {readiness_words(entry.readiness)}"] if lacks(entry.readiness) else []
        title = f"{entry.goes.capitalize()}: {entry.title}"
        yield DayEvent(name, entry.day, title, "\n".join([*told, *missing]))
