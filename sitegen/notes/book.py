"""Notes once they are sorted: a title, what is said of the whole, groups of ingredients, a method, remarks.

Untidy text and a recipe of schema.org both become a Book; from there on they go the same way.
"""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, replace

from sitegen.notes.columns import is_column_heads, under_heads
from sitegen.notes.facts import Fact, facts_in, facts_of_cells
from sitegen.notes.ingredients import Ingredient
from sitegen.notes.note_headings import NoteHeading, heading_in
from sitegen.notes.note_lines import NoteLine
from sitegen.notes.number_words import with_figures
from sitegen.notes.pieces import Piece, pieces_of
from sitegen.notes.sentences import sentences
from sitegen.notes.sorting import Judged, Part, Sorted, is_remark, sorted_pieces
from sitegen.notes.values import Lore
from sitegen.notes.verbs import begins_with_verb
from sitegen.notes.word_table import note_words

_MOST_TITLE_WORDS = 12
_LONGEST_TITLE = 110
_MOST_LISTED_TITLE = 7
"""Words of a first line with a comma: 'Swiss roll, raspberry & cream'."""
_BARS = re.compile(r"\s+[|·•]\s+")
_SPOKEN = re.compile(r"[!?]|[.,]$|, ")
"""What a title has not: it is a name, and no sentence."""
_OF_THE_WHOLE = ("makes", "serves")


@dataclass(frozen=True)
class Said:
    """A text, and the line of the notes that says it. ingredient: None where it is none that can be told."""

    text: str
    line: NoteLine
    ingredient: Ingredient | None = None
    fact: Fact | None = None


@dataclass
class Group:
    """The ingredients of one component, lines that could not be told among them."""

    title: str
    heading: NoteLine | None = None
    said: list[Said] = field(default_factory=list)


@dataclass
class Block:
    """A stretch of the method. groups_before: how many groups of ingredients stand before it in the notes."""

    title: str
    heading: NoteLine | None = None
    said: list[Said] = field(default_factory=list)
    groups_before: int = 0


@dataclass
class Book:
    """title: '' where the notes have none. top: the introduction. facts: of the whole, in order.

    groups: of ingredients. blocks: of the method. remarks: what follows it. lines: all, in order.
    """

    title: str = ""
    title_line: NoteLine | None = None
    top: list[Said] = field(default_factory=list)
    facts: list[Said] = field(default_factory=list)
    groups: list[Group] = field(default_factory=list)
    blocks: list[Block] = field(default_factory=list)
    remarks: list[Said] = field(default_factory=list)
    lines: list[NoteLine] = field(default_factory=list)


def book_of(lines: Iterable[NoteLine], lore: Lore) -> Book:
    """Untidy text, sorted."""
    lines = tuple(_in_figures(line, lore) for line in under_heads(lines, lore))
    book = Book(lines=list(lines))
    for one in sorted_pieces(tuple(_judged(lines, lore)), lore):
        _put(one, book, lore)
    return book


def _in_figures(line: NoteLine, lore: Lore) -> NoteLine:
    text = with_figures(line.text, lore)
    return line if text == line.text else replace(line, text=text, in_words=line.original)


def _as_written(said: Said) -> Said:
    """What is no ingredient and no step keeps its number words."""
    return replace(said, text=said.line.original) if said.text == said.line.text else said


def _judged(lines: Iterable[NoteLine], lore: Lore) -> Iterator[Judged]:
    pieces: list[tuple[Piece, tuple[Fact, ...]]] = []
    for line in lines:
        facts = facts_of_cells(line.cells or tuple(_BARS.split(line.text)), lore)
        facts = facts or (() if line.number_said or line.rank else facts_in(line.text, lore))
        pieces += [(Piece(line.text, line), facts)] if facts else [(one, ()) for one in pieces_of(line, lore)]
    for index, (piece, facts) in enumerate(pieces):
        below = pieces[index + 1][0] if index + 1 < len(pieces) else None
        is_list = below is not None and below.ingredient is not None and below.ingredient.has_amount
        follows = below is not None and (is_list or is_column_heads(below.line)) and not below.line.after_gap
        yield Judged(piece, facts, None if facts else heading_in(piece, follows, index == 0))


