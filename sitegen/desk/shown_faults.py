"""Faults as the desk shows them: each with its line, in which its place is marked."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from sitegen.desk.values import ShownFault
from sitegen.faults import Fault
from sitegen.release.failures import OUTPUT_KEPT, PUBLISH_AGAIN, Failure, faults_of
from sitegen.release.marked_lines import marked_line, printable

_WAYS_OUT_HERE = {OUTPUT_KEPT: "", PUBLISH_AGAIN: "open it again"}
"""Way out of a failed publish -> what it is on a desk, which writes no output."""


def faults_here(problem: Failure, root: Path) -> tuple[Fault, ...]:
    """The faults of one failure of a page. root: the folder that holds `content/`."""
    faults = faults_of(problem, root)
    return tuple(replace(one, way_out=_WAYS_OUT_HERE.get(one.way_out, one.way_out)) for one in faults)


def shown_faults(faults: Iterable[Fault], texts: Mapping[str, Sequence[str]]) -> tuple[ShownFault, ...]:
    """texts: file -> its lines."""
    return tuple(_shown(fault, texts.get(fault.place.file, ())) for fault in faults)


def _shown(fault: Fault, lines: Sequence[str]) -> ShownFault:
    place, line = fault.place, marked_line(fault, lines)
    return ShownFault(
        code=fault.code,
        sentence=printable(fault.sentence),
        way_out=printable(fault.way_out),
        place=f"{place.file}, line {place.line}" if place.line else place.file,
        line=place.line,
        before=line.before if line else "",
        marked=line.marked if line else "",
        after=line.after if line else "",
    )
