"""Amounts as they stand in notes, put into the words of our format: '150g' -> '150 g', '2 T' -> '2 tbsp'."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from sitegen.kitchen.amounts import Amount, single
from sitegen.kitchen.measures import Measures, NotAVolume
from sitegen.notes.figures import NoFigure, number_text
from sitegen.notes.number_patterns import GLYPH, RANGE
from sitegen.notes.values import Lore
from sitegen.notes.word_table import any_of, note_words
from sitegen.source.misread import Misread
from sitegen.source.numbers import whole_number

_GLUED_WORD = re.compile(r"(?<=\d)(?P<word>[a-z]{3,})", re.IGNORECASE)
_GLUED_UNIT = re.compile(r"(?:kg|g|ml|tsp|tbsp|oz)(?=[a-z]{4})", re.IGNORECASE)
_LETTERS = frozenset({"c", "C"})
"""A letter that means cups behind a small figure, and degrees behind one of two digits or more."""
_MIXED = re.compile(rf"\b(\d{{1,2}})(?:-| and | & )(\d/\d|{GLYPH})")
"""'1-1/2 cups' and '1 and 1/2 cups' are one and a half."""
_COMMA = re.compile(r"(?<=\d),(?=\d)")
_THOUSANDS = re.compile(r"\b(\d{1,3}),(\d{3})\b")


@dataclass(frozen=True)
class NotedAmount:
    """figure: as our format reads it. unit: the spelling that it reads, '' for a count. key: its own name."""

    figure: str
    unit: str = ""
    key: str = ""

    @property
    def text(self) -> str:
        """'1 1/2 cups', as our format reads it."""
        return f"{self.figure} {self.unit}".strip()

    def times(self, factor: str) -> "NotedAmount | None":
        """So many of it; None where the product cannot be written."""
        try:
            one, many = whole_number(self.figure), whole_number(factor)
            return NotedAmount(number_text(one * many), self.unit, self.key) if one and many else None
        except (Misread, NoFigure):
            return None


@lru_cache(maxsize=4)
def _spellings(measures: Measures) -> Mapping[str, tuple[str, str]]:
    rows: dict[str, tuple[str, str]] = {}
    for key, spelled in measures.names.items():
        if measures.is_length(key):
            continue
        for word in spelled:
            rows[word] = (word, key)
            rows.setdefault(word.casefold(), (word, key))
            rows.setdefault(word.capitalize(), (word.casefold(), key))
            rows.setdefault(word.upper(), (word.casefold(), key))
    for key, words in note_words().units.items():
        for word in words:
            rows[word] = (key, key)
    return rows


def spellings(lore: Lore) -> Mapping[str, tuple[str, str]]:
    """Spelling in notes -> the spelling that our format reads, and the unit's own name. Lengths left out."""
    return _spellings(lore.context.tables.measures)


@lru_cache(maxsize=4)
def _unit_pattern(measures: Measures) -> str:
    return f"(?:{any_of(_spellings(measures))})"


def unit_pattern(lore: Lore) -> str:
    """A pattern of every spelling of a unit, longest first."""
    return _unit_pattern(lore.context.tables.measures)


@lru_cache(maxsize=4)
def _measured(units: str) -> re.Pattern[str]:
    return re.compile(rf"(?P<figure>{RANGE})(?P<between> ?-?)(?P<unit>{units})\b\.?(?!['’\w])")


def spaced(text: str, lore: Lore) -> str:
    """The text with each measure as our format reads it: a blank, the unit's spelling, a decimal point."""
    plain = _MIXED.sub(r"\1 \2", text.replace("⁄", "/"))
    plain = _COMMA.sub(".", _THOUSANDS.sub(r"\1\2", plain)) if re.search(r"\d,\d", plain) else plain
    known = spellings(lore)

    def said(found: re.Match[str]) -> str:
        if found["unit"] in _LETTERS and len(found["figure"]) > 1 and found["figure"].isdigit():
            return found.group(0)
        return f"{_figure(found['figure'])} {known[found['unit']][0]}"

    return _measured(unit_pattern(lore)).sub(said, _unglued(plain, known))


def _unglued(text: str, known: Mapping[str, tuple[str, str]]) -> str:
    """'1egg' -> '1 egg', '80gplain' -> '80 g plain'; 'grams' and other units stay."""

    def parted(found: re.Match[str]) -> str:
        word = found["word"]
        if word in known or word.casefold() in known:
            return found.group(0)
        unit = _GLUED_UNIT.match(word)
        return f" {unit[0]} {word[unit.end() :]}" if unit else f" {word}"

    return _GLUED_WORD.sub(parted, text)


def _figure(figure: str) -> str:
    """'22 – 24' -> '22-24'."""
    return re.sub(r" ?(?:–|—|-) ?", "-", figure)


@lru_cache(maxsize=4)
def _whole(units: str) -> re.Pattern[str]:
    return re.compile(rf"(?P<figure>{RANGE})(?: (?P<unit>{units})(?!['’\w])|(?!['’\w/]))")


def amount_at(text: str, lore: Lore, start: int = 0) -> tuple[NotedAmount, int] | None:
    """The amount that begins at an index of a spaced text, and the index behind it."""
    found = _whole(unit_pattern(lore)).match(text, start)
    if not found:
        return None
    spelling, key = spellings(lore)[found["unit"]] if found["unit"] else ("", "")
    return NotedAmount(_figure(found["figure"]), spelling, key), found.end()


def summed(one: NotedAmount, more: NotedAmount, lore: Lore) -> NotedAmount | None:
    """'1 cup plus 2 tbsp' in the smaller of the two units; None where they cannot be added."""
    measures = lore.context.tables.measures
    first, second = _size(one, lore), _size(more, lore)
    if first is None or second is None or measures.is_weight(one.key) != measures.is_weight(more.key):
        return None
    unit, amount = min((first[1], one), (second[1], more), key=lambda sized: sized[0])
    try:
        return NotedAmount(number_text((first[0] + second[0]) / unit), amount.unit, amount.key)
    except NoFigure:
        return None


def _size(amount: NotedAmount, lore: Lore) -> tuple[Fraction, Fraction] | None:
    """How much it is, and one of its unit, in grams or millilitres; None for what is neither."""
    measures = lore.context.tables.measures
    try:
        count = whole_number(amount.figure)
        if count is None or not amount.key:
            return None
        if measures.is_weight(amount.key):
            unit = measures.gram_factor(amount.key)
        else:
            unit = measures.millilitres(Amount(single(1), amount.key), lore.edition).low
    except (Misread, NotAVolume):
        return None
    return count * unit, unit
