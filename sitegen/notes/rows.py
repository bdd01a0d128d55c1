"""The rows of a draft while it is made: each value with the lines of the notes that it comes from."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from sitegen.kitchen.filmed import moment_text
from sitegen.notes.block_yaml import Entry, Items, Keys, Node
from sitegen.notes.kept_words import lost_words
from sitegen.notes.note_lines import NoteLine
from sitegen.notes.values import Fate, LineFate, Lore

_IN_THE_NOTES = "in the notes:"
_LOST = "not understood:"


@dataclass
class Row:
    """A key with its value, or an entry of a list (key ''). lines: of the notes that it was made of."""

    value: "str | list[Row]"
    key: str = ""
    lines: tuple[NoteLine, ...] = ()
    above: list[str] = field(default_factory=list)
    below: list[str] = field(default_factory=list)
    is_list: bool = False


@dataclass(frozen=True)
class Moments:
    """Where steps begin on film, seconds from its start.

    of_lines: by the number of the line that says them. of_steps: by component and number of the step, from 1.
    """

    of_lines: Mapping[int, int] = field(default_factory=dict)
    of_steps: Mapping[tuple[str, int], int] = field(default_factory=dict)

    def comment(self, component: str, step: int, line: NoteLine) -> list[str]:
        """The comment above a step; none where nobody knows."""
        second = self.of_steps.get((component, step), self.of_lines.get(line.number))
        return [] if second is None else [f"{moment_text(second)} in the film"]


@dataclass
class Register:
    """What became of every line of the notes: grows while a draft is made."""

    lines: Sequence[NoteLine]
    moments: Moments = field(default_factory=Moments)
    _fates: dict[int, tuple[Fate, str]] = field(default_factory=dict)

    def take(self, line: NoteLine, reason: str = "") -> None:
        """The line stands in the file; what was lost or set aside of it before stays so."""
        fate, before = self._fates.get(line.number, (Fate.TAKEN, ""))
        self._fates[line.number] = (fate, before or reason)

    def set_aside(self, line: NoteLine, reason: str) -> str:
        """The comment that keeps the line."""
        if line.number not in self._fates:
            self._fates[line.number] = (Fate.ASIDE, reason)
        return f"{line.original} ({reason})"

    def lose(self, line: NoteLine, text: str, reason: str = "") -> str:
        """The comment that keeps a piece of the line."""
        self._fates[line.number] = (Fate.LOST, reason)
        return f"{_LOST} {text}"

    def fates(self) -> tuple[LineFate, ...]:
        """Of every line, in order; a line that nobody spoke of was taken."""
        return tuple(
            LineFate(line.place or line.number, line.written, *self._fates.get(line.number, (Fate.TAKEN, "")))
            for line in self.lines
        )


def with_lost_words(
    top: list[Row], lines: Iterable[NoteLine], bare_headings: Iterable[NoteLine], lore: Lore
) -> list[str]:
    """A comment above the first row of each line of which a word stands in none of its rows.

    A line without any row has its comment above the row of the next; what has none behind it is returned.
    bare_headings: those that say no more than a key does ('Ingredients').
    """
    said: dict[int, list[str]] = {}
    first: dict[int, Row] = {}
    for row, parents in _walk(top, ()):
        for line in row.lines:
            texts = said.setdefault(line.number, [])
            texts += [row.key, *(_texts(row)), *row.above, *row.below, *parents]
            first.setdefault(line.number, row)
    passed_over = {line.number for line in bare_headings}
    below: list[str] = []
    for line in sorted(lines, key=lambda one: -one.number):
        own = first.get(line.number)
        is_whole = own is not None and not lost_words(line.original, said[line.number], lore)
        if is_whole or line.number in passed_over or _is_kept(line, top):
            continue
        near = own or _row_behind(line.number, first)
        (near.above if near else below).insert(0, f"{_IN_THE_NOTES} {line.original}")
    return below


def _row_behind(number: int, first: Mapping[int, Row]) -> Row | None:
    """The first row of the next line that has one."""
    following = min((one for one in first if one > number), default=None)
    return first[following] if following is not None else None


def _is_kept(line: NoteLine, top: Iterable[Row]) -> bool:
    """Whether a comment holds the line already: one that was set aside or not understood."""
    return any(line.original in comment for row, _ in _walk(top, ()) for comment in (*row.above, *row.below))


def _walk(rows: Iterable[Row], parents: tuple[str, ...]) -> Iterator[tuple[Row, tuple[str, ...]]]:
    for row in rows:
        yield row, parents
        if isinstance(row.value, list):
            yield from _walk(row.value, (*parents, row.key))


def _texts(row: Row) -> Iterator[str]:
    if isinstance(row.value, str):
        yield row.value
        return
    for below in row.value:
        yield below.key
        yield from _texts(below)


def keys_of(rows: Iterable[Row], below: Iterable[str] = ()) -> Keys:
    """The rows as they are written."""
    return Keys(tuple(Entry(row.key, _node(row), tuple(row.above)) for row in rows), tuple(below))


def _node(row: Row) -> Node:
    if isinstance(row.value, str):
        return row.value
    if row.is_list:
        return Items(tuple(Entry("", _node(one), tuple(one.above)) for one in row.value), tuple(row.below))
    return keys_of(row.value, row.below)
