"""`sitegen cost RECIPE`."""

import json
from dataclasses import asdict
from typing import TYPE_CHECKING, Unpack

import click

from sitegen.cli.batch_options import BatchQuestion, answer, batch_options

if TYPE_CHECKING:
    from sitegen.sheet.cost_words import CostSheet


@click.command()
@batch_options
@click.option(
    "--margin", default="", metavar="M", help="Share of the price that is kept: 65. Default: the list's."
)
@click.option("--json", "as_json", is_flag=True, help="As JSON.")
def cost(margin: str, as_json: bool, **question: Unpack[BatchQuestion]) -> None:
    """Show what a batch of RECIPE costs by content/prices.yaml, and what a piece must sell for.

    Nothing of it is ever printed for readers. What has no price is named, and the sums then begin with
    'at least'.

    \b
    Examples:
      sitegen cost lemon-shortbread
      sitegen cost lemon-shortbread --makes 48 --margin 65

    Exit codes: 0 shown, 1 the recipe or the price list has faults, 2 wrong use.
    """
    from sitegen.release.costs import asked_cost

    sheet = answer(question, lambda folder, words: asked_cost(folder, question["recipe"], words, margin))
    if as_json:
        click.echo(json.dumps(asdict(sheet), ensure_ascii=False, indent=2))
    else:
        _show(sheet)


def _show(sheet: "CostSheet") -> None:
    from rich.console import Console
    from rich.table import Table
    from rich.text import Text

    table = Table(title=Text(sheet.title), title_justify="left")
    table.add_column()
    table.add_column()
    table.add_column(sheet.currency, justify="right")
    part = ""
    for row in sheet.rows:
        if row.part != part:
            table.add_section()
        table.add_row(Text("" if row.part == part else row.part, style="bold"), Text(row.what), row.money)
        part = row.part
    table.add_section()
    for what, money in sheet.totals:
        table.add_row("", Text(what, style="bold"), money)
    console = Console()
    console.print(table)
    for line in (*(f"Not in these sums: {missing}." for missing in sheet.missing), *sheet.notes):
        console.print(Text(line), soft_wrap=True)
