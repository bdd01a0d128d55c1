"""YAML events -> plain values with the place of each, without recursion and without a guess.

Every scalar stays the text that was written: no date, number or yes/no is converted here.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

import yaml

from sitegen.faults import Fault, Place
from sitegen.source import traps
from sitegen.source.columns import Scalar

Data = str | None | list["Data"] | dict[str, "Data"]
Path = tuple[str | int, ...]

DEEPEST = 30
MOST_NODES = 100_000


class TooMuch(Exception):
    """The file is nested too deep, or holds too many values, or has a key that is no text; `fault` says which."""

    def __init__(self, fault: Fault) -> None:
        super().__init__(fault)
        self.fault = fault


@dataclass
class Found:
    """What the events of one document gave.

    keys, values: path -> place of the key, and of the value. scalars: path -> where its text stands.
    braced: paths of values written in braces or square brackets. faults: in the order found.
    """

    data: Data = None
    keys: dict[Path, Place] = field(default_factory=dict)
    values: dict[Path, Place] = field(default_factory=dict)
    scalars: dict[Path, Scalar] = field(default_factory=dict)
    braced: set[Path] = field(default_factory=set)
    faults: list[Fault] = field(default_factory=list)


@dataclass
class _Open:
    """A mapping or list whose end has not come yet.

    key: the key that waits for its value, with its event. bare: keys written without a value in braces.
    """

    data: "list[Data] | dict[str, Data]"
    path: Path
    start: int
    flow: bool
    key: yaml.ScalarEvent | None = None
    bare: list[yaml.ScalarEvent] = field(default_factory=list)


class NodeBuilder:
    """Takes the events of a document one by one; `found` is ready when they end."""

    def __init__(self, source: str, shown: str) -> None:
        self.found = Found()
        self._source = source
        self._lines = source.split("\n")
        self._shown = shown
        self._open: list[_Open] = []
        self._count = 0
        self._documents = 0

    def take_all(self, events: Iterable[yaml.Event]) -> Found:
        """Raises TooMuch where a bound is passed, and whatever the parser of the events raises."""
        for event in events:
            self._take(event)
            if self._documents > 1:
                break
        return self.found

    def _take(self, event: yaml.Event) -> None:
        match event:
            case yaml.DocumentStartEvent():
                self._begin_document(event)
            case yaml.MappingStartEvent() | yaml.SequenceStartEvent():
                self._begin(event)
            case yaml.MappingEndEvent() | yaml.SequenceEndEvent():
                self._end(event)
            case yaml.ScalarEvent():
                self._scalar(event)
            case yaml.AliasEvent():
                self._alias(event)

    def _begin_document(self, event: yaml.Event) -> None:
        self._documents += 1
        if self._documents > 1:
            place = self._place(event)
            self.found.faults.append(traps.SECOND_DOCUMENT.fault(place, "a second document begins here"))

    def _begin(self, event: yaml.MappingStartEvent | yaml.SequenceStartEvent) -> None:
        self._count_node(event)
        path = self._path_of_next(event)
        data: list[Data] | dict[str, Data] = {} if isinstance(event, yaml.MappingStartEvent) else []
        self.found.values[path] = self._place(event, to_line_end=True)
        if event.flow_style:
            self.found.braced.add(path)
        self._refuse_tag(event)
        self._open.append(_Open(data, path, event.start_mark.index, bool(event.flow_style)))
        if len(self._open) > DEEPEST:
            raise TooMuch(traps.TOO_DEEP.fault(self._place(event), f"more than {DEEPEST} levels lie in each other"))

    def _end(self, event: yaml.Event) -> None:
        closed = self._open.pop()
        if closed.flow and isinstance(closed.data, dict) and closed.bare:
            self._end_with_bare_keys(closed, event)
        else:
            self._keep(closed.path, closed.data)

    def _end_with_bare_keys(self, closed: _Open, event: yaml.Event) -> None:
        """`{caster sugar}` is kept as the text that it was meant to be; other bare keys are cut words."""
        if closed.data:
            self.found.faults += [traps.comma_in_braces(self._place(key), key.value) for key in closed.bare]
            self._keep(closed.path, closed.data)
            return
        written = self._source[closed.start : event.end_mark.index]
        self.found.faults.append(traps.begins_with_brace(self.found.values[closed.path], written))
        self._keep(closed.path, written)

    def _scalar(self, event: yaml.ScalarEvent) -> None:
        self._count_node(event)
        top = self._open[-1] if self._open else None
        if top is not None and isinstance(top.data, dict) and top.key is None:
            self._refuse_tag(event)
            top.key = event
            return
        if top is not None and self._is_bare_key(top, event):
            assert_key = top.key
            if assert_key is not None:
                top.bare.append(assert_key)
            top.key = None
            return
        self._value(event)

    def _is_bare_key(self, top: _Open, event: yaml.ScalarEvent) -> bool:
        if not top.flow or top.key is None or event.value or event.style:
            return False
        return ":" not in self._source[top.key.end_mark.index : event.start_mark.index]

    def _value(self, event: yaml.ScalarEvent) -> None:
        path = self._path_of_next(event)
        self._refuse_tag(event)
        empty = not event.value and not event.style
        place = self.found.keys.get(path) if empty else None
        self.found.values[path] = place or self._place(event, to_line_end=True)
        style = event.style or ""
        self.found.scalars[path] = Scalar(event.start_mark.index, event.end_mark.index, style)
        self.found.faults += traps.cut_by_comment(self._lines, self._shown, event, place)
        self._keep(path, None if empty else event.value)

    def _alias(self, event: yaml.AliasEvent) -> None:
        path = self._path_of_next(event)
        place = self._place(event)
        self.found.faults.append(traps.ALIAS.fault(place, "a value that begins with '*' points elsewhere", traps.ALIAS.cure))
        self.found.values[path] = place
        self._keep(path, f"*{event.anchor}")

    def _path_of_next(self, event: yaml.Event) -> Path:
        """The path of the value that begins with this event."""
        if not self._open:
            return ()
        top = self._open[-1]
        if isinstance(top.data, list):
            return (*top.path, len(top.data))
        if top.key is None:
            raise TooMuch(traps.KEY_KIND.fault(self._place(event), "a key must be plain words", traps.KEY_KIND.cure))
        path = (*top.path, top.key.value)
        if path not in self.found.keys:
            self.found.keys[path] = self._place(top.key)
        return path

    def _keep(self, path: Path, value: Data) -> None:
        """Hang a finished value into what is open."""
        if not self._open:
            if self._documents == 1:
                self.found.data = value
            return
        top = self._open[-1]
        if isinstance(top.data, list):
            top.data.append(value)
            return
        key, top.key = top.key, None
        if key is None:
            return
        if key.value in top.data:
            first = self.found.keys[path].line
            self.found.faults.append(traps.key_twice(self._place(key), key.value, first))
            return
        top.data[key.value] = value

    def _count_node(self, event: yaml.Event) -> None:
        self._count += 1
        if self._count > MOST_NODES:
            raise TooMuch(traps.TOO_MANY.fault(self._place(event), f"the file holds more than {MOST_NODES} values"))

    def _refuse_tag(self, event: yaml.ScalarEvent | yaml.MappingStartEvent | yaml.SequenceStartEvent) -> None:
        if event.tag:
            place = self._place(event)
            self.found.faults.append(traps.TAG.fault(place, "a value that begins with '!' is read as a tag", traps.TAG.cure))
        if event.anchor:
            place = self._place(event)
            self.found.faults.append(traps.ALIAS.fault(place, "a value that begins with '&' is read as an anchor", traps.ALIAS.cure))

    def _place(self, event: yaml.Event, to_line_end: bool = False) -> Place:
        """The place of an event: its own length on its first line."""
        start, end = event.start_mark, event.end_mark
        line = self._lines[start.line] if start.line < len(self._lines) else ""
        rest = len(line.rstrip()) - start.column
        length = end.column - start.column if end.line == start.line else rest
        if to_line_end and not isinstance(event, yaml.ScalarEvent):
            length = rest
        return Place(self._shown, start.line + 1, start.column + 1, max(1, length))


def paths_in(data: Data, path: Path = ()) -> Iterator[Path]:
    """Every path of a value."""
    yield path
    if isinstance(data, dict):
        for key, value in data.items():
            yield from paths_in(value, (*path, key))
    elif isinstance(data, list):
        for index, value in enumerate(data):
            yield from paths_in(value, (*path, index))
