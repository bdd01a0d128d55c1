"""Faults as the desk shows them: each with its line, in which its place is marked."""

from collections.abc import Iterable, Mapping, Sequence

from sitegen.desk.values import ShownFault
from sitegen.faults import Fault, Severity
from sitegen.release.marked_lines import marked_line, printable


def shown_faults(faults: Iterable[Fault], texts: Mapping[str, Sequence[str]]) -> tuple[ShownFault, ...]:
    """texts: file -> its lines."""
    return tuple(_shown(fault, texts.get(fault.place.file, ())) for fault in faults)


def _shown(fault: Fault, lines: Sequence[str]) -> ShownFault:
    place, line = fault.place, marked_line(fault, lines)
    return ShownFault(
        is_error=fault.severity is Severity.ERROR,
        code=fault.code,
        sentence=printable(fault.sentence),
        way_out=printable(fault.way_out),
        place=f"{place.file}, line {place.line}" if place.line else place.file,
        line=place.line,
        before=line.before if line else "",
        marked=line.marked if line else "",
        after=line.after if line else "",
    )
