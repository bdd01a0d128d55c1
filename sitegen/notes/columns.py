"""Tables in notes: what the heads of their columns say of the cells below them."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace

from sitegen.notes.amounts_in_notes import spellings
from sitegen.notes.note_lines import NoteLine
from sitegen.notes.number_patterns import FIGURE
from sitegen.notes.values import Lore
from sitegen.notes.word_table import note_words

_SHARE = re.compile(r"\d[\d.,]* ?%?")
_FIGURE = re.compile(FIGURE)
_NUMBERS = frozenset({"#", "no", "step"})
"""Heads over the numbers of steps: such a table is none of ingredients."""


def is_column_heads(line: NoteLine) -> bool:
    """Whether a line is the head of a table: 'Ingredient', 'Qty', 'Unit'."""
    return len(line.cells) > 1 and all(_head(cell) in note_words().columns for cell in line.cells)


def under_heads(lines: Iterable[NoteLine], lore: Lore) -> Iterator[NoteLine]:
    """The lines, in those of a table each cell as its head has it: '180' below 'g' is '180 g'.

    The first column may have no head, and a row with words below a measure is out of line: it stays. Shares
    ('%') are left out of what is read; comments keep them.
    """
    heads: tuple[str, ...] = ()
    for line in lines:
        if is_column_heads(line):
            heads = tuple(_head(cell) for cell in line.cells)
        elif not line.cells:
            heads = ()
        elif heads and len(line.cells) in (len(heads), len(heads) + 1):
            line = _under(line, ("", *heads)[-len(line.cells) :], lore)
        yield line


def _head(cell: str) -> str:
    return cell.casefold().strip(" .:*")


def _under(line: NoteLine, heads: tuple[str, ...], lore: Lore) -> NoteLine:
    words, amounts, notes = [], [], []
    for head, cell in zip(heads, line.cells, strict=True):
        may_be_words = not head or head in note_words().word_columns or head in note_words().note_columns
        if head in _NUMBERS or not (may_be_words or _FIGURE.search(cell)):
            return line
        is_figure = cell.replace(".", "").isdigit()
        if head in note_words().note_columns:
            notes.append(cell)
        elif is_figure and head in spellings(lore):
            amounts.append(f"{cell} {head}")
        elif not (head.endswith("%") and _SHARE.fullmatch(cell)):
            words.append(cell)
    body = " ".join((*words, *([" / ".join(amounts)] if amounts else [])))
    return replace(line, text=", ".join((body, *notes)), in_words=line.original)