def _put(one: Sorted, book: Book, lore: Lore) -> None:
    judged, line = one.judged, one.judged.piece.line
    said = Said(judged.piece.text, line, judged.piece.ingredient)
    if judged.heading is not None:
        _open(one, judged.heading, book)
    elif judged.facts:
        book.facts += [Said(judged.piece.text, line, fact=fact) for fact in judged.facts]
    elif one.part is Part.TOP:
        _top(_as_written(said), book)
    elif one.part is Part.INGREDIENTS:
        if not book.groups or (line.after_gap and _has_a_method_behind(book)):
            book.groups.append(Group(""))
        book.groups[-1].said.append(said)
    elif one.part is Part.METHOD:
        _step(said, book, lore)
    else:
        book.remarks.append(_as_written(said))


def _has_a_method_behind(book: Book) -> bool:
    """Whether steps have followed the last group of ingredients: what comes now belongs to another."""
    return any(block.said and block.groups_before == len(book.groups) for block in book.blocks)


def _open(one: Sorted, heading: NoteHeading, book: Book) -> None:
    """A heading opens a group of ingredients or a block of the method, or is the title or a remark."""
    said = Said(one.judged.piece.text, one.judged.piece.line)
    if one.part is Part.INGREDIENTS:
        _open_group(heading.title, said.line, book)
    elif one.part is Part.METHOD:
        _open_block(heading.title, said.line, book)
    elif not heading.section and one.part is Part.TOP and not book.title:
        _top(said, book)
    elif not heading.section and heading.title:
        book.remarks.append(said)


def _open_group(title: str, line: NoteLine, book: Book) -> None:
    """None for 'dry ingredients' among others, and none where the heading only says what comes."""
    last = book.groups[-1] if book.groups else None
    if last is not None and title.casefold() in note_words().groups:
        return
    if last is not None and not last.said and not last.title:
        last.title, last.heading = title, line
    elif title or last is None or book.blocks:
        book.groups.append(Group(title, line))


def _open_block(title: str, line: NoteLine, book: Book) -> None:
    last = book.blocks[-1] if book.blocks else None
    if last is not None and not last.said and not last.title:
        last.title, last.heading = title, line
    else:
        book.blocks.append(Block(title, line, groups_before=len(book.groups)))


def _without_facts(said: Said, book: Book, lore: Lore) -> Said:
    """A paragraph without a sentence such as 'Makes 12', which is said of the whole."""
    left = []
    for sentence in sentences(said.text):
        facts = [fact for fact in facts_in(sentence, lore) if fact.key in _OF_THE_WHOLE]
        book.facts += [Said(sentence, said.line, fact=fact) for fact in facts]
        left += [] if facts else [sentence]
    return Said(" ".join(left), said.line, said.ingredient)


def _step(said: Said, book: Book, lore: Lore) -> None:
    """A new block begins where ingredients stood between it and the last one."""
    said = _without_facts(said, book, lore)
    if not said.text:
        return
    if said.text.isupper():
        said = replace(said, text=" ".join(one.capitalize() for one in sentences(said.text)))
    if is_remark(said.text) and not begins_with_verb(said.text) and not said.line.number_said:
        book.remarks.append(said)
        return
    last = book.blocks[-1] if book.blocks else None
    if last is None or (last.said and last.groups_before < len(book.groups)):
        book.blocks.append(Block("", groups_before=len(book.groups)))
    book.blocks[-1].said.append(said)


def _top(said: Said, book: Book) -> None:
    """The title, where there is none yet and a text can be one; else a text of the introduction."""
    bare = re.sub(r"\s*\([^()]*\)", "", said.text).rstrip(" !.~")
    is_free = not book.title and not (book.top and is_remark(bare))
    is_name = len(said.text) <= _LONGEST_TITLE and _is_name(bare, is_first=not book.top)
    if is_free and len(bare.split()) <= _MOST_TITLE_WORDS and (is_name or said.line.rank == 1):
        book.title, book.title_line = said.text.strip(" *_#:-"), said.line
    else:
        book.top.append(said)


def _is_name(words: str, is_first: bool) -> bool:
    """A name, and no sentence; the first line may have a comma: 'Swiss roll, raspberry & cream'."""
    may_list = is_first and len(words.split()) <= _MOST_LISTED_TITLE and not is_remark(words)
    return _SPOKEN.search(words.replace(", ", " ") if may_list else words) is None
