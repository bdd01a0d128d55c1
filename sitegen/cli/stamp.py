"""`sitegen stamp CARDS... SUBSCRIBERS.csv`."""

from pathlib import Path
from typing import TYPE_CHECKING, TypedDict, Unpack

import click

from sitegen.cli.cores import cores
from sitegen.cli.exits import Exit, stop
from sitegen.cli.folder import root_option, school_folder
from sitegen.cli.moment import moment
from sitegen.cli.stopping import go_on

if TYPE_CHECKING:
    from sitegen.release.stamping import Stamped, StampOrder


class StampWords(TypedDict):
    """What the arguments and the options said."""

    files: tuple[Path, ...]
    into: Path | None
    encrypt: bool
    no_print: bool
    jobs: int | None
    root: Path | None


@click.command()
@click.argument(
    "files",
    nargs=-1,
    required=True,
    metavar="CARDS... SUBSCRIBERS.csv",
    type=click.Path(exists=True, path_type=Path),
)
@click.option(
    "--into",
    type=click.Path(file_okay=False, path_type=Path),
    metavar="FOLDER",
    help="Where the copies go, never below output/. Default: stamped/, beside content/.",
)
@click.option(
    "--encrypt",
    is_flag=True,
    help="AES-256: opens without a password; not to be changed, nor copied from but by assistive technology.",
)
@click.option("--no-print", is_flag=True, help="The same, and not to be printed either.")
@click.option(
    "--jobs", type=click.IntRange(min=1), metavar="N", help="Processes to work with. Default: one a core."
)
@root_option
def stamp(**words: Unpack[StampWords]) -> None:
    """Make numbered copies of CARDS, PDF files or folders of them, for each name in SUBSCRIBERS.csv.

    Name and number stand in the margin of every page and in the document's metadata. The list is CSV with a
    column 'name', or one name a line. Who got what stands in stamped/register.csv: it grows over runs, and a
    name keeps its number. A copy that is there already is not made again.

    \b
    Examples:
      sitegen stamp output/subscribers/cards/lemon-shortbread-british-metric-a4.pdf subscribers.csv
      sitegen stamp output/subscribers/cards subscribers.csv --into ../copies --encrypt

    Exit codes: 0 stamped, 1 rows or cards have faults and the others were stamped, 2 wrong use.
    """
    *cards, names = words["files"]
    if not cards or names.is_dir():
        raise stop("name the cards first, and the list of names last", Exit.WRONG_USE)
    folder = school_folder(words["root"])

    from sitegen.press.stamp import Lock
    from sitegen.release.stamp_cards import NotStamped
    from sitegen.release.stamping import StampOrder

    order = StampOrder(
        root=folder,
        cards=tuple(cards),
        names=names,
        now=moment(),
        into=words["into"],
        lock=Lock(printing=not words["no_print"]) if words["encrypt"] or words["no_print"] else None,
        jobs=words["jobs"] or cores(),
    )
    try:
        stamped = _watched(order)
    except NotStamped as problem:
        raise stop(f"{problem.sentence}\n{problem.way_out}", Exit.WRONG_USE) from None
    _tell(stamped)


def _watched(order: "StampOrder") -> "Stamped":
    """With a bar where someone watches. A run that is to stop ends between two pieces of its work."""
    from rich.console import Console
    from rich.progress import Progress

    from sitegen.release.stamping import stamp as make_copies

    console = Console(stderr=True)
    with Progress(console=console, transient=True, disable=not console.is_terminal) as progress:
        bar = progress.add_task("stamp copies", total=None)

        def advance() -> None:
            go_on()
            progress.advance(bar)

        return make_copies(order, lambda total: progress.update(bar, total=total), advance)


def _tell(stamped: "Stamped") -> None:
    from sitegen.cli.faulty import show_faults
    from sitegen.release.tally import counted, tally

    show_faults(stamped.faults, stamped.texts)
    copies = counted(stamped.made, "copy", "copies")
    click.echo(f"{copies} made, {stamped.kept} there already: {stamped.into}")
    if stamped.made or stamped.kept:
        click.echo(f"who got what: {stamped.register}")
    if stamped.faults:
        raise stop(f"{tally(stamped.faults)}: the others were stamped", Exit.FAULTS)
