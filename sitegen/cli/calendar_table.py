"""The release calendar as a ruled table on a terminal."""

from itertools import groupby

from rich.console import Console
from rich.table import Table
from rich.text import Text

from sitegen.cli.calendar_text import READY, day_words, entry_words, lacks, stops
from sitegen.release.calendar import Readiness, ReleaseCalendar


def show_calendar(calendar: ReleaseCalendar, console: Console | None = None) -> None:
    """Print all of it. console: where to; the terminal without it."""
    out = console or Console()
    if calendar.entries:
        out.print(_entries(calendar))
    else:
        out.print(f"Nothing goes out from {day_words(calendar.on)} on.")
    if calendar.drafts:
        out.print(_drafts(calendar))
    if stopped := stops(calendar):
        out.print(Text(stopped, style="bold red"), soft_wrap=True)


def _entries(calendar: ReleaseCalendar) -> Table:
    """A section a day; what is past is dim."""
    table = _table(f"From {day_words(calendar.on)}, {calendar.time_zone}", "Day", "Goes", "Recipe", "Ready")
    for day, entries in groupby(calendar.entries, key=lambda entry: entry.day):
        told = day_words(day)
        for entry in entries:
            style = "dim" if entry.day < calendar.on else None
            cells = (told, entry.goes.value, entry_words(entry))
            table.add_row(*map(Text, cells), _readiness(entry.readiness), style=style)
            told = ""
        table.add_section()
    return table


def _drafts(calendar: ReleaseCalendar) -> Table:
    table = _table("Drafts", "Recipe", "Ready")
    for draft in calendar.drafts:
        table.add_row(Text(draft.title), _readiness(draft.readiness))
    return table


def _table(title: str, *heads: str) -> Table:
    return Table(*heads, title=Text(title, style="bold"), title_justify="left")


def _readiness(readiness: Readiness) -> Text:
    """A line for each thing that lacks; errors in red."""
    missing = lacks(readiness)
    if not missing:
        return Text(READY, style="green")
    first, *others = missing
    return Text("\n").join([Text(first, style="red" if readiness.errors else ""), *map(Text, others)])
