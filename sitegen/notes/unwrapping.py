"""Lines that a program broke at its edge, put together again: '75 g walnuts, toasted and' + 'chopped'."""

import re
from collections.abc import Iterator
from functools import cache

from sitegen.notes.number_patterns import FIGURE
from sitegen.notes.verbs import begins_with_verb
from sitegen.notes.word_table import note_words
from sitegen.source.durations import MINUTES

_WIDTHS = range(45, 101)
"""Letters of the longest line of a text whose lines were broken at an edge."""
_SLACK = 4
"""Letters by which the edge may lie beyond the longest line."""
_FIGURE = re.compile(FIGURE)
_TABLE_MARKS = ("\t", "|")


def unwrapped(text: str) -> Iterator[tuple[int, str, str]]:
    """The lines of a text: the number of each, from 1, its words with those that go on, and as it stands."""
    lines = text.split("\n")
    width = max(len(raw.rstrip()) for raw in lines)
    number, whole, first, before = 0, "", "", ""
    for index, raw in enumerate(lines, start=1):
        if number and _goes_on(before, raw, width):
            whole = f"{whole.rstrip()} {raw.strip()}"
        else:
            if number:
                yield number, whole, first
            number, whole, first = index, raw, raw
        before = raw
    yield number, whole, first


def _goes_on(before: str, raw: str, width: int) -> bool:
    """Whether a line is the rest of the one before it; an empty line never is, nor one behind it.

    width: letters of the longest line.
    """
    above, text = before.rstrip(), raw.strip()
    if not above.strip() or not text or any(mark in line for mark in _TABLE_MARKS for line in (before, raw)):
        return False
    if above.strip(" :*#-").casefold() in _headings():
        return False
    is_indented = _indent(raw) > _indent(before) and _FIGURE.search(above) is not None and above[-1] != ":"
    is_open = above.endswith(("&", "+", "(")) or _last_word(above) in note_words().open_ends
    if text[0].isdigit():
        is_loose = is_indented and _last_word(above) in note_words().loose_ends
        return is_loose or (is_open and _FIGURE.search(above) is not None)
    if not text[0].islower():
        return False
    is_unit = above[-1].isdigit() and text.split()[0].strip(".,") in MINUTES
    is_set_in = is_indented and not _FIGURE.search(text)
    return is_unit or is_open or is_set_in or (width in _WIDTHS and _is_full(above, text, width))


def _last_word(text: str) -> str:
    return text.rpartition(" ")[2].casefold()


def _indent(raw: str) -> int:
    return len(raw) - len(raw.lstrip(" "))


def _is_full(above: str, text: str, width: int) -> bool:
    """Prose in which the next word had no room; an ingredient line or a step of its own does not go on."""
    is_full = len(above) + 1 + len(text.split()[0]) > width - _SLACK and above[-1] not in ".!?:;"
    return is_full and not _FIGURE.match(above.strip(" -*•")) and not begins_with_verb(text)


@cache
def _headings() -> frozenset[str]:
    return frozenset(word for words in note_words().sections.values() for word in words)
