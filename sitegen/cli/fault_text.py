"""Faults for a person: place, code, sentence, the line with a mark under it, and a way out."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from unicodedata import combining, east_asian_width

from sitegen.faults import Fault, Severity
from sitegen.release.marked_lines import MarkedLine, marked_line, printable

Paint = Callable[[str, Severity], str]
"""Gives a few words the colour of their severity."""


def plain(text: str, _severity: Severity) -> str:
    """No colour."""
    return text


def faults_text(faults: Iterable[Fault], texts: Mapping[str, Sequence[str]], paint: Paint = plain) -> str:
    """All faults, one below the other, each as `fault_text` sets it. texts: file -> its lines."""
    return "".join(fault_text(fault, texts.get(fault.place.file, ()), paint) for fault in faults)


def fault_text(fault: Fault, lines: Sequence[str], paint: Paint = plain) -> str:
    """One fault; lines: of its file, which may be missing or shorter by now."""
    kind = paint(f"{fault.severity} {fault.code}", fault.severity)
    head = f"{_place(fault)}: {kind}: {printable(fault.sentence)}\n"
    line = marked_line(fault, lines)
    if line is not None:
        return head + _shown_line(fault, line, paint)
    return head + (f"      = {printable(fault.way_out)}\n" if fault.way_out else "")


def _place(fault: Fault) -> str:
    place = fault.place
    return f"{place.file}:{place.line}:{place.column}" if place.line else place.file


def _shown_line(fault: Fault, line: MarkedLine, paint: Paint) -> str:
    carets = "^" * max(_cells(line.marked), 1)
    mark = " " * _cells(line.before) + paint(carets, fault.severity)
    way_out = f" {printable(fault.way_out)}" if fault.way_out else ""
    return f"{fault.place.line:>5} | {line.text}\n      | {mark}{way_out}\n"


def _cells(text: str) -> int:
    """Columns that a text takes on a terminal."""
    return sum(0 if combining(mark) else 2 if east_asian_width(mark) in "WF" else 1 for mark in text)
