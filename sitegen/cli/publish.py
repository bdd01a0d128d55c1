"""`sitegen publish`."""

import os
from datetime import UTC, datetime
from pathlib import Path

import click

from sitegen.cli.exits import Exit, stop
from sitegen.cli.folder import root_option, school_folder

_PANGO = """The cards are set with Pango, a library of the system. What brings it:
  Debian, Ubuntu: apt-get install libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0
  Fedora:         dnf install pango
  macOS:          brew install pango"""


@click.command()
@click.option(
    "--on",
    type=click.DateTime(["%Y-%m-%d"]),
    metavar="DATE",
    help="Build what that day will show, such as 2026-12-24. Default: today, in the school's time zone.",
)
@click.option(
    "--jobs", type=click.IntRange(min=1), metavar="N", help="Processes to print with. Default: one a core."
)
@root_option
def publish(on: datetime | None, jobs: int | None, root: Path | None) -> None:
    """Proof everything, then build the site, the cards and the texts into output/.

    The new output appears whole; if anything is wrong, the last good one stays as it is.

    \b
    Examples:
      sitegen publish
      sitegen publish --on 2026-12-24

    Exit codes: 0 published, 1 faults, 2 wrong use, 3 the machine lacks a library.
    """
    folder = school_folder(root)

    from sitegen.cli.faulty import show_faults, stop_with_faults
    from sitegen.cli.progress import build_progress
    from sitegen.release.build import Order, Refused
    from sitegen.release.build import publish as build
    from sitegen.release.card_work import MachineLacks

    order = Order(datetime.now(UTC), on.date() if on else None, jobs or _cores())
    try:
        with build_progress() as progress:
            published = build(folder, order, progress)
    except Refused as refused:
        raise stop_with_faults(refused.faults, refused.texts, "nothing was published") from None
    except MachineLacks as lack:
        raise stop(f"The machine lacks a library: {lack.library}\n{_PANGO}", Exit.MACHINE_LACKS) from None

    show_faults(published.proof.faults, published.proof.content.texts)
    report, changes = published.report, published.report.changes
    click.echo(
        f"{folder / 'output'}: {len(report.files)} files for {report.on}, "
        f"{len(changes.added)} added, {len(changes.changed)} changed, {len(changes.removed)} removed"
    )


def _cores() -> int:
    """The cores that this process may use, which a container may have fewer of than the machine."""
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1
