"""The ingredient list of a card in two columns of about the same length.

Columns of CSS would balance themselves, at a third of the time that the whole card takes.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from sitegen.sheet.values import SheetComponent, SheetLine

_HEADING_ROWS = 2
_UNEVEN_ROWS = 4
_LEAST_LINES = 2


@dataclass(frozen=True)
class ListPart:
    """A component's ingredient lines in one column.

    makes: as in the component. is_continued: the component began in the other column.
    """

    title: str
    makes: str
    lines: tuple[SheetLine, ...]
    is_continued: bool = False

    @property
    def rows(self) -> int:
        return _HEADING_ROWS + len(self.lines)


Columns = tuple[tuple[ListPart, ...], tuple[ListPart, ...]]


def ingredient_columns(components: Sequence[SheetComponent]) -> Columns:
    """The components that have ingredient lines, in their order, in a left and a right column.

    A component is cut only where whole ones would leave the columns more than _UNEVEN_ROWS apart, and
    then no column begins or ends with a single line of it.
    """
    parts = tuple(ListPart(part.title, part.makes, part.lines) for part in components if part.lines)
    whole = min(_at_headings(parts), key=_unevenness)
    if _unevenness(whole) <= _UNEVEN_ROWS:
        return whole
    return min((whole, *_inside_parts(parts)), key=_unevenness)


def _at_headings(parts: tuple[ListPart, ...]) -> Iterator[Columns]:
    return ((parts[:at], parts[at:]) for at in range(1, len(parts) + 1)) if parts else iter([((), ())])


def _inside_parts(parts: tuple[ListPart, ...]) -> Iterator[Columns]:
    for at, part in enumerate(parts):
        for cut in range(_LEAST_LINES, len(part.lines) - _LEAST_LINES + 1):
            first = ListPart(part.title, part.makes, part.lines[:cut])
            second = ListPart(part.title, "", part.lines[cut:], is_continued=True)
            yield (*parts[:at], first), (second, *parts[at + 1 :])


def _unevenness(columns: Columns) -> int:
    """How many rows one column is longer than the other; the left one may as well be the longer."""
    left, right = (sum(part.rows for part in column) for column in columns)
    return abs(left - right)
