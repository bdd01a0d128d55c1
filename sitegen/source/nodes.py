"""YAML events -> plain values with the place of each, without recursion and without a guess.

Every scalar stays the text that was written: no date, number or yes/no is converted here.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

import yaml

from sitegen import limits
from sitegen.faults import Fault, FaultCode, Place
from sitegen.source import traps
from sitegen.source.columns import Extent, Scalar
from sitegen.source.textfile import ODD_CHARACTER, hidden_in

Data = str | None | list["Data"] | dict[str, "Data"]
Path = tuple[str | int, ...]
Opening = yaml.MappingStartEvent | yaml.SequenceStartEvent


class TooMuch(Exception):
    """The file is nested too deep, holds too many values, or has a key that is none, as `fault` says."""

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

    start: index of its first character. flow: whether it is written in brackets.
    key: the key that waits for its value. bare: keys written without a value in braces.
    """

    data: list[Data] | dict[str, Data]
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
            if isinstance(event, yaml.DocumentStartEvent):
                self._documents += 1
                if self._documents > 1:
                    self._tell(traps.SECOND_DOCUMENT, event, "a second document begins here")
                    break
            self._take(event)
        return self.found

    def _take(self, event: yaml.Event) -> None:
        match event:
            case yaml.MappingStartEvent() | yaml.SequenceStartEvent():
                self._begin(event)
            case yaml.MappingEndEvent() | yaml.SequenceEndEvent():
                self._end(event)
            case yaml.ScalarEvent():
                self._scalar(event)
            case yaml.AliasEvent():
                self._alias(event)

    def _begin(self, event: Opening) -> None:
        self._count_node(event)
        path = self._path_of_next(event)
        self._refuse_marks(event)
        self.found.values[path] = self._place(event)
        if event.flow_style:
            self.found.braced.add(path)
        data: list[Data] | dict[str, Data] = {} if isinstance(event, yaml.MappingStartEvent) else []
        self._open.append(_Open(data, path, Extent.of(event).start, bool(event.flow_style)))
        if len(self._open) > limits.DEPTH:
            sentence = f"more than {limits.DEPTH} levels lie in each other"
            raise TooMuch(traps.TOO_DEEP.fault(self._place(event), sentence))

    def _end(self, event: yaml.Event) -> None:
        closed = self._open.pop()
        if not closed.bare:
            self._keep(closed.path, closed.data)
        elif closed.data:
            self.found.faults += [traps.comma_in_braces(self._place(key), key.value) for key in closed.bare]
            self._keep(closed.path, closed.data)
        else:
            # '{caster sugar}' was meant as a text, and is kept as one.
            written = self._source[closed.start : Extent.of(event).end]
            self.found.faults.append(traps.begins_with_brace(self.found.values[closed.path], written))
            self._keep(closed.path, written)

    def _scalar(self, event: yaml.ScalarEvent) -> None:
        self._count_node(event)
        self._refuse_marks(event)
        if hidden := hidden_in(event.value):
            self._tell(ODD_CHARACTER, event, f"a hidden character ({hidden}) is written here as an escape")
        top = self._open[-1] if self._open else None
        if top is None or isinstance(top.data, list):
            self._value(event)
        elif top.key is None:
            self._refuse_long_key(event)
            top.key = event
        elif top.flow and self._is_bare(top.key, event):
            top.bare.append(top.key)
            top.key = None
        else:
            self._value(event)

    def _is_bare(self, key: yaml.ScalarEvent, value: yaml.ScalarEvent) -> bool:
        """Whether a key in braces has no colon behind it: the parser then makes an empty value up."""
        if value.value or value.style:
            return False
        return ":" not in self._source[Extent.of(key).end : Extent.of(value).start]

    def _value(self, event: yaml.ScalarEvent) -> None:
        path = self._path_of_next(event)
        nothing = not event.value and not event.style
        key_place = self.found.keys.get(path) if nothing else None
        self.found.values[path] = key_place or self._place(event)
        extent = Extent.of(event)
        self.found.scalars[path] = Scalar(extent.start, extent.end, event.style or "")
        self.found.faults += traps.cut_by_comment(self._lines, self._shown, event, key_place)
        self._keep(path, None if nothing else event.value)

    def _alias(self, event: yaml.AliasEvent) -> None:
        path = self._path_of_next(event)
        self._tell(traps.ALIAS, event, "a value that begins with '*' points elsewhere")
        self.found.values[path] = self._place(event)
        self._keep(path, f"*{event.anchor}")

    def _path_of_next(self, event: yaml.Event) -> Path:
        """The path of the value that begins with this event."""
        if not self._open:
            return ()
        top = self._open[-1]
        if isinstance(top.data, list):
            return (*top.path, len(top.data))
        if top.key is None:
            raise TooMuch(traps.KEY_KIND.fault(self._place(event), "a key must be plain words"))
        path = (*top.path, top.key.value)
        self.found.keys.setdefault(path, self._place(top.key))
        return path

    def _keep(self, path: Path, value: Data) -> None:
        """Hang a finished value into what is open; of a key that stands twice the first is kept."""
        if not self._open:
            self.found.data = value
            return
        top = self._open[-1]
        if isinstance(top.data, list):
            top.data.append(value)
        elif top.key is not None:
            key, top.key = top.key, None
            if key.value in top.data:
                first = self.found.keys[path].line
                self.found.faults.append(traps.key_twice(self._place(key), key.value, first))
            else:
                top.data[key.value] = value

    def _count_node(self, event: yaml.Event) -> None:
        self._count += 1
        if self._count > limits.VALUES:
            sentence = f"the file holds more than {limits.VALUES:,} values"
            raise TooMuch(traps.TOO_MANY.fault(self._place(event), sentence))

    def _refuse_long_key(self, event: yaml.ScalarEvent) -> None:
        if len(event.value) > limits.KEY_CHARACTERS:
            sentence = f"this key has {len(event.value):,} letters; {limits.KEY_CHARACTERS} are the most"
            raise TooMuch(traps.LONG_KEY.fault(self._place(event), sentence))

    def _refuse_marks(self, event: yaml.ScalarEvent | Opening) -> None:
        if event.tag:
            self._tell(traps.TAG, event, "a value that begins with '!' is read as a tag")
        if event.anchor:
            self._tell(traps.ALIAS, event, "a value that begins with '&' is read as an anchor")

    def _tell(self, code: FaultCode, event: yaml.Event, sentence: str) -> None:
        self.found.faults.append(code.fault(self._place(event), sentence))

    def _place(self, event: yaml.Event) -> Place:
        """The place of an event: a scalar's own length, and the rest of the line for what holds more."""
        extent = Extent.of(event)
        line = self._lines[extent.start_line] if extent.start_line < len(self._lines) else ""
        is_short = extent.end_line == extent.start_line and not isinstance(event, Opening)
        end_column = extent.end_column if is_short else len(line.rstrip())
        length = max(1, end_column - extent.start_column)
        return Place(self._shown, extent.start_line + 1, extent.start_column + 1, length)


def paths_in(data: Data, path: Path = ()) -> Iterator[Path]:
    """Every path of a value, its own first."""
    yield path
    if isinstance(data, dict):
        for key, value in data.items():
            yield from paths_in(value, (*path, key))
    elif isinstance(data, list):
        for index, value in enumerate(data):
            yield from paths_in(value, (*path, index))
