"""`sitegen preview`."""

from contextlib import ExitStack
from datetime import datetime
from pathlib import Path

import click

from sitegen.cli.folder import root_option, school_folder
from sitegen.cli.moment import moment


@click.command()
@click.option(
    "--port",
    type=click.IntRange(1024, 65535),
    metavar="N",
    help="Where to serve it on this machine. Default: 8120. One that is taken gives way to a free one.",
)
@click.option(
    "--on",
    type=click.DateTime(["%Y-%m-%d"]),
    metavar="DATE",
    help="Show what that day will show, such as 2026-12-24. Default: today, in the school's time zone.",
)
@click.option(
    "--open/--no-open",
    "opens",
    default=True,
    show_default=True,
    help="Open it in your browser, where there is a screen.",
)
@root_option
def preview(port: int | None, on: datetime | None, opens: bool, root: Path | None) -> None:
    """Serve the desk and a live site to your own browser, and renew both as you save.

    Only this machine is answered, by the address that is printed. Nothing is published; of drafts too all
    pages are shown. Ctrl-C ends it.

    \b
    Examples:
      sitegen preview
      sitegen preview --on 2026-12-24 --port 9000 --no-open

    Exit codes: 130 ended by Ctrl-C, 2 wrong use.
    """
    folder = school_folder(root)
    moment()  # a SOURCE_DATE_EPOCH that is none is told now, and not by a page

    from sitegen.desk.reading import Reading
    from sitegen.desk.serving import USUAL_PORT, place_at, serve

    asked = port or USUAL_PORT
    place = place_at(asked)
    if place.is_other:
        click.echo(f"port {asked} is taken: another is used", err=True)
    reading = Reading(folder, moment, on.date() if on else None)
    click.echo(f"The desk: {place.address}\nCtrl-C ends it.")
    with ExitStack() as at_the_end:
        if opens and _has_screen():
            _open(folder, place.address, at_the_end)
        serve(place, reading, moment)


def _has_screen() -> bool:
    """Whether somebody sits here who would see a browser open."""
    import os
    import sys

    has_screen = sys.platform in ("darwin", "win32") or os.environ.keys() & {"DISPLAY", "WAYLAND_DISPLAY"}
    return bool(has_screen) and sys.stdout.isatty()


def _open(folder: Path, address: str, at_the_end: ExitStack) -> None:
    """Show the desk in the browser; at the end nothing is left of how it came there."""
    import webbrowser

    from sitegen.desk.door import NotPrivate, door

    try:
        file = at_the_end.enter_context(door(folder, address))
    except (NotPrivate, OSError):
        click.echo("no file for yourself alone can be made here: open the address in your browser", err=True)
    else:
        webbrowser.open(file.as_uri())
