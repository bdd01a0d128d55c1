"""`sitegen scale RECIPE`."""

from typing import Unpack

import click

from sitegen.cli.batch_options import Question, answered, sheet_options


@click.command()
@sheet_options
def scale(**question: Unpack[Question]) -> None:
    """Show the ingredients of RECIPE (its folder's name or its title) beside those of the tested batch.

    \b
    Examples:
      sitegen scale lemon-shortbread --makes 24
      sitegen scale seeded-rolls --makes '24 rolls of 60 g'
      sitegen scale lemon-shortbread --tin '23 cm round'
      sitegen scale lemon-shortbread --using '200 g butter'

    Exit codes: 0 shown, 1 the recipe has faults, 2 wrong use.
    """
    asked = answered(question)

    from rich.console import Console
    from rich.table import Table
    from rich.text import Text

    from sitegen.press.plain_sheet import line_amount, line_name

    head = asked.sheet.head
    table = Table(title=Text(f"{head.title}, {head.edition.title}"), title_justify="left")
    for heading in ("", Text(asked.tested.head.batch.title), Text(head.batch.title)):
        table.add_column(heading)
    for tested, part in zip(asked.tested.components, asked.sheet.components, strict=True):
        table.add_row(Text(part.title, style="bold"), tested.makes, part.makes)
        for before, line in zip(tested.lines, part.lines, strict=True):
            table.add_row(Text(line_name(line)), Text(line_amount(before)), Text(line_amount(line)))
        table.add_section()
    console = Console()
    console.print(table)
    for note in (asked.sheet.tin, *asked.sheet.batch_notes):
        console.print(Text(note))
