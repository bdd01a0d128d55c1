"""The lines of notes cut into what is read on its own: a list of ingredients in one line is many pieces."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cache

from sitegen.notes.ingredients import Ingredient, ingredient_of
from sitegen.notes.note_lines import NoteLine, tidied
from sitegen.notes.values import Desk
from sitegen.notes.verbs import begins_with_verb
from sitegen.notes.word_table import note_words

_MOST_TITLE_WORDS = 4
_PARTS = re.compile(
    r"[,;](?!\d)(?![^()]*\))|(?<=\w) \+ (?=[\d½¼¾])| & (?=[\d½¼¾])| and (?=[\d½¼¾])|\.(?= |$)"
)
_LONGEST_LIST = 1_500
"""Letters of a line that may be a list of ingredients."""


@dataclass(frozen=True)
class Piece:
    """text: what is read. line: of the notes. ingredient: what it is read as, None where it is none.

    heading: the words before a list in one line ('filling: 100 g butter, ...').
    """

    text: str
    line: NoteLine
    ingredient: Ingredient | None = None
    heading: bool = False
    of_a_list: bool = False


def pieces_of(line: NoteLine, desk: Desk) -> tuple[Piece, ...]:
    """The pieces of a line, in order; together they hold all its words."""
    led = _led_by_a_section(line, desk)
    if led:
        return led
    columns = _columns(line, desk)
    if columns:
        return columns
    listed = tuple(_list_in(line, desk)) if len(line.text) <= _LONGEST_LIST else ()
    return listed or (Piece(line.text, line, ingredient_of(line.text, desk)),)


def _columns(line: NoteLine, desk: Desk) -> tuple[Piece, ...]:
    """Ingredients side by side: each cell one with an amount."""
    found = [(cell, ingredient_of(tidied(cell), desk)) for cell in line.cells]
    is_list = len(found) > 1 and all(one is not None and one.known and one.has_amount for _, one in found)
    return tuple(Piece(tidied(cell), line, one, of_a_list=True) for cell, one in found) if is_list else ()


def _led_by_a_section(line: NoteLine, desk: Desk) -> tuple[Piece, ...]:
    """'Notes: keeps for three days': a heading and what it says, in one line."""
    first, rest = (line.cells[0], " ".join(line.cells[1:])) if line.cells else (line.text, "")
    if not rest:
        first, _, rest = line.text.partition(":")
    words = (word for words in note_words().sections.values() for word in words)
    if not rest.strip() or first.casefold().strip(" *_") not in words or is_column_heads(line):
        return ()
    text = tidied(rest)
    return (Piece(first, line, heading=True), *pieces_of(replace(line, text=text, cells=()), desk))


def is_column_heads(line: NoteLine) -> bool:
    """Whether a line is the head of a table: 'Ingredient', 'Qty', 'Unit'."""
    return len(line.cells) > 1 and all(
        cell.casefold().strip(" .:") in note_words().columns for cell in line.cells
    )


def _list_in(line: NoteLine, desk: Desk) -> Iterator[Piece]:
    """A heading and its ingredients, or ingredients alone, where a line holds at least two with an amount."""
    title, body = _titled(line.text)
    if begins_with_verb(body) and not title:
        return
    parts = _joined([part.strip() for part in _PARTS.split(body) if part and part.strip()], desk)
    with_amount = [one for _, one in parts if one is not None and one.has_amount and one.known]
    is_list = len(with_amount) >= 2 and len(with_amount) * 2 >= len(parts)
    is_one = title and len(with_amount) == len(parts) == 1 and len(body.split()) <= 8
    if not is_list and not is_one:
        return
    if title:
        yield Piece(title, line, heading=True)
    for text, ingredient in parts:
        yield Piece(text, line, ingredient, of_a_list=True)


def _joined(parts: list[str], desk: Desk) -> list[tuple[str, Ingredient | None]]:
    """The parts, each with what it is; one that is no ingredient belongs to the one before ('chopped')."""
    joined: list[tuple[str, Ingredient | None]] = []
    for part in parts:
        found = ingredient_of(part, desk)
        if found is None or not (found.has_amount or found.known):
            before = joined[-1] if joined else None
            longer = f"{before[0]}, {part}" if before else ""
            again = ingredient_of(longer, desk) if before else None
            if before and again and before[1] is not None:
                joined[-1] = (longer, again)
                continue
        joined.append((part, found))
    return joined


@cache
def _title_pattern() -> re.Pattern[str]:
    links = "|".join(re.escape(word) for word in note_words().list_links)
    title = rf"(?P<title>[^\W\d][\w'-]*(?: [\w'-]+){{0,{_MOST_TITLE_WORDS}}}?)"
    return re.compile(rf"{title}(?: ?[:=]| (?:{links})(?: (?:{links}))*\b:?) ?(?P<rest>\S.*)", re.IGNORECASE)


def _titled(text: str) -> tuple[str, str]:
    """'filling: 100 g butter, ...' -> 'filling' and the list; '' and the text where no title leads it."""
    found = _title_pattern().match(text)
    if not found or any(letter.isdigit() for letter in found["title"]):
        return "", text
    return found["title"], found["rest"]
