"""What each piece of the notes is, all of them at once, by what they look like and what stands near.

Notes go from a title and an introduction to ingredients, to a method, to remarks, and may begin anew for
each component. Each piece is scored for each of these parts; the best way through all of them is found by
dynamic programming (Viterbi), so that one odd line among ingredients does not end them.
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum

from sitegen.notes.best_way import best_way
from sitegen.notes.facts import Fact
from sitegen.notes.heats_in_notes import heats_in
from sitegen.notes.names_in_notes import mentions
from sitegen.notes.note_headings import NoteHeading
from sitegen.notes.number_patterns import FIGURE
from sitegen.notes.pieces import Piece
from sitegen.notes.times_in_notes import times_in
from sitegen.notes.values import Lore
from sitegen.notes.verbs import begins_with_verb, has_verb
from sitegen.notes.word_table import note_words
from sitegen.source.bare_amounts import bare_amount_in


class Part(StrEnum):
    """The parts of notes."""

    TOP = "top"
    INGREDIENTS = "ingredients"
    METHOD = "method"
    AFTER = "after"


PARTS = tuple(Part)
# All figures below were set by hand on the notes of `tests/notes/written/` and mean something beside each
# other alone: half a point is a hint, one a sign, two and more are nearly sure.
_NO_WAY = 99.0
_STARTS = {Part.TOP: 0.0, Part.INGREDIENTS: 0.5, Part.METHOD: 1.5, Part.AFTER: 4.0}
"""What it costs that notes begin with a part."""
_TURNS = {
    (Part.TOP, Part.INGREDIENTS): 0.5,
    (Part.TOP, Part.METHOD): 1.5,
    (Part.TOP, Part.AFTER): 4.0,
    (Part.INGREDIENTS, Part.METHOD): 0.5,
    (Part.INGREDIENTS, Part.AFTER): 2.5,
    (Part.METHOD, Part.INGREDIENTS): 1.5,
    (Part.METHOD, Part.AFTER): 1.0,
    (Part.AFTER, Part.METHOD): 4.0,
    (Part.AFTER, Part.INGREDIENTS): 4.0,
}
"""What it costs to go from one part to another; back to the top is not possible."""
_TOLD = 20.0
"""What a heading that names its part is worth."""
_LONG = 12
"""Words from which on a text with amounts is a paragraph of a method."""
_LONGEST_TEXT = 2_000
"""Letters of a text that are looked at."""
_MOST_LISTED_WORDS = 8
"""Of a line with a figure that may be an ingredient which was not understood."""
_FIGURE = re.compile(FIGURE)
_GAP = 0.4
"""How much less a turn costs behind an empty line or at a heading."""


@dataclass(frozen=True)
class Judged:
    """A piece with what can be told of it alone."""

    piece: Piece
    facts: tuple[Fact, ...] = ()
    heading: NoteHeading | None = None


@dataclass(frozen=True)
class Sorted:
    """A piece, and the part of the notes that it stands in."""

    judged: Judged
    part: Part


def sorted_pieces(judged: Sequence[Judged], lore: Lore) -> tuple[Sorted, ...]:
    """Every piece with its part, in order."""
    worths = [_worth(one, index, lore) for index, one in enumerate(judged)]
    way = best_way(
        [[worth[part] for part in PARTS] for worth in worths],
        [_STARTS[part] for part in PARTS],
        lambda before, here, index: _turn(PARTS[before], PARTS[here], judged[index]),
    )
    found = [Sorted(one, PARTS[at]) for one, at in zip(judged, way, strict=True)]
    return tuple(reversed(list(_with_headings(found[::-1]))))


def _with_headings(backwards: Sequence[Sorted]) -> Iterator[Sorted]:
    """A heading that says no part stands in the part of what follows it. backwards: from the last."""
    below: Part | None = None
    for one in backwards:
        heading = one.judged.heading
        part = below if heading is not None and not heading.section and below is not None else one.part
        below = part
        yield Sorted(one.judged, part)


def _turn(before: Part, part: Part, one: Judged) -> float:
    """What it costs that a piece stands in another part than the one before it."""
    if before is part:
        return 0.0
    is_break = one.heading is not None or one.piece.line.after_gap or one.piece.line.rank > 0
    return _TURNS.get((before, part), _NO_WAY) - (_GAP if is_break else 0.0)


def _worth(one: Judged, index: int, lore: Lore) -> dict[Part, float]:
    """How well a piece fits each part."""
    if one.heading is not None:
        told = one.heading.section
        return {part: _TOLD if told == part.value else 0.0 for part in PARTS}
    if one.facts:
        return {Part.TOP: 0.3, Part.INGREDIENTS: 0.0, Part.METHOD: 0.0, Part.AFTER: 0.0}
    return {
        Part.TOP: _top(one.piece, index),
        Part.INGREDIENTS: _ingredient(one.piece, lore),
        Part.METHOD: _step(one.piece, lore),
        Part.AFTER: _remark(one.piece),
    }


def _top(piece: Piece, index: int) -> float:
    has_amount = piece.ingredient is not None and piece.ingredient.has_amount and piece.ingredient.known
    if has_amount:
        return -2.0
    if piece.ingredient is not None and piece.ingredient.has_amount:
        return 1.5 if index == 0 else -0.5
    if _measures_in(piece.text) > 1:
        return -2.0
    is_prose = len(piece.text.split()) >= 5 and not begins_with_verb(piece.text)
    spoken = 2.4 if is_remark(piece.text) else 1.0 if is_prose else 0.0
    return (2.0 if index == 0 else 0.6) + spoken - (1.0 if piece.line.number_said else 0.0)


def _ingredient(piece: Piece, lore: Lore) -> float:
    found, words = piece.ingredient, piece.text.split()
    score = -2.0
    if found is not None and found.known:
        score = 4.0 if found.has_amount else 1.5 if len(words) <= 8 else 0.0
    elif found is not None:
        score = 1.5
    elif _may_be_listed(piece.text) and mentions(piece.text, lore.context.tables.larder):
        score = 0.5
    elif piece.of_a_list:
        score = 1.0
    if begins_with_verb(piece.text) and not (found is not None and found.has_amount):
        score -= 2.0
    if len(words) > 14:
        score -= 2.0
    if piece.text.endswith(".") and len(words) > 6:
        score -= 1.0
    return (
        score
        + (0.7 if piece.line.bullet or piece.of_a_list else 0.0)
        - (0.7 if piece.line.number_said else 0.0)
    )


def _may_be_listed(text: str) -> bool:
    """Whether a text that was not understood is short and has a figure, as ingredient lines have."""
    return len(text.split()) <= _MOST_LISTED_WORDS and bool(_FIGURE.search(text)) and not text.endswith(".")


def _step(piece: Piece, lore: Lore) -> float:
    text = piece.text[:_LONGEST_TEXT]
    words = text.split()
    score = 2.5 if begins_with_verb(text) else 1.0 if has_verb(text, 12) else -0.5
    score += 1.5 if piece.line.number_said else 0.0
    has_clock = next(times_in(text), None) is not None or next(heats_in(text), None) is not None
    score += 1.0 if has_clock else 0.0
    score += 0.7 if len(words) >= 6 else 0.0
    score += 1.5 if len(words) >= _LONG and _measures_in(text) > 1 else 0.0
    is_amount = piece.ingredient is not None and piece.ingredient.has_amount and piece.ingredient.known
    if is_amount:
        return score - 2.5
    return score + (0.5 if len(words) >= 4 and mentions(text, lore.context.tables.larder) else 0.0)


def _measures_in(text: str) -> int:
    """How many amounts with a unit stand in a text: 0, 1, or 2 for more than one."""
    count, start = 0, 0
    while count < 2 and (found := bare_amount_in(text[:_LONGEST_TEXT], start)):
        count, start = count + found.in_braces.endswith("...}"), found.end
    return count


def _remark(piece: Piece) -> float:
    if is_remark(piece.text):
        return 3.0
    is_amount = piece.ingredient is not None and piece.ingredient.has_amount
    is_prose = len(piece.text.split()) >= 4 and not begins_with_verb(piece.text)
    return -2.0 if is_amount else 0.6 if is_prose else 0.0


def is_remark(text: str) -> bool:
    """Whether a text begins as one who speaks about a recipe does: 'NB', 'keeps', 'my mum'."""
    folded = text.casefold().lstrip("*_-(")
    for lead in note_words().remark_leads:
        if folded.startswith(lead) and not folded[len(lead) : len(lead) + 1].isalnum():
            return True
    return False
