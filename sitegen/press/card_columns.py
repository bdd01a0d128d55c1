"""The ingredient list of a card and the notes after it, in columns of about the same length.

Columns of CSS would balance themselves, at a third of the time that the whole card takes.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import accumulate

from sitegen.press.card_notes import CardNote
from sitegen.sheet.values import SheetComponent, SheetLine

_HEADING_ROWS = 2
_LEAST_LINES = 2
_WORTH_A_CUT = 3
"""Rows that must be won before a component is cut in two."""


@dataclass(frozen=True)
class ColumnWidth:
    """How many columns stand side by side, and about how many letters of each kind fill a row of one.

    line: an ingredient, beside its amount. run_on: parts of a recipe, set run on. note: in smaller type.
    """

    columns: int
    line: int
    run_on: int
    note: int


@dataclass(frozen=True)
class ListPart:
    """A component's ingredient lines in one column.

    makes: as in the component. is_continued: the component began in the column before.
    """

    title: str
    makes: str
    lines: tuple[SheetLine, ...]
    is_continued: bool = False

    @property
    def parts(self) -> tuple[SheetLine, ...]:
        """Lines of other components and of base recipes, to be set run on."""
        return tuple(line for line in self.lines if line.is_part)

    @property
    def plain(self) -> tuple[SheetLine, ...]:
        """All other lines, to be set one below the other."""
        return tuple(line for line in self.lines if not line.is_part)


@dataclass(frozen=True)
class CardColumn:
    """One column: parts of the list, then notes. Either may be missing."""

    parts: tuple[ListPart, ...]
    notes: tuple[CardNote, ...]


_Block = ListPart | CardNote
_Column = tuple[_Block, ...]


def card_columns(
    components: Sequence[SheetComponent], notes: Sequence[CardNote], width: ColumnWidth
) -> tuple[CardColumn, ...]:
    """All ingredient lines and notes, in their order, in `width.columns` columns or fewer.

    A component is cut only where that saves over _WORTH_A_CUT rows, and then no column begins or ends
    with a single line of it.
    """
    parts = (ListPart(part.title, part.makes, part.lines) for part in components if part.lines)
    blocks: _Column = (*parts, *notes)
    whole = _shortest(blocks, width, may_cut=False)
    cut = _shortest(blocks, width, may_cut=True)
    chosen = whole if _length(whole, width) <= _length(cut, width) + _WORTH_A_CUT else cut
    return tuple(_sorted_out(column) for column in chosen if column)


def _sorted_out(column: _Column) -> CardColumn:
    return CardColumn(
        tuple(block for block in column if isinstance(block, ListPart)),
        tuple(block for block in column if isinstance(block, CardNote)),
    )


def _shortest(blocks: _Column, width: ColumnWidth, *, may_cut: bool) -> tuple[_Column, ...]:
    """The columns that get by with the least length, filled one after the other."""
    total = sum(_rows(block, width) for block in blocks)
    lengths = range(-(-total // width.columns), total + 1)
    tried = (_filled(blocks, length, width, may_cut=may_cut) for length in lengths)
    return next(columns for columns in tried if len(columns) <= width.columns)


def _filled(blocks: _Column, length: int, width: ColumnWidth, *, may_cut: bool) -> tuple[_Column, ...]:
    """Columns of so many rows; a block for which that is too few stands alone."""
    columns: list[_Column] = [()]
    waiting = list(reversed(blocks))
    while waiting:
        block = waiting.pop()
        room = length - sum(_rows(each, width) for each in columns[-1])
        lines = _lines_that_fit(block, room, width) if may_cut else 0
        if _rows(block, width) <= room or not (lines or columns[-1]):
            columns[-1] += (block,)
            continue
        if isinstance(block, ListPart) and lines:
            columns[-1] += (replace(block, lines=block.lines[:lines]),)
            block = replace(block, makes="", lines=block.lines[lines:], is_continued=True)
        columns.append(())
        waiting.append(block)
    return tuple(columns)


def _lines_that_fit(block: _Block, room: int, width: ColumnWidth) -> int:
    """How many of a part's first lines fit, with no single one left on either side; 0 for none."""
    if isinstance(block, CardNote):
        return 0
    ends = accumulate((_rows_of_line(line, width) for line in block.lines), initial=_HEADING_ROWS)
    fitting = sum(end <= room for end in ends) - 1
    lines = min(fitting, len(block.lines) - _LEAST_LINES)
    return lines if lines >= _LEAST_LINES else 0


def _length(columns: Sequence[_Column], width: ColumnWidth) -> int:
    return max(sum(_rows(block, width) for block in column) for column in columns)


def _rows(block: _Block, width: ColumnWidth) -> int:
    """About how many rows of the list a block is high."""
    if isinstance(block, CardNote):
        return 1 + block.letters // width.note
    run_on = sum(len(f"{line.amount} {line.name}, ") for line in block.parts)
    plain = sum(_rows_of_line(line, width) for line in block.plain)
    return _HEADING_ROWS + -(-run_on // width.run_on) + plain


def _rows_of_line(line: SheetLine, width: ColumnWidth) -> int:
    letters = len(f"{line.name} {line.beside} {line.alternatives} {line.extra}")
    return 1 + letters // width.line
