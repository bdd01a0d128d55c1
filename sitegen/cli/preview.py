"""`sitegen preview`."""

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
    moment()

    from sitegen.desk.reading import Reading
    from sitegen.desk.serving import USUAL_PORT, place_at, serve

    asked = port or USUAL_PORT
    place = place_at(asked)
    if place.is_other:
        click.echo(f"port {asked} is taken: another is used", err=True)
    reading = Reading(folder, moment, on.date() if on else None)
    click.echo(f"The desk: {place.address}\nCtrl-C ends it.")
    if opens:
        _open(place.address)
    serve(place, reading, moment)


def _open(address: str) -> None:
    """In the browser of whoever sits here; nothing where a screen or a browser is missing."""
    import os
    import sys
    import webbrowser

    has_screen = sys.platform in ("darwin", "win32") or os.environ.keys() & {"DISPLAY", "WAYLAND_DISPLAY"}
    if has_screen and sys.stdout.isatty():
        webbrowser.open(address)
