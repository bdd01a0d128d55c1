"""The register of copies: who was given which number, and every copy that was made.

It grows over runs. A name that has a number keeps it, and no number is given twice, not even one whose name
was taken out of the register. It is CSV for a spreadsheet, and no field of it is read there as a formula.
"""

import csv
import os
import re
from collections.abc import Iterable, Iterator
from dataclasses import astuple, dataclass, fields
from io import StringIO
from pathlib import Path

from sitegen.release.exchange import flush
from sitegen.release.subscriber_list import same_name

_FORMULA = re.compile(r"'*[=+\-@]")
"""What spreadsheets take for a formula. An apostrophe before it is taken away again when it is read."""
_DELIMITERS = ",;\t"


@dataclass(frozen=True)
class Entry:
    """A row. name: '' where it was taken out. file: from the school's folder, '' before a copy was made.

    sha256: of the copy. day: on which it was made. made_from: a hash of the card, the mark and the lock.
    """

    number: int
    name: str
    file: str = ""
    sha256: str = ""
    day: str = ""
    made_from: str = ""


_COLUMNS = tuple(field.name.replace("_", "-") for field in fields(Entry))


class RegisterDamaged(Exception):
    """A register that nobody can go on with. line: from 1, 0 for the whole file."""

    def __init__(self, line: int, sentence: str) -> None:
        super().__init__(line, sentence)
        self.line = line
        self.sentence = sentence


class Register:
    """All rows, in the order in which they came. Raises RegisterDamaged where two names share a number."""

    def __init__(self, entries: Iterable[Entry] = ()) -> None:
        self._entries: list[Entry] = []
        self._numbers: dict[str, int] = {}
        self._names: dict[int, str] = {}
        self._last = 0
        self._copies: dict[str, Entry] = {}
        for line, entry in enumerate(entries, start=2):
            self._check(entry, line)
            self.add(entry)

    def number_of(self, name: str) -> int:
        """The number that goes with a name; a new one is the next after all that were ever given."""
        key = same_name(name)
        if key not in self._numbers:
            self.add(Entry(self._last + 1, name))
        return self._numbers[key]

    def last_copy(self, file: str) -> Entry | None:
        """The copy that was last written to a file."""
        return self._copies.get(file)

    def add(self, entry: Entry) -> None:
        """A number that is given, or a copy that was made; one that is registered already changes nothing."""
        if entry.name:
            self._numbers[same_name(entry.name)] = entry.number
        self._last = max(self._last, entry.number)
        self._names[entry.number] = same_name(entry.name) or self._names.get(entry.number, "")
        before = self._copies.get(entry.file)
        if before is not None and before.sha256 == entry.sha256:
            return
        if entry.file:
            self._copies[entry.file] = entry
        self._entries.append(entry)

    def as_csv(self) -> str:
        """RFC 4180, every field in quotation marks. A number that has a copy needs no row of its own."""
        with_copies = {entry.number for entry in self._entries if entry.file}
        out = StringIO()
        writer = csv.writer(out, quoting=csv.QUOTE_ALL, lineterminator="\r\n")
        writer.writerow(_COLUMNS)
        for entry in self._entries:
            if entry.file or entry.number not in with_copies:
                writer.writerow([_defused(str(field)) for field in astuple(entry)])
        return out.getvalue()

    def _check(self, entry: Entry, line: int) -> None:
        if not entry.name:
            return
        key = same_name(entry.name)
        if self._names.get(entry.number, "") not in ("", key):
            raise RegisterDamaged(line, f"number {entry.number} was given to another name before")
        if self._numbers.get(key, entry.number) != entry.number:
            raise RegisterDamaged(line, f"'{entry.name}' has number {self._numbers[key]} already")


def read_register(path: Path) -> Register:
    """The register as it stands; an empty one where there is none. Raises RegisterDamaged, OSError."""
    try:
        text = path.read_bytes().decode("utf-8-sig")
    except FileNotFoundError:
        return Register()
    except UnicodeDecodeError:
        raise RegisterDamaged(0, "the register is not written in UTF-8") from None
    head = text.split("\n", 1)[0]
    rows = csv.reader(StringIO(text, newline=""), delimiter=max(_DELIMITERS, key=head.count), strict=True)
    return Register(_entries(rows))


def write_register(register: Register, path: Path) -> None:
    """In place of the old one, in one step: whoever looks sees the old or the new whole. Raises OSError."""
    path.parent.mkdir(parents=True, exist_ok=True)
    beside = path.with_name(f".{path.name}.new")
    beside.write_bytes(register.as_csv().encode("utf-8"))
    flush(path.parent)
    os.replace(beside, path)


def _entries(rows: Iterator[list[str]]) -> Iterator[Entry]:
    try:
        if tuple(next(rows, ())) != _COLUMNS:
            raise RegisterDamaged(1, f"its first line is not '{','.join(_COLUMNS)}'")
        for line, row in enumerate(rows, start=2):
            if len(row) != len(_COLUMNS) or not re.fullmatch("[1-9][0-9]{0,8}", row[0]):
                raise RegisterDamaged(line, "the row is not one of a copy")
            yield Entry(int(row[0]), *map(_as_written, row[1:]))
    except csv.Error as problem:
        raise RegisterDamaged(0, f"it is no CSV: {problem}") from None


def _defused(field: str) -> str:
    return f"'{field}" if _FORMULA.match(field) else field


def _as_written(field: str) -> str:
    """What was defused."""
    return field[1:] if field.startswith("'") and _FORMULA.match(field) else field
