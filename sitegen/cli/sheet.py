"""`sitegen sheet RECIPE`."""

from typing import Unpack

import click

from sitegen.cli.batch_options import Question, answered, sheet_options


@click.command()
@sheet_options
@click.option("--json", "as_json", is_flag=True, help="As JSON, exact numbers among the texts.")
def sheet(as_json: bool, **question: Unpack[Question]) -> None:
    """Print the whole sheet of RECIPE (its folder's name or its title), in any edition, at any batch.

    \b
    Examples:
      sitegen sheet lemon-shortbread
      sitegen sheet lemon-shortbread --edition us-cups --times 3/2
      sitegen sheet lemon-shortbread --tin '23 cm square' --json

    Exit codes: 0 printed, 1 the recipe has faults, 2 wrong use.
    """
    asked = answered(question)

    from sitegen.press.plain_sheet import plain_sheet
    from sitegen.sheet.as_json import sheet_json

    click.echo(sheet_json(asked.sheet) + "\n" if as_json else plain_sheet(asked.sheet), nl=False)
