"""Patterns of the numbers in notes: figures, fractions, ranges, and numbers in words before a measure."""

from collections.abc import Mapping
from functools import cache

from sitegen.film.number_words import TENS, UNITS
from sitegen.notes.word_table import any_of, note_words
from sitegen.source.numbers import GLYPHS

GLYPH = "[" + "".join(GLYPHS) + "]"
FIGURE = r"[\d" + "".join(GLYPHS) + "]"
"""The first letter of a number, but for one that begins with its decimal point."""
_FORMS = (
    r"\d{1,5} \d{1,3}/\d{1,3}",
    r"\d{1,5}/\d{1,3}",
    rf"\d{{1,5}} ?{GLYPH}",
    GLYPH,
    r"\d{1,6}(?:\.\d{1,4})?",
    r"\.\d{1,4}",
)
NUMBER = f"(?:{'|'.join(_FORMS)})"
RANGE = rf"{NUMBER}(?: ?(?:-|–|—|to) ?{NUMBER})?"


@cache
def number_words() -> Mapping[str, str]:
    """A number in words, small letters -> its figure: 'six' -> '6', 'half an' -> '1/2'."""
    counts = {word: str(value) for word, value in (UNITS | TENS).items() if value}
    return counts | dict(note_words().numbers)


@cache
def number_word() -> str:
    """A pattern of every number in words, longest first."""
    return any_of(number_words())
