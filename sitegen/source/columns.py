"""Which column of the file a letter of a text value stands in: through quotes, escapes and folded lines."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import yaml

# YAML 1.2.2, 5.7: escapes that stand for one character; x, u and U are followed by hexadecimal digits.
_HEX_DIGITS = {"x": 2, "u": 4, "U": 8}


@dataclass(frozen=True)
class Extent:
    """Where an event of the parser begins and ends: indices, lines and columns from 0."""

    start: int
    start_line: int
    start_column: int
    end: int
    end_line: int
    end_column: int

    @classmethod
    def of(cls, event: yaml.Event) -> "Extent":
        """Raises ValueError for an event that no parser made."""
        start, end = event.start_mark, event.end_mark
        if start is None or end is None:
            raise ValueError("an event without marks")
        return cls(start.index, start.line, start.column, end.index, end.line, end.column)


@dataclass(frozen=True)
class Scalar:
    """Where a text value stands in its source.

    start, end: indices into the source, quotes and block marks included.
    style: '' for plain, "'", '"', '|' or '>'.
    """

    start: int
    end: int
    style: str


def source_indices(text: str, source: str, scalar: Scalar) -> tuple[int, ...]:
    """For each letter of `text` its index in `source`, and one more for the end.

    Blanks of the text match any run of blanks and line breaks; what cannot be matched stays where the
    last letter was.
    """
    letters = tuple(_letters(source, scalar))
    found = []
    position, last = 0, scalar.start
    for letter in text:
        if not letter.isspace():
            position = _past_blanks(letters, position)
        if position < len(letters) and _alike(letter, letters[position][0]):
            last = letters[position][1]
            position += 1
        found.append(last)
    return (*found, last + 1)


def _past_blanks(letters: Sequence[tuple[str, int]], position: int) -> int:
    while position < len(letters) and letters[position][0].isspace():
        position += 1
    return position


def _alike(letter: str, spelt: str) -> bool:
    return letter == spelt or (letter.isspace() and spelt.isspace())


def _letters(source: str, scalar: Scalar) -> Iterator[tuple[str, int]]:
    """The letters that the source spells, each with its index; marks and escapes are read."""
    index, end = scalar.start, scalar.end
    if scalar.style in ("|", ">"):
        index = source.find("\n", index, end) + 1 or end
    elif scalar.style:
        index, end = index + 1, end - 1
    while index < end:
        width = _spelt_with(source, index, scalar.style)
        spelt = _spelling(source[index : index + width]) if scalar.style else source[index]
        if spelt:
            yield spelt, index
        index += width


def _spelt_with(source: str, index: int, style: str) -> int:
    """How many characters of the source spell the letter at this index."""
    if style == "'" and source.startswith("''", index):
        return 2
    if style == '"' and source[index] == "\\":
        return 2 + _HEX_DIGITS.get(source[index + 1 : index + 2], 0)
    return 1


def _spelling(spelt: str) -> str:
    if spelt == "''":
        return "'"
    if not spelt.startswith("\\") or len(spelt) == 1:
        return spelt
    if spelt[1] in _HEX_DIGITS:
        return chr(int(spelt[2:], 16))
    return {"n": "\n", "t": "\t", "N": "\x85", "_": "\xa0", "\n": ""}.get(spelt[1], spelt[1])
