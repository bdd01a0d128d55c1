"""Headings in notes: that say what comes ('Method'), and that name a component ('For the sponge')."""

import re
from dataclasses import dataclass
from functools import cache

from sitegen.notes.columns import is_column_heads
from sitegen.notes.note_lines import NoteLine
from sitegen.notes.number_patterns import FIGURE
from sitegen.notes.pieces import Piece
from sitegen.notes.verbs import begins_with_verb
from sitegen.notes.word_table import any_of, note_words

_MOST_WORDS = 7
_MOST_BARE_WORDS = 4
_EDGES = " :.-–—*_=#!~"
_FIGURE = re.compile(FIGURE)
_BRACKET = re.compile(r"\s*\([^()]*\)\s*$")


@dataclass(frozen=True)
class NoteHeading:
    """section: 'ingredients', 'method' or 'after', '' where it says none. title: of a component, or ''."""

    section: str
    title: str


def heading_in(piece: Piece, follows_list: bool, is_first: bool) -> NoteHeading | None:
    """The heading that a piece is; None for anything else.

    follows_list: whether an ingredient line stands right below it. is_first: whether it begins the notes.
    """
    if is_column_heads(piece.line):
        return NoteHeading("ingredients", "")
    text = _BRACKET.sub("", piece.text).strip(_EDGES)
    words = text.split()
    if not words or len(words) > _MOST_WORDS:
        return None
    section, title = _section(text)
    if section or piece.heading:
        return NoteHeading(section or "ingredients", title if section else component_title(text))
    if piece.ingredient is not None and piece.ingredient.has_amount:
        return None
    if _is_marked(piece, text, is_first) or _names_a_component(piece, text):
        is_advice = any(word.casefold() in note_words().advice for word in words)
        return NoteHeading("after" if is_advice else "", "" if is_advice else component_title(text))
    is_bare = (
        len(words) <= _MOST_BARE_WORDS and not _FIGURE.search(text) and not piece.text.endswith((".", "!"))
    )
    if is_bare and follows_list and not is_first and piece.line.after_gap and not piece.line.bullet:
        return NoteHeading("", component_title(text))
    return None


def _is_marked(piece: Piece, text: str, is_first: bool) -> bool:
    """By a mark of Markdown, a colon at the end, or capitals throughout."""
    line = piece.line
    is_loud = text.isupper() and sum(letter.isalpha() for letter in text) > 2 and not _FIGURE.search(text)
    if line.number_said or line.bullet:
        is_told = piece.text.endswith(":") or (is_loud and bool(line.number_said) and not is_first)
        return is_told and not begins_with_verb(text)
    is_told = piece.text.rstrip(" *_").endswith(":") and not _FIGURE.search(text)
    return is_told or (not is_first and (line.rank > 1 or line.bold or is_loud))


def _names_a_component(piece: Piece, text: str) -> bool:
    """'For the top', 'To make the glaze'."""
    found = _lead().match(text)
    is_short = found is not None and 0 < len(text[found.end() :].split()) <= 4
    is_prose = piece.text.endswith((".", ",")) or bool(_FIGURE.search(text)) or bool(piece.line.number_said)
    return bool(
        found and found.group(1).casefold().startswith(("for", "to make")) and is_short and not is_prose
    )


def says_only_a_section(line: NoteLine) -> bool:
    """Whether a heading says no more than a key of the file does: 'Ingredients', 'Method', a table's head."""
    words = (word for words in note_words().sections.values() for word in words)
    return is_column_heads(line) or _BRACKET.sub("", line.text).strip(_EDGES).casefold() in words


def _section(text: str) -> tuple[str, str]:
    """'Ingredients', 'Ingredients for the sponge', 'Sponge method' -> the section, and a title."""
    folded = text.casefold()
    for section, words in note_words().sections.items():
        if folded in words:
            return section, ""
    for section in ("ingredients", "method"):
        for word in note_words().sections[section]:
            for_it = re.fullmatch(rf"{re.escape(word)}(?: for| -|:) (?:the )?(?P<title>.+)", folded)
            of_it = re.fullmatch(rf"(?:for )?(?:the )?(?P<title>.+?)(?: -|:)? {re.escape(word)}", folded)
            found = for_it or (of_it if len(word) > 4 and word not in ("to make", "the method") else None)
            if found:
                return section, component_title(found["title"])
    return "", ""


@cache
def _lead() -> re.Pattern[str]:
    return re.compile(rf"({any_of(note_words().component_lead)}) ", re.IGNORECASE)


def component_title(text: str) -> str:
    """'For the sponge' -> 'Sponge', 'SPONGE' -> 'Sponge'; 'To finish' stays."""
    found = _lead().match(text)
    name = text[found.end() :] if found else text
    name = (
        re.sub(rf" (?:{any_of(note_words().component_tail)})$", "", name, flags=re.IGNORECASE).strip(_EDGES)
        or text
    )
    name = name.lower() if name.isupper() else name
    return name[:1].upper() + name[1:]
