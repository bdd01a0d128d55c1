"""`sitegen order ORDERFILE`."""

import sys
from pathlib import Path
from typing import TYPE_CHECKING, TypedDict, Unpack

import click

from sitegen.cli.exits import Exit, stop
from sitegen.cli.folder import root_option, school_folder
from sitegen.cli.moment import moment

if TYPE_CHECKING:
    from sitegen.release.orders import AskedOrder


class OrderQuestion(TypedDict):
    """What the argument and the options said; '' and None where one was not given."""

    orderfile: Path
    ready_by: str
    cooks: int | None
    edition: str
    no_cost: bool
    as_json: bool
    pdf: Path | None
    paper: str | None
    root: Path | None


@click.command()
@click.argument("orderfile", type=click.Path(path_type=Path))
@click.option("--ready-by", default="", metavar="HOUR", help="'2026-12-05 09:00' or 'Saturday 09:00'.")
@click.option("--cooks", type=click.IntRange(1, 20), metavar="N", help="Pairs of hands. Default: the file's.")
@click.option("--edition", default="", metavar="E", help="Whose words. Default: the school's own.")
@click.option("--no-cost", is_flag=True, help="Leave out what it costs.")
@click.option("--json", "as_json", is_flag=True, help="As JSON.")
@click.option(
    "--pdf", type=click.Path(dir_okay=False, path_type=Path), metavar="FILE", help="Print it, for the wall."
)
@click.option("--paper", type=click.Choice(["a4", "letter"]), help="Of the PDF. Default: the school's usual.")
@root_option
def order(**question: Unpack[OrderQuestion]) -> None:
    """Plan a production day: shopping, weigh-outs, the clock, allergens and cost of ORDERFILE.

    ORDERFILE is a file, or the name of one in content/orders/. 'sitegen schema order' tells its form. Nothing
    of it is ever published.

    \b
    Examples:
      sitegen order saturday-counter
      sitegen order saturday-counter --ready-by '2026-12-05 09:00' --pdf saturday.pdf
      sitegen order saturday-counter --no-cost --json

    Exit codes: 0 shown, 1 the order or a recipe has faults, 2 wrong use or no such plan, 3 nothing can print.
    """
    folder = school_folder(question["root"])

    from sitegen.cli.faulty import asked
    from sitegen.release.orders import OrderWords, asked_order

    words = OrderWords(question["ready_by"], question["cooks"], question["edition"], not question["no_cost"])

    def planned() -> "AskedOrder":
        day = asked_order(folder, question["orderfile"], words, moment())
        if question["pdf"] is not None:
            _print(day, folder, question["pdf"], question["paper"] or "")
        return day

    day = asked(planned, "there is no plan of the day")
    _show(day, as_json=question["as_json"], is_printed=question["pdf"] is not None)


def _print(asked: "AskedOrder", folder: Path, file: Path, paper: str) -> None:
    """Write the PDF and say so on the standard error."""
    from sitegen.release.card_work import MachineLacks
    from sitegen.release.order_print import order_pdf

    try:
        file.write_bytes(order_pdf(folder, asked, paper))
    except MachineLacks as lack:
        raise stop(f"The machine lacks a library: {lack.library}", Exit.MACHINE_LACKS) from None
    click.echo(f"written: {file}", err=True)


def _show(asked: "AskedOrder", *, as_json: bool, is_printed: bool) -> None:
    """The day at the terminal; nothing more where it is on paper already."""
    if as_json:
        from sitegen.sheet.as_json import order_json

        click.echo(order_json(asked.sheet))
    elif sys.stdout.isatty() and not is_printed:
        from sitegen.cli.order_tables import show_order

        show_order(asked.sheet)
    elif not is_printed:
        from sitegen.press.plain_order import plain_order

        click.echo(plain_order(asked.sheet), nl=False)
