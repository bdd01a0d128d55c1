"""Which ingredient lines a revision speaks of, as each edition prints them now.

A note is written in the words and measures of the recipe's own edition; who holds a card in another needs the
line in that card's words.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from sitegen.kitchen.word_marks import has_word
from sitegen.sheet.values import RevisedLine, Sheet, SheetComponent, SheetLine

_NOUN = re.compile(r"[\w'’-]+(?=\W*$)")


@dataclass(frozen=True)
class _Spot:
    """A line by its place, which is the same in every edition."""

    component: int
    line: int


def revised_lines(sheets: Sequence[Sheet], note: str) -> tuple[RevisedLine, ...]:
    """The lines, by component, each in every edition; () where the note names no ingredient.

    sheets: the tested batch in each edition, first the one in whose words the note is written.
    """
    spots = _spoken_of(sheets[0], note.replace("\N{NO-BREAK SPACE}", " "))
    return tuple(_as_printed(sheet, spot) for spot in spots for sheet in sheets)


def _spoken_of(sheet: Sheet, note: str) -> list[_Spot]:
    """Lines named in full, else by their last word; of several, those whose part and figure are told."""
    spots = [_Spot(i, j) for i, part in enumerate(sheet.components) for j in range(len(part.lines))]
    in_full = [spot for spot in spots if has_word(note, (_line(sheet, spot).name,))]
    named = in_full or [spot for spot in spots if has_word(note, _noun(_line(sheet, spot).name))]
    in_part = [spot for spot in named if _names_part(note, sheet.components[spot.component])] or named
    return [spot for spot in in_part if _tells_figure(note, _line(sheet, spot))] or in_part


def _line(sheet: Sheet, spot: _Spot) -> SheetLine:
    return sheet.components[spot.component].lines[spot.line]


def _noun(name: str) -> tuple[str, ...]:
    """'sunflower oil' -> 'oil'."""
    found = _NOUN.search(name)
    return (found[0],) if found else ()


def _names_part(note: str, part: SheetComponent) -> bool:
    return has_word(note, (part.title, *_noun(part.title)))


def _tells_figure(note: str, line: SheetLine) -> bool:
    amounts = (amount.replace("\N{NO-BREAK SPACE}", " ") for amount in (line.amount, line.beside) if amount)
    return any(re.search(rf"(?<![\w.,]){re.escape(amount)}(?!\w)", note) for amount in amounts)


def _as_printed(sheet: Sheet, spot: _Spot) -> RevisedLine:
    part, line = sheet.components[spot.component], _line(sheet, spot)
    steps = (step.number for step in part.steps if any(use.name == line.name for use in step.uses))
    return RevisedLine(sheet.head.edition.title, part.title, line, tuple(steps))
