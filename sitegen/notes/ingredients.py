"""An ingredient line of notes -> the line that our format reads, tried with the reader of lines itself."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from sitegen.kitchen.amounts import NOWHERE
from sitegen.kitchen.recipe import IngredientLine, Line
from sitegen.notes.amounts_in_notes import NotedAmount, spaced, spellings
from sitegen.notes.names_in_notes import Named, kind_behind, mentions, named
from sitegen.notes.number_patterns import NUMBER, number_word, number_words
from sitegen.notes.untidy_amounts import SIZES
from sitegen.notes.untidy_lines import UntidyLine, untidy_line
from sitegen.notes.values import Lore
from sitegen.notes.word_table import note_words
from sitegen.source.bare_amounts import bare_amount_in
from sitegen.source.durations import MINUTES
from sitegen.source.lines import read_line
from sitegen.source.misread import Misread

_OR = re.compile(r" or |(?<=[a-z]) ?/ ?(?=[a-z])", re.IGNORECASE)
_OF_PART = re.compile(
    r"(?P<part>.*\b(?:zest|juice|rind|yolks?|whites?)(?: only)? of )(?P<rest>.+)", re.IGNORECASE
)
STAND_IN = "water"
"""A name that the larder has: with it the form of a line is tried whose own name nobody knows."""
_SIZES = sorted(SIZES, key=len, reverse=True)
_SECOND_FIGURE = re.compile(r"[(,][^)]*\d")
"""A figure in brackets or behind the comma: it would follow no batch."""
_NO_UNIT = "the notes have no unit here: read as grams"
_LEAST_BARE_GRAMS = 10
"""A bare figure from here on of what is never counted is meant in grams: 'water 680'. Common practice."""
_MOST_LETTERS = 300
_MOST_NAME_WORDS = 6


@dataclass(frozen=True)
class Ingredient:
    """line: as the file will have it. known: whether the larder has all its names.

    has_amount: whether a figure stands in it. name: what it is of. remark: what was taken for granted, or ''.
    """

    line: str
    known: bool
    has_amount: bool
    name: str
    remark: str = ""


def ingredient_of(text: str, lore: Lore) -> Ingredient | None:
    """The line of our format; None where the words are no ingredient line that can be told.

    text: one line without its bullet.
    """
    if not text or len(text) > _MOST_LETTERS:
        return None
    plain = " ".join(spaced(text, lore).split()).rstrip(" .;,!")
    names_a_base = any(title.casefold() in plain.casefold() for title in lore.context.recipes)
    if names_a_base or (not _SECOND_FIGURE.search(plain) and mentions(plain, lore.context.tables.larder)):
        as_it_stands = _read(plain, lore)
        if isinstance(as_it_stands, IngredientLine) and _may_stand(as_it_stands, lore):
            return Ingredient(plain, True, as_it_stands.amount is not None, as_it_stands.chosen.name)
        if as_it_stands is not None and not isinstance(as_it_stands, IngredientLine):
            return Ingredient(plain, True, True, as_it_stands.source)
    return _from_parts(untidy_line(text, lore), lore)


def _may_stand(line: IngredientLine, lore: Lore) -> bool:
    """Whether the line can stay as it is: its names are the region's own, its figure no bare weight."""
    larder, region = lore.context.tables.larder, lore.region
    names = [named(one.name, larder, region) for one in line.choices]
    amount = line.amount
    bare = NotedAmount(str(amount.span.low)) if amount is not None and not amount.unit else None
    is_weight = bare is not None and _in_grams(bare, names) != bare
    if amount is None and _has_late_amount(line.preparation, lore):
        return False
    is_counted = amount is not None and not amount.unit
    is_kind = not is_counted and kind_behind(line.chosen.name, line.preparation.partition(",")[0], larder)
    behind = (words.strip().casefold() for words in (line.note, *line.preparation.split(",")))
    sizes = {note_words().short.get(words, words) for words in behind}
    return not (is_weight or is_kind or SIZES & sizes) and all(
        one.name == choice.name for one, choice in zip(names, line.choices, strict=True)
    )


def _has_late_amount(preparation: str, lore: Lore) -> bool:
    """'salt, pinch', 'bicarb, half tsp': an amount that stands where the preparation does."""
    first, _, rest = preparation.partition(" ")
    units = spellings(lore)
    return first in units or (first.casefold() in number_words() and rest.partition(" ")[0] in units)


