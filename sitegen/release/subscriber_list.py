"""The list of names that copies are made for: CSV with a header, or one name a line.

A bad row is a fault and leaves the others as they are.
"""

import csv
import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import takewhile
from unicodedata import category, normalize

from sitegen.faults import Fault, FaultCode, Place
from sitegen.release import stamp_codes

LARGEST_BYTES = 10_000_000
LONGEST_NAME = 80
"""In characters."""
_NAME = "name"
_DELIMITERS = ",;\t"
_MOST_LINES = 50
"""Of one row: a field of notes may hold line breaks; a quotation mark that is never closed takes no more."""
_SPACES = re.compile("[ \u00a0\u2000-\u200a\u202f\u205f\u3000]+")
"""Unicode's category Zs: what becomes one plain space."""
_HIDDEN = {"Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"}


@dataclass(frozen=True)
class Subscriber:
    """name: composed (Unicode's NFC), with single spaces. place: where it stands in the list."""

    name: str
    place: Place


@dataclass(frozen=True)
class SubscriberList:
    """subscribers: in the order of the list, each once. lines: of the file, to show faults."""

    subscribers: tuple[Subscriber, ...]
    faults: tuple[Fault, ...]
    lines: tuple[str, ...]


def same_name(name: str) -> str:
    """What two spellings of one name have in common: all but capitals and compatible forms of letters."""
    return normalize("NFKC", normalize("NFKC", name).casefold())


def read_list(body: bytes, shown: str, lacking: Callable[[str], str]) -> SubscriberList:
    """The names of a list, and a fault for each row that gives none.

    shown: the file as the baker is told it. lacking: the characters of a name that the mark cannot print.
    """
    if len(body) > LARGEST_BYTES:
        return _unreadable(shown, "the list is longer than 10 MB")
    if body.startswith((b"\xff\xfe", b"\xfe\xff")):
        return _unreadable(shown, "the list is written in UTF-16")
    lines = [_line(part) for part in re.split(rb"\r\n|\r|\n", body.removeprefix(b"\xef\xbb\xbf"))]
    head = next((at for at, line in enumerate(lines) if line is None or line.strip()), None)
    if head is None:
        return _unreadable(shown, "there is no name in the list")
    first = lines[head]
    if first is None:
        return _unreadable(shown, "its first line is not written in UTF-8")
    reading = _Reading(shown, lines, lacking)
    delimiter = max(_DELIMITERS, key=first.count)
    columns = [cell.strip().casefold() for cell in first.replace('"', "").split(delimiter)]
    if _NAME in columns:
        reading.read_rows(head + 1, delimiter, columns)
    elif len(columns) == 1:
        reading.read_names(head)
    else:
        reading.refuse(
            stamp_codes.NO_NAME_COLUMN, head, f"none of the {len(columns)} columns is called 'name'"
        )
    return reading.result()


class _Reading:
    """One list, its good names and its faults so far. lines: None where one is not UTF-8."""

    def __init__(self, shown: str, lines: Sequence[str | None], lacking: Callable[[str], str]) -> None:
        self._shown = shown
        self._lines = lines
        self._lacking = lacking
        self._faults: list[Fault] = []
        self._found: dict[str, Subscriber] = {}
        for at, line in enumerate(lines):
            if line is None:
                self.refuse(stamp_codes.ROW_NOT_UTF8, at, "the row is not written in UTF-8")

    def read_names(self, start: int) -> None:
        """A name a line."""
        for at, line in enumerate(self._lines[start:], start=start):
            if line and line.strip():
                self._take(line.strip(), at)

    def read_rows(self, start: int, delimiter: str, columns: Sequence[str]) -> None:
        """CSV (RFC 4180), in which other columns than the name's may hold anything."""
        for at, cells in _rows(self._lines, start, delimiter):
            if cells is None:
                self.refuse(stamp_codes.ROW_QUOTES, at, "a quotation mark is not closed, or closed too early")
            elif len(cells) != len(columns):
                sentence = f"the row has {len(cells)} columns and the first line {len(columns)}"
                self.refuse(stamp_codes.ROW_COLUMNS, at, sentence)
            else:
                self._take(cells[columns.index(_NAME)].strip(" "), at)

    def refuse(self, code: FaultCode, at: int, sentence: str, word: str = "") -> None:
        """A fault of a line. at: counted from 0. word: what to mark in it; the whole line where it is ''."""
        line = self._lines[at] or ""
        column = line.find(word) if word else 0
        length = len(word) if word and column >= 0 else len(line)
        place = Place(self._shown, at + 1, max(column, 0) + 1, max(length, 1))
        self._faults.append(code.fault(place, sentence))

    def result(self) -> SubscriberList:
        faults = tuple(sorted(self._faults, key=lambda fault: fault.place))
        return SubscriberList(tuple(self._found.values()), faults, tuple(line or "" for line in self._lines))

    def _take(self, written: str, at: int) -> None:
        """A name as it is written, or the fault that it has."""
        name = _SPACES.sub(" ", normalize("NFC", written)).strip()
        hidden = next((mark for mark in name if category(mark) in _HIDDEN), None)
        if not name:
            self.refuse(stamp_codes.NAME_MISSING, at, "there is no name in this row")
        elif hidden is not None:
            sentence = f"the name holds a hidden character (U+{ord(hidden):04X})"
            self.refuse(stamp_codes.NAME_HIDDEN, at, sentence, hidden)
        elif len(name) > LONGEST_NAME:
            sentence = f"the name has {len(name)} characters, and {LONGEST_NAME} are the most"
            self.refuse(stamp_codes.NAME_TOO_LONG, at, sentence, written)
        elif lacking := self._lacking(name):
            sentence = f"the mark has no letter for {' '.join(lacking)}"
            self.refuse(stamp_codes.NAME_UNPRINTABLE, at, sentence, lacking[0])
        elif twin := self._found.get(same_name(name)):
            sentence = f"'{name}' stands on line {twin.place.line} already"
            self.refuse(stamp_codes.NAME_TWICE, at, sentence, written)
        else:
            line = self._lines[at] or ""
            place = Place(self._shown, at + 1, max(line.find(written), 0) + 1, len(written))
            self._found[same_name(name)] = Subscriber(name, place)


def _unreadable(shown: str, sentence: str) -> SubscriberList:
    return SubscriberList((), (stamp_codes.LIST_UNREADABLE.fault(Place(shown), sentence),), ())


def _line(part: bytes) -> str | None:
    """None where it is not UTF-8."""
    try:
        return part.decode("utf-8")
    except UnicodeDecodeError:
        return None


def _rows(
    lines: Sequence[str | None], start: int, delimiter: str
) -> Iterator[tuple[int, Sequence[str] | None]]:
    """Each row with its first line, counted from 0; None for one whose quotation marks are wrong.

    Empty lines and those that are not UTF-8 are no rows.
    """
    at = start
    while at < len(lines):
        line = lines[at]
        if line is None or not line.strip():
            at += 1
            continue
        block = takewhile(lambda one: one is not None, lines[at : at + _MOST_LINES])
        reader = csv.reader((f"{one}\n" for one in block), delimiter=delimiter, strict=True)
        try:
            yield at, next(reader)
            at += reader.line_num
        except csv.Error:
            yield at, None
            at += 1
