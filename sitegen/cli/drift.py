"""`sitegen drift [RECIPE...]`."""

import sys
from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING

import click

from sitegen.cli.exits import Exit
from sitegen.cli.folder import root_option, school_folder

if TYPE_CHECKING:
    from sitegen.cli.drift_text import DriftTable


@click.command()
@click.argument("recipes", nargs=-1, metavar="[RECIPE...]")
@click.option(
    "--edition", default="", metavar="E", help="Such as us-cups. Default: all that the school prints."
)
@click.option("--json", "as_json", is_flag=True, help="As JSON, with every line.")
@root_option
@click.pass_context
def drift(
    context: click.Context, recipes: tuple[str, ...], edition: str, as_json: bool, root: Path | None
) -> None:
    """Show how far rounding moves the balance: each ingredient in % of the flour, tested and as printed.

    RECIPE is a folder's name or a title; its every line is shown in every edition and batch that its page
    offers. Without one, the line that moves most is shown of each recipe, edition and batch. Where there is
    no flour the shares are those of the heaviest ingredient.

    \b
    Examples:
      sitegen drift
      sitegen drift lemon-shortbread
      sitegen drift lemon-shortbread --edition us-weights --json

    Exit codes: 0 within 4 points, 1 a line moves by more or the recipe has faults, 2 wrong use.
    """
    folder = school_folder(root)

    from sitegen.cli.drift_text import every_line, worst_lines
    from sitegen.cli.faulty import asked
    from sitegen.release.drifts import drifts
    from sitegen.sheet.as_json import drift_json

    found = asked(lambda: drifts(folder, recipes, edition), "there is no balance to show")
    if as_json:
        click.echo(drift_json(found))
    else:
        _show(every_line(found) if recipes else [worst_lines(found)])
    context.exit(Exit.FAULTS if any(each.is_too_far for each in found) else Exit.CLEAN)


def _show(tables: Iterable["DriftTable"]) -> None:
    """Rules and bold type on a terminal, plain columns elsewhere."""
    if not sys.stdout.isatty():
        click.echo("\n\n".join(table.plain() for table in tables))
        return

    from rich.console import Console
    from rich.table import Table
    from rich.text import Text

    console = Console()
    for table in tables:
        ruled = Table(title=Text(table.title), title_justify="left")
        for index, heading in enumerate(table.headings):
            ruled.add_column(Text(heading), justify="right" if index in table.numbers else "left")
        for row in table.rows:
            ruled.add_row(*map(Text, row), style="bold" if row[-1] else None)
        console.print(ruled)