def _read(text: str, lore: Lore) -> Line | None:
    try:
        return read_line(text, NOWHERE, lore.context)
    except Misread:
        return None


def _from_parts(parts: UntidyLine, lore: Lore) -> Ingredient | None:
    if not parts.name:
        return None
    prefix, names = _names(parts.name, lore)
    known = all(one.row is not None for one in names)
    if not known and not _may_be_a_name(parts, names):
        return None
    amount = _in_grams(parts.amount, names)
    for extras in _extras(parts, names):
        line = _line(prefix, amount.text if amount else "", " or ".join(map(_sized, names)), extras)
        form = line if known else _line(prefix, amount.text if amount else "", STAND_IN, extras)
        read = _read(form, lore)
        if read is not None:
            remark = _NO_UNIT if amount != parts.amount else ""
            return Ingredient(line, known, read.amount is not None, names[0].name, remark)
    return None


def _in_grams(amount: NotedAmount | None, names: list[Named]) -> NotedAmount | None:
    """The amount; in grams where a sheet says 'flour 700' of what nobody counts."""
    row = names[0].row
    if amount is None or amount.unit or row is None or row.plural or "egg" in row.roles:
        return amount
    if row.pieces and "yeast" not in row.roles:
        return amount
    figure = amount.figure.partition("-")[0]
    is_much = figure.replace(".", "").isdigit() and float(figure) >= _LEAST_BARE_GRAMS
    return NotedAmount(amount.figure, "g", "g") if is_much else amount


def _names(name: str, lore: Lore) -> tuple[str, list[Named]]:
    """Words such as 'juice of ½', then the ingredient and its alternatives."""
    larder, region = lore.context.tables.larder, lore.region
    prefix = ""
    part = _OF_PART.fullmatch(name)
    if part:
        prefix, name = part["part"], part["rest"]
        figure = re.match(rf"(?:{NUMBER}|{number_word()}) ", name, re.IGNORECASE)
        if figure:
            prefix, name = prefix + figure.group(0), name[figure.end() :]
    whole = named(name, larder, region)
    if whole.row is not None:
        return prefix, [whole]
    options = [named(option.strip(" ,"), larder, region) for option in _OR.split(name)]
    return (prefix, options) if all(one.row for one in options) else (prefix, [whole])


def _may_be_a_name(parts: UntidyLine, names: list[Named]) -> bool:
    """Whether words that the larder lacks can be an ingredient: few, without figures, and with an amount."""
    words = names[0].name.split()
    if words and words[-1].casefold() in (*note_words().tins, *note_words().ware):
        return False
    has_figure = any(letter.isdigit() for letter in names[0].name) or (
        words[:1] and words[0].casefold() in MINUTES
    )
    return parts.amount is not None and bool(words) and len(words) <= _MOST_NAME_WORDS and not has_figure


def _extras(parts: UntidyLine, names: list[Named]) -> Iterator[tuple[str, str]]:
    """Preparation and note, from all that was said down to nothing."""
    comes = [_without_size(words) for one in names for words in one.comes]
    comes = [words for words in comes if words]
    said = [*([parts.vague] if parts.vague else []), *comes, *parts.tail]
    kept = [words for words in said if not bare_amount_in(words)]
    notes = [note for note in parts.notes if not bare_amount_in(note)]
    optional = ["optional"] if parts.optional else []
    yield ", ".join((*said, *optional)), ", ".join(parts.notes)
    yield ", ".join((*kept, *optional)), ", ".join(notes)
    yield ", ".join((*kept, *notes, *optional)), ""
    yield ", ".join(optional), ""


def _sized(one: Named) -> str:
    """A size stands before the name, where our format reads it."""
    size = _size_in(one.before)
    return f"{size} {one.name}" if size else one.name


def _size_in(words: str) -> str:
    folded = words.casefold()
    return next((size for size in _SIZES if re.search(rf"\b{size}\b", folded)), "")


def _without_size(words: str) -> str:
    size = _size_in(words)
    return " ".join(re.sub(rf"\b{size}\b", " ", words, flags=re.IGNORECASE).split()) if size else words


def _line(prefix: str, amount: str, name: str, extras: tuple[str, str]) -> str:
    preparation, note = extras
    head = f"{prefix}{amount} {name}" if prefix else f"{amount} {name}"
    bracket = f" ({note})" if note else ""
    behind = f", {preparation}" if preparation else ""
    return " ".join(f"{head}{bracket}{behind}".split())
