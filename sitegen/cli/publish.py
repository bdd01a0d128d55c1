"""`sitegen publish`."""

from datetime import datetime
from pathlib import Path
from shutil import get_terminal_size

import click

from sitegen.cli.cores import cores
from sitegen.cli.exits import Exit, stop
from sitegen.cli.folder import root_option, school_folder
from sitegen.cli.moment import moment

_PANGO = """The cards are set with Pango, a library of the system. What brings it:
  Debian, Ubuntu: apt-get install libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0
  Fedora:         dnf install pango
  macOS:          brew install pango"""

_DASK = """A cluster is reached with Dask, which is not installed. What brings it:
  pip install 'sitegen[cluster]'"""


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
@click.option(
    "--cluster",
    metavar="ADDRESS",
    help="Scheduler of a Dask cluster whose workers print instead, such as tcp://10.0.0.7:8786.",
)
@click.option(
    "--record",
    type=click.Path(path_type=Path, dir_okay=False),
    metavar="FILE",
    help="Also write the closing figures to FILE as JSON, with the time of each step.",
)
@root_option
def publish(
    on: datetime | None, jobs: int | None, cluster: str | None, record: Path | None, root: Path | None
) -> None:
    """Proof everything, then build the site, the cards and the texts into output/.

    The new output appears whole; if anything is wrong, the last good one stays as it is.

    \b
    Examples:
      sitegen publish
      sitegen publish --on 2026-12-24
      sitegen publish --record build.json

    Exit codes: 0 published, 1 faults, 2 wrong use, 3 the machine lacks a library.
    """
    folder = school_folder(root)
    if record is not None and record.resolve().is_relative_to((folder / "output").resolve()):
        raise stop("--record: output/ holds what is published; name a file elsewhere", Exit.WRONG_USE)

    from sitegen.cli.build_record import build_record
    from sitegen.cli.closing_table import closing_table
    from sitegen.cli.faulty import show_faults, stop_with_faults
    from sitegen.cli.progress import build_progress
    from sitegen.cli.step_log import StepLog
    from sitegen.cli.styled import styled
    from sitegen.release.build import Order, Refused
    from sitegen.release.build import publish as build
    from sitegen.release.card_work import MachineLacks
    from sitegen.release.cluster import ClusterPackageMissing

    order = Order(moment(), on.date() if on else None, jobs or cores(), cluster)
    try:
        with build_progress() as progress:
            log = StepLog(progress)
            published = build(folder, order, log)
            steps = log.rows()
    except Refused as refused:
        raise stop_with_faults(refused.faults, refused.texts, "nothing was published") from None
    except MachineLacks as lack:
        raise stop(f"The machine lacks a library: {lack.library}\n{_PANGO}", Exit.MACHINE_LACKS) from None
    except ClusterPackageMissing:
        raise stop(_DASK, Exit.MACHINE_LACKS) from None

    show_faults(published.faults, published.texts)
    place = _shown(folder / "output")
    table = closing_table(place, published.report, steps, get_terminal_size().columns, styled)
    click.echo(table, nl=False)
    if record is not None:
        record.write_text(build_record(published.report, steps), encoding="utf-8")


def _shown(output: Path) -> str:
    """Where the output lies, seen from where one stands."""
    here = Path.cwd()
    return str(output.relative_to(here) if output.is_relative_to(here) else output)
