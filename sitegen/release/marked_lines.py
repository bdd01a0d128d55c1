"""The line that a fault stands in, cut to a width that can be read, in three parts: before, marked, after."""

from collections.abc import Sequence
from dataclasses import dataclass

from sitegen.faults import Fault

_WIDEST = 100
_BEFORE_MARK = 40
_ELLIPSIS = "…"


@dataclass(frozen=True)
class MarkedLine:
    """marked: where the fault is; '' where it covers no character of the line."""

    before: str
    marked: str
    after: str

    @property
    def text(self) -> str:
        return self.before + self.marked + self.after


def marked_line(fault: Fault, lines: Sequence[str]) -> MarkedLine | None:
    """None for a fault of a whole file. lines: of its file, which may be missing or shorter by now."""
    place = fault.place
    if not 0 < place.line <= len(lines):
        return None
    line = printable(lines[place.line - 1])
    before, shown, length = _window(line, max(place.column - 1, 0), max(place.length, 1))
    return MarkedLine(shown[:before], shown[before : before + length], shown[before + length :])


def printable(text: str) -> str:
    """The text with each control character made visible, so that no file can steer a terminal."""
    return "".join(mark if mark.isprintable() else "\N{SYMBOL FOR SPACE}" for mark in text.expandtabs(1))


def _window(line: str, start: int, length: int) -> tuple[int, str, int]:
    """The part of a long line round its mark: (characters before the mark, the part, length of the mark)."""
    if len(line) <= _WIDEST:
        return start, line, length
    first = max(start - _BEFORE_MARK, 0)
    part = line[first : first + _WIDEST]
    cut_off = _ELLIPSIS if first else ""
    goes_on = _ELLIPSIS if first + _WIDEST < len(line) else ""
    before = start - first
    return before + len(cut_off), cut_off + part + goes_on, min(length, len(part) - before)
