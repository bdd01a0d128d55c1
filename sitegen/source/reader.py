"""A YAML file -> Document: plain values, and the place of every key and value.

Numbers, dates and yes/no stay the text that was written; the file models convert what they ask for.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path as FilePath

import yaml

from sitegen.faults import Fault, Place
from sitegen.source import traps
from sitegen.source.columns import Scalar, source_indices
from sitegen.source.nodes import Data, Found, NodeBuilder, Path, TooMuch
from sitegen.source.textfile import odd_characters, read_text, without_odd_characters
from sitegen.source.trips import explain

_LOADER = yaml.CSafeLoader if yaml.__with_libyaml__ else yaml.SafeLoader


@dataclass(frozen=True)
class Document:
    """What a YAML file says, and where.

    shown: the file as the baker is told it. data: text, None (nothing written), lists and mappings only.
    places, key_places: path -> place of the value, and of its key; the path of the whole is ().
    braced: paths of values that were written in braces or square brackets.
    lines: the file's lines, to show the line of a fault.
    """

    shown: str
    data: Data
    places: Mapping[Path, Place]
    key_places: Mapping[Path, Place]
    braced: frozenset[Path]
    lines: tuple[str, ...]
    scalars: Mapping[Path, Scalar] = field(repr=False)
    text: str = field(repr=False)

    def place(self, path: Path) -> Place:
        """The place of the value; of what it lies in where nothing was written there."""
        while path not in self.places and path:
            path = path[:-1]
        return self.places.get(path, Place(self.shown, 1, 1, 1))

    def key_place(self, path: Path) -> Place:
        """The place of the key; of the value where it has no key (an entry of a list)."""
        return self.key_places.get(path) or self.place(path)

    def value(self, path: Path) -> Data:
        """The value at a path; None where there is none."""
        data = self.data
        for part in path:
            if isinstance(data, dict) and isinstance(part, str):
                data = data.get(part)
            elif isinstance(data, list) and isinstance(part, int) and part < len(data):
                data = data[part]
            else:
                return None
        return data

    def place_in(self, path: Path, start: int, end: int) -> Place:
        """The place of letters `start` to `end` (exclusive) of the text at a path, quotes counted."""
        text, scalar = self.value(path), self.scalars.get(path)
        if scalar is None or not isinstance(text, str):
            return self.place(path)
        indices = source_indices(text, self.text, scalar)
        first = indices[min(max(start, 0), len(text))]
        last = indices[min(max(end, start + 1), len(text)) - 1] if text else first
        line_start = self.text.rfind("\n", 0, first) + 1
        line_end = self.text.find("\n", first)
        stop = min(last + 1, len(self.text) if line_end < 0 else line_end)
        line = self.text.count("\n", 0, first) + 1
        return Place(self.shown, line, first - line_start + 1, max(1, stop - first))


def read_document(path: FilePath, shown: str) -> tuple[Document | None, tuple[Fault, ...]]:
    """Read a file; None where it cannot be read at all, and every fault found either way.

    shown: the path as the baker is told it.
    """
    text, faults = read_text(path, shown)
    if text is None:
        return None, faults
    document, more = parse_document(text, shown)
    return document, faults + more


def parse_document(text: str, shown: str) -> tuple[Document | None, tuple[Fault, ...]]:
    """The same for a text that is at hand: '\\n' line ends, tabs and hidden characters counted as faults."""
    lines = tuple(text.split("\n"))
    faults = (*odd_characters(text, shown), *traps.tabs(lines, shown))
    clean = without_odd_characters(text).replace("\t", " ")
    found, problem = _found(clean, shown)
    if problem is not None:
        # A tab or a hidden character was made a space above; what the parser says then misleads.
        return None, faults or (problem,)
    document = Document(
        shown=shown,
        data=found.data,
        places=found.values,
        key_places=found.keys,
        braced=frozenset(found.braced),
        lines=lines,
        scalars=found.scalars,
        text=clean,
    )
    return document, (*faults, *found.faults)


def _found(text: str, shown: str) -> tuple[Found, Fault | None]:
    builder = NodeBuilder(text, shown)
    try:
        return builder.take_all(yaml.parse(text, Loader=_LOADER)), None
    except TooMuch as bound:
        return builder.found, bound.fault
    except yaml.YAMLError as problem:
        return builder.found, explain(problem, text.split("\n"), shown)
