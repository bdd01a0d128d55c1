"""The tables of a sheet as plain text: names flush left, figures flush right below one another."""

from collections.abc import Iterator, Sequence
from itertools import zip_longest
from textwrap import fill

from sitegen.press.formula_parts import formula_parts
from sitegen.sheet.panel_values import Formula, Nutrition

_WIDTH = 88
_BETWEEN = "   "

Row = tuple[str, ...]


def formula_text(formula: Formula) -> str:
    """A dough in baker's percentages, its totals below it."""
    rows: list[Row] = [("", "weight", "of all flour")]
    for part, lines in formula_parts(formula):
        rows += [(part,)] if part else []
        rows += [(f"  {line.name}" if part else line.name, line.weight, line.percent) for line in lines]
    totals = (wrapped(f"  {what}: {figure}", "    ") for what, figure in formula.totals)
    notes = (wrapped(f"  {note}", "  ") for note in formula.notes)
    return "\n".join([f"Formula: {formula.title}", *columns(rows), *totals, *notes])


def nutrition_text(nutrition: Nutrition) -> str:
    """The estimate for a portion and for 100 g, its notes below it."""
    rows: list[Row] = [("", "a portion", "of daily value", "100 g")]
    for row in nutrition.rows:
        name = f"  {row.name}" if row.is_inner else row.name
        rows.append((name, row.per_portion, row.daily, row.per_100g))
    portion = f" for {nutrition.portion}" if nutrition.portion else ""
    notes = (wrapped(f"  {note}", "  ") for note in nutrition.notes)
    return "\n".join([f"Nutrition, an estimate{portion}", *columns(_filled(rows)), *notes])


def _filled(rows: Sequence[Row]) -> list[Row]:
    """The rows without those columns that have a head and no figure."""
    columns = [column for column in zip(*rows, strict=True) if any(column[1:])]
    return list(zip(*columns, strict=True))


def wrapped(text: str, indent: str = "") -> str:
    """Lines of at most 88 characters; indent: of all but the first.

    No-break spaces hold an amount together: `fill` breaks at ordinary spaces only.
    """
    return fill(text, _WIDTH, subsequent_indent=indent, break_long_words=False, break_on_hyphens=False)


def columns(rows: Sequence[Row]) -> Iterator[str]:
    """The rows, each column as wide as its widest cell: names flush left, all else flush right."""
    widths = [max(map(len, column)) for column in zip_longest(*rows, fillvalue="")]
    for name, *figures in rows:
        cells = [figure.rjust(width) for figure, width in zip(figures, widths[1:], strict=False)]
        yield _BETWEEN.join([f"  {name.ljust(widths[0])}", *cells]).rstrip()
