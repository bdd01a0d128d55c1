"""Whether what is written in the file holds every word of a line of the notes."""

import re
from collections.abc import Iterable, Mapping
from functools import cache, lru_cache

from sitegen.kitchen.measures import Measures
from sitegen.notes.number_patterns import GLYPH
from sitegen.notes.values import Lore
from sitegen.notes.word_table import note_words
from sitegen.source.durations import MINUTES
from sitegen.source.numbers import GLYPHS

_TOKEN = re.compile(rf"\d+|[^\W\d_]+|{GLYPH}")
_TIMES = {1: "min", 60: "h"}
"""Minutes in a unit of time -> the word for all its spellings."""


def lost_words(written: str, outputs: Iterable[str], lore: Lore) -> tuple[str, ...]:
    """The words of a line that none of the texts has, in order; a unit may be spelled otherwise."""
    alike = _alike(lore.context.tables.measures)
    there = {token for text in outputs for token in _tokens(text, alike)}
    empty = note_words().empty_words
    return tuple(token for token in _tokens(written, alike) if token not in there and token not in empty)


def _tokens(text: str, alike: Mapping[str, str]) -> list[str]:
    glyphs = _glyphs()
    plain = "".join(glyphs.get(letter, letter) for letter in text.casefold())
    return [alike.get(token, token) for token in _TOKEN.findall(plain)]


@lru_cache(maxsize=4)
def _alike(measures: Measures) -> Mapping[str, str]:
    """A word -> the one that stands for all which say the same: of units, times and short forms.

    Letters that stand alone are left out: 't' and 'T' are two units.
    """
    words = note_words()
    units = {**measures.names, **{unit: (*measures.names[unit], *more) for unit, more in words.units.items()}}
    return {
        **{word.casefold(): unit for unit, spelled in units.items() for word in spelled if len(word) > 1},
        **{word: _TIMES[int(minutes)] for word, minutes in MINUTES.items() if minutes in _TIMES},
        **{short: word for short, word in words.short.items() if word.isalpha()},
        **words.alike,
    }


@cache
def _glyphs() -> Mapping[str, str]:
    """'½' as '1/2', so that both are the same words."""
    return {glyph: f" {value.numerator}/{value.denominator} " for glyph, value in GLYPHS.items()}
