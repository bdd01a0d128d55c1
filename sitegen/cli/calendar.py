"""`sitegen calendar`."""

import sys
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

import click

from sitegen.cli.exits import Exit, stop
from sitegen.cli.folder import root_option, school_folder
from sitegen.cli.moment import moment

if TYPE_CHECKING:
    from sitegen.release.calendar import ReleaseCalendar

_DAY = click.DateTime(["%Y-%m-%d"])


@click.command()
@click.option(
    "--on", type=_DAY, metavar="DATE", help="Rehearse another day. Default: today, in the school's time zone."
)
@click.option("--until", type=_DAY, metavar="DATE", help="Nothing later. Default: all that is to come.")
@click.option("--past", is_flag=True, help="With what went out before.")
@click.option(
    "--ics",
    type=click.Path(dir_okay=False, writable=True, path_type=Path),
    metavar="FILE",
    help="Write an iCalendar file.",
)
@click.option("--json", "as_json", is_flag=True, help="As JSON.")
@root_option
@click.pass_context
def calendar(
    context: click.Context,
    on: datetime | None,
    until: datetime | None,
    past: bool,
    ics: Path | None,
    as_json: bool,
    root: Path | None,
) -> None:
    """List what goes out when, to subscribers and to everyone, and what is not ready for it.

    It tells of errors and advice, of a finished bake or steps without a photo, of a film without captions or
    none; then of drafts, which no day publishes.

    \b
    Examples:
      sitegen calendar
      sitegen calendar --on 2026-12-01 --until 2026-12-31
      sitegen calendar --past --ics releases.ics

    Exit codes: 0 shown, 1 something to come in that time is held up by an error (one anywhere stops every
    publish), 2 wrong use.
    """
    folder = school_folder(root)

    from sitegen.cli.calendar_text import calendar_json
    from sitegen.cli.faulty import asked
    from sitegen.release.calendar import Span, release_calendar

    now = moment()
    span = Span(on.date() if on else None, until.date() if until else None, past)
    found = asked(lambda: release_calendar(folder, now, span), "there is no calendar to show")
    if ics is not None:
        _write(ics, found, now)
    if as_json:
        click.echo(calendar_json(found), nl=False)
    else:
        _show(found)
    context.exit(Exit.FAULTS if found.is_held_up else Exit.CLEAN)


def _write(path: Path, found: "ReleaseCalendar", now: datetime) -> None:
    from sitegen.cli.calendar_text import calendar_events
    from sitegen.press.days_file import days_file

    try:
        path.write_bytes(days_file("Releases", calendar_events(found), found.host, now))
    except OSError as problem:
        raise stop(f"'{path}' cannot be written: {problem.strerror}", Exit.WRONG_USE) from None
    click.echo(f"written: {path}", err=True)


def _show(found: "ReleaseCalendar") -> None:
    """A ruled table on a terminal, a block a day elsewhere."""
    from sitegen.cli.calendar_text import plain_calendar

    if not sys.stdout.isatty():
        click.echo(plain_calendar(found), nl=False)
        return

    from sitegen.cli.calendar_table import show_calendar

    show_calendar(found)
