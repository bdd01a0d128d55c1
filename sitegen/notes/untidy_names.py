"""The name of an ingredient line in notes, without what stands around it: each step takes one thing away."""

import re
from functools import cache

from sitegen.notes.names_in_notes import kind_behind, named
from sitegen.notes.number_patterns import GLYPH, number_word
from sitegen.notes.untidy_amounts import SIZES, Reading, is_known, without_of
from sitegen.notes.word_table import any_of, note_words

_PURPOSE = re.compile(r" (?=(?:to|for) )", re.IGNORECASE)


def without_measure(name: str, reading: Reading) -> str:
    """'balls stem ginger', 'handful of walnuts': what no scale knows goes where the reading keeps it."""
    return _vague(_counted_in(name, reading), reading)


def name_alone(name: str, reading: Reading) -> str:
    """Without purpose and 'to taste', with the kind and the size that stood behind the comma.

    reading: has what stands behind the comma already.
    """
    for mended in (_end_words, _bare, _without_purpose, _of_its_kind, _with_its_size):
        name = mended(name, reading)
    return name


def _bare(name: str, _: Reading) -> str:
    return " ".join(name.split()).strip(" ,.:;-–—*!?")


@cache
def _vague_pattern() -> re.Pattern[str]:
    words = any_of((*note_words().vague, *note_words().vessels))
    sizes = "the|some|few|good|big|large|small|generous|tiny|little"
    lead = rf"(?:(?:{sizes}|half|{GLYPH}|\d|{number_word()}) )*"
    return re.compile(rf"(?P<vague>{lead}(?:{words})(?: more)?)(?: of)? (?P<rest>.+)", re.IGNORECASE)


def _counted_in(name: str, reading: Reading) -> str:
    """'3 balls stem ginger': of what the larder weighs by the piece the word goes behind the comma."""
    word, _, rest = name.partition(" ")
    rest = without_of(rest)
    if word.casefold() not in note_words().counted or not reading.amounts or reading.amounts[0].unit:
        return name
    found = named(rest, reading.lore.context.tables.larder, reading.lore.region)
    if found.row is None or is_known(name, reading.lore):
        return name
    if found.row.piece("") is None:
        reading.vague = f"{reading.amounts.pop(0).figure} {word}"
    else:
        reading.tail.insert(0, word)
    return rest


def _vague(name: str, reading: Reading) -> str:
    """'handful of walnuts' -> 'walnuts', and 'handful' kept."""
    found = _vague_pattern().fullmatch(name)
    if not found or any(one.unit for one in reading.amounts):
        return name
    if reading.amounts and not reading.amounts[0].unit:
        first = reading.amounts.pop(0)
        reading.vague = f"{first.figure} {found['vague']}"
    else:
        reading.vague = found["vague"]
    return found["rest"]


def _end_words(name: str, reading: Reading) -> str:
    """'salt to taste', 'walnuts optional' -> the name alone."""
    words = note_words()
    for ending in (*words.optional, *words.to_taste):
        if name.casefold().endswith(f" {ending}"):
            if ending in words.optional:
                reading.optional = True
            else:
                reading.tail.append(ending)
            return name[: -len(ending) - 1]
    return name


def _without_purpose(name: str, reading: Reading) -> str:
    """'demerara sugar to finish' -> 'demerara sugar', and 'to finish' behind the comma."""
    purpose = _PURPOSE.search(name)
    if purpose is None or is_known(name, reading.lore) or not is_known(name[: purpose.start()], reading.lore):
        return name
    reading.tail.append(name[purpose.start() :].strip())
    return name[: purpose.start()]


def _with_its_size(name: str, reading: Reading) -> str:
    """'6 eggs (large)', 'eggs 3, medium': a size stands before the name."""
    counts = bool(reading.amounts) and not reading.amounts[0].unit
    for said in (reading.tail, reading.notes):
        size = next((words for words in said if words.casefold() in SIZES), "")
        if counts and size:
            said.remove(size)
            return f"{size.casefold()} {name}"
    return name


def _of_its_kind(name: str, reading: Reading) -> str:
    """'200 g flour, plain' -> 'plain flour'; '½ nutmeg, grated' stays, since it is counted whole."""
    is_counted = bool(reading.amounts) and not reading.amounts[0].unit
    if is_counted or not reading.tail:
        return name
    kind = kind_behind(name, reading.tail[0], reading.lore.context.tables.larder)
    if kind:
        reading.tail.pop(0)
    return kind or name
