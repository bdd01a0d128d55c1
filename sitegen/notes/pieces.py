"""The lines of notes cut into what is read on its own: a list of ingredients in one line is many pieces."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cache, lru_cache

from sitegen.notes.amounts_in_notes import amount_at, spaced, spellings, unit_pattern
from sitegen.notes.columns import is_column_heads
from sitegen.notes.ingredients import Ingredient, ingredient_of
from sitegen.notes.note_lines import NoteLine, tidied
from sitegen.notes.number_patterns import FIGURE, number_word
from sitegen.notes.untidy_amounts import SIZES, is_known
from sitegen.notes.values import Lore
from sitegen.notes.verbs import begins_with_verb
from sitegen.notes.word_table import any_of, note_words

_MOST_TITLE_WORDS = 4
_RUN_IN_TITLE = re.compile(r"(?P<title>[A-Z][A-Z' &-]{3,40})\.? ?[—–] ?(?P<rest>\w.{20,})")
"""'SEED CAKE.—Take half a pound of ...', as old books have it."""
_FIGURE = re.compile(FIGURE)
_MOST_LISTED_WORDS = 8
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


def pieces_of(line: NoteLine, lore: Lore) -> tuple[Piece, ...]:
    """The pieces of a line, in order; together they hold all its words."""
    titled = _RUN_IN_TITLE.fullmatch(line.text)
    if titled:
        rest = replace(line, text=titled["rest"], cells=())
        return (Piece(titled["title"], line), *pieces_of(rest, lore))
    led = _led_by_a_section(line, lore)
    if led:
        return led
    columns = _columns(line, lore) or _with_a_note(line, lore) or _twice_measured(line, lore)
    columns = columns or _each_of(line, lore)
    if columns:
        return columns
    listed = tuple(_list_in(line, lore)) if len(line.text) <= _LONGEST_LIST else ()
    return listed or (Piece(line.text, line, ingredient_of(line.text, lore)),)


def _columns(line: NoteLine, lore: Lore) -> tuple[Piece, ...]:
    """Ingredients side by side: each cell one with an amount, or with 'a few' and the like."""
    found = [(cell, ingredient_of(tidied(cell), lore)) for cell in line.cells]
    amounts = [one.has_amount for _, one in found if one is not None and one.known]
    is_list = len(found) > 1 and len(amounts) == len(found) and any(amounts)
    return tuple(Piece(tidied(cell), line, one, of_a_list=True) for cell, one in found) if is_list else ()


def _with_a_note(line: NoteLine, lore: Lore) -> tuple[Piece, ...]:
    """'Butter', '100 g', 'cubed': the last cell says how the ingredient of the others comes."""
    *first, last = map(tidied, line.cells or ("",))
    found = ingredient_of(" ".join(first), lore) if len(first) > 1 and not _FIGURE.search(last) else None
    is_unit = last in spellings(lore) or last.casefold() in SIZES
    if is_unit or found is None or not (found.known and found.has_amount):
        return ()
    text = f"{' '.join(first)}, {last}"
    return (Piece(text, line, ingredient_of(text, lore), of_a_list=True),)


def _twice_measured(line: NoteLine, lore: Lore) -> tuple[Piece, ...]:
    """'Plain flour', '250 g', '2 cups': the measures are of the same amount."""
    first, *more = map(tidied, line.cells or ("",))
    if len(more) < 2 or not all(_FIGURE.match(cell) for cell in more):
        return ()
    text = f"{first} {' / '.join(more)}"
    found = ingredient_of(text, lore)
    return (Piece(text, line, found, of_a_list=True),) if found is not None and found.known else ()


def _each_of(line: NoteLine, lore: Lore) -> tuple[Piece, ...]:
    """'1 tsp each ground cinnamon and ground ginger'."""
    amount, each, names = line.text.partition(" each ")
    parts = re.split(r",? and |, | & ", names.removeprefix("of ")) if each else []
    found = [(text, ingredient_of(text, lore)) for text in (f"{amount} {name}" for name in parts)]
    is_list = len(found) > 1 and all(one is not None and one.known and one.has_amount for _, one in found)
    return tuple(Piece(text, line, one, of_a_list=True) for text, one in found) if is_list else ()


def _led_by_a_section(line: NoteLine, lore: Lore) -> tuple[Piece, ...]:
    """'Notes: keeps for three days': a heading and what it says, in one line."""
    first, rest = (line.cells[0], " ".join(line.cells[1:])) if line.cells else (line.text, "")
    if not rest:
        need = _need().match(line.text)
        first, _, rest = (need["need"], "", line.text[need.end() :]) if need else line.text.partition(":")
    words = (word for words in note_words().sections.values() for word in words)
    if not rest.strip() or first.casefold().strip(" *_") not in words or is_column_heads(line):
        return ()
    text = tidied(rest)
    return (Piece(first, line, heading=True), *pieces_of(replace(line, text=text, cells=()), lore))


@cache
def _need() -> re.Pattern[str]:
    """'You will need 200 g flour, ...': without a colon."""
    words = any_of(note_words().sections["ingredients"])
    return re.compile(rf"(?P<need>{words})[\s:]+(?={FIGURE}|(?:{number_word()}) )", re.IGNORECASE)


def _list_in(line: NoteLine, lore: Lore) -> Iterator[Piece]:
    """A heading and its ingredients, or ingredients alone, where a line holds at least two with an amount."""
    title, body = _titled(line.text)
    if lore.context.tables.larder.find(title) is not None:
        return
    if begins_with_verb(body) and not title:
        return
    parts = _joined(
        [part.strip() for part in _ends(unit_pattern(lore)).split(body) if part and part.strip()], lore
    )
    with_amount = [one for _, one in parts if one is not None and one.has_amount and one.known]
    is_list = len(with_amount) >= 2 and len(with_amount) * 2 >= len(parts)
    may_be = title and with_amount and all(_may_be_listed(text) for text, _ in parts)
    if not is_list and not may_be:
        return
    if title:
        yield Piece(title, line, heading=True)
    for text, ingredient in parts:
        yield Piece(text, line, ingredient, of_a_list=True)


@lru_cache(maxsize=4)
def _ends(units: str) -> re.Pattern[str]:
    """Where one ingredient of a list ends: at a comma, a stop, or an 'and' with an amount behind."""
    measure = rf"(?:{number_word()}) (?:{units}|{any_of(note_words().vague)})\b"
    return re.compile(
        rf"[,;](?!\d)(?![^()]*\))|(?<=\w) \+ (?={FIGURE})| (?:&|and) (?={FIGURE}|{measure})|\.(?= |$)"
    )


def _joined(parts: list[str], lore: Lore) -> list[tuple[str, Ingredient | None]]:
    """The parts, each with what it is; one that is no ingredient belongs to the one before ('chopped')."""
    joined: list[tuple[str, Ingredient | None]] = []
    for part in parts:
        found = ingredient_of(part, lore)
        is_own = amount_at(spaced(part, lore), lore) is not None or is_known(part, lore)
        if not is_own and (found is None or not (found.has_amount or found.known)):
            before = joined[-1] if joined else None
            longer = f"{before[0]}, {part}" if before else ""
            again = ingredient_of(longer, lore) if before else None
            if before and again and before[1] is not None:
                joined[-1] = (longer, again)
                continue
        is_whole = " and " not in part or (found is not None and found.known)
        joined += [(part, found)] if is_whole else _halves(part, lore) or [(part, found)]
    return joined


def _may_be_listed(text: str) -> bool:
    return len(text.split()) <= _MOST_LISTED_WORDS and not begins_with_verb(text)


def _halves(part: str, lore: Lore) -> list[tuple[str, Ingredient | None]]:
    """'85 g golden syrup and one egg'; nothing where one of them is not known with its amount."""
    first, _, second = part.rpartition(" and ")
    halves = [(words, ingredient_of(words, lore)) for words in (first, second)]
    is_pair = all(one is not None and one.known and one.has_amount for _, one in halves)
    return halves if is_pair else []


@cache
def _title_pattern() -> re.Pattern[str]:
    links = any_of(note_words().list_links)
    title = rf"(?P<title>[^\W\d][\w'-]*(?: [\w'-]+){{0,{_MOST_TITLE_WORDS}}}?)"
    return re.compile(
        rf"{title}(?: ?[:=]| [-–—](?= ?{FIGURE})| (?:{links})(?: (?:{links}))*\b:?) ?(?P<rest>\S.*)",
        re.IGNORECASE,
    )


def _titled(text: str) -> tuple[str, str]:
    """'filling: 100 g butter, ...' -> 'filling' and the list; '' and the text where no title leads it."""
    found = _title_pattern().match(text)
    if not found or any(letter.isdigit() for letter in found["title"]):
        return "", text
    return found["title"], found["rest"]
