"""A production day as tables at a terminal."""

from collections.abc import Iterable, Sequence

from rich.console import Console
from rich.markup import escape
from rich.table import Table
from rich.text import Text

from sitegen.press.plain_order import (
    shopping_cells,
    shopping_groups,
    weigh_out_notes,
    weigh_out_rows,
    weigh_out_title,
)
from sitegen.press.plain_plan import plain_plan
from sitegen.sheet.order_values import OrderCost, OrderSheet, ShoppingRow

Row = Sequence[str]


def show_order(order: OrderSheet, console: Console | None = None) -> None:
    """Print the whole of it. console: where to; the terminal without it."""
    out = console or Console()
    products = [(one.makes, one.title, one.tin, one.loads) for one in order.products]
    out.print(_table(order.title, ("Makes", "Product", "Tins", "Oven"), [products]))
    shopping = [[_shopping_row(row) for row in rows] for _, rows in shopping_groups(order)]
    out.print(_table("Shopping", ("What", "Needed", "Buy"), shopping))
    for part in order.weigh_outs:
        out.print(_table(weigh_out_title(part), ("What", "Weight"), [list(weigh_out_rows(part))]))
        _lines(out, weigh_out_notes(part))
    out.print(Text(plain_plan(order.plan)), soft_wrap=True)
    counter = [(row.product, *row.marks) for row in order.counter.rows]
    out.print(_table("Allergens", ("Product", *order.counter.columns), [counter]))
    _lines(out, order.counter.notes)
    _lines(out, (f"{one.title}: {one.text}" for one in order.cautions))
    if order.cost:
        _show_cost(out, order.cost)
    _lines(out, (order.estimates_note,))


def _shopping_row(row: ShoppingRow) -> Row:
    what, *figures = shopping_cells(row)
    return (f"{what} ({row.note})" if row.note else what, *figures)


def _show_cost(out: Console, cost: OrderCost) -> None:
    rows = [(row.product, row.ingredients, row.each) for row in cost.rows]
    totals = [(what, money, "") for what, money in cost.totals]
    out.print(_table(f"Costs, {cost.currency}", ("For", "Ingredients", "Each"), [rows, totals]))
    _lines(out, (f"Not in these sums: {missing}." for missing in cost.missing))
    _lines(out, cost.notes)


def _table(title: str, heads: Row, sections: Sequence[Sequence[Row]]) -> Table:
    """A table of plain texts; a rule between its sections."""
    table = Table(*(escape(head) for head in heads), title=Text(title, style="bold"), title_justify="left")
    for rows in sections:
        for row in rows:
            table.add_row(*(Text(cell) for cell in row))
        table.add_section()
    return table


def _lines(out: Console, lines: Iterable[str]) -> None:
    for line in lines:
        out.print(Text(line), soft_wrap=True)
