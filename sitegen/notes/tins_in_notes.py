"""Tins in the words of notes: 'a deep 20cm round tin', '2lb loaf tin', '9x13-inch pan' -> our format's."""

import re
from dataclasses import dataclass
from functools import cache
from itertools import islice

from sitegen.kitchen.amounts import NOWHERE
from sitegen.notes.values import Lore
from sitegen.notes.word_table import any_of, note_words
from sitegen.source.misread import Misread
from sitegen.source.vessels import read_tin

_MOST_TIN_WORDS = 7
_MOST_VESSELS = 8
"""Words of a text that may be the tin; more of them are no sentence."""
_SIZE = re.compile(r"(\d+(?:\.\d+)?)\s*-?\s*(cm|inch(?:es)?|in\b|\"|lb|g\b|kg|pint|hole|cup)", re.IGNORECASE)
_SIDES = re.compile(r"\d+(?:\.\d+)? x \d+(?:\.\d+)? (?:cm|in)")
_SIZE_BEHIND = re.compile(r"(?:\s*[(:,–—]|\s+-)\s*(?P<size>\d[^().;]{1,24}?)(?:\)|(?=[.;]|$))")
"""'the tin (30 x 20 cm)', 'tin - 9 in sq'."""
_SHAPES = {"sq": "square", "rd": "round", "rect": "rectangle"}
_SHORT_SHAPE = re.compile(r"\b(sq|rd|rect)\b\.?", re.IGNORECASE)
_SHORT_SHAPE = re.compile(rf"\b({any_of(_SHAPES)})\b\.?", re.IGNORECASE)
_BY = re.compile(r"(\d+(?:\.\d+)?)\s*(?:cm|in|inch|\")?\s*(?:[x×]|by)\s*(\d)", re.IGNORECASE)


@dataclass(frozen=True)
class TinSaid:
    """value: as our format reads it. start, end: of the words that say it."""

    value: str
    start: int
    end: int


def tin_in(text: str, lore: Lore) -> TinSaid | None:
    """The first tin of a text that our format knows, with its size: 'a deep 20cm round tin'."""
    for vessel in islice(_vessel().finditer(text), _MOST_VESSELS):
        starts = [found.start() for found in re.finditer(r"\S+", text[: vessel.start()])][-_MOST_TIN_WORDS:]
        for start in starts:
            value = known_tin(text[start : vessel.end()], lore)
            if value:
                return TinSaid(value, start, vessel.end())
        for start in reversed(starts):
            value = _by_its_sides(text[start : vessel.end()], lore)
            if value:
                return TinSaid(value, start, vessel.end())
        size = _SIZE_BEHIND.match(text, vessel.end())
        said = f"{size['size']} {vessel[0]}" if size else ""
        value = known_tin(said, lore) or _by_its_sides(said, lore)
        if size and value:
            return TinSaid(value, vessel.start(), size.end())
    return None


@cache
def _vessel() -> re.Pattern[str]:
    return re.compile(rf"(?:{any_of(note_words().tins)})\b", re.IGNORECASE)


def _by_its_sides(words: str, lore: Lore) -> str:
    """A tin by two lengths alone, whatever its trade calls it: '28cm x 18cm lamington tin'."""
    sides = _SIDES.match(_with_spaced_sizes(words))
    return known_tin(f"{sides.group(0)} rectangle", lore) if sides else ""


def known_tin(words: str, lore: Lore) -> str:
    """The tin that words name and nothing else, as our format reads it; '' for none."""
    if not any(letter.isdigit() for letter in words):
        return ""
    sized = _with_spaced_sizes(words)
    bare = re.sub(r"^(?:a|an|your|the|one|1 x)\s+", "", " ".join(sized.split()), flags=re.IGNORECASE)
    bare = re.sub(
        r"\b(?:deep|shallow|greased|lined|non-?stick|metal|buttered|prepared|diameter|pan size|size)\b,?\s*",
        "",
        bare,
    )
    bare = _SHORT_SHAPE.sub(lambda short: _SHAPES[short[1].casefold()], bare)
    bare = re.sub(r"^(two|three|four|2|3|4) (?:x )?", r"\1 ", bare)
    short = re.sub(r"\s+(?:tins?|pans?|moulds?|molds?|dish(?:es)?|plates?)$", "", bare, flags=re.IGNORECASE)
    for tried in (bare, short, _turned(short), f"{short} rectangle"):
        try:
            read_tin(tried, NOWHERE, lore.context)
        except Misread:
            continue
        return tried
    return ""


def _with_spaced_sizes(words: str) -> str:
    """'9x9-inch' -> '9 x 9 in', '28cm x 18cm' -> '28 x 18 cm'."""
    sized = _BY.sub(r"\1 x \2", words.replace("″", '"'))
    return _SIZE.sub(lambda found: f"{found.group(1)}{_unit(found.group(2))}", sized)


def _turned(words: str) -> str:
    """'round 20 cm' and '12-hole muffin' stay; 'muffin 12 hole' -> '12-hole muffin'."""
    found = re.fullmatch(r"(\D+) (\d+)[ -](?:hole|cup)", words)
    return f"{found.group(2)}-hole {found.group(1)}" if found else words


def _unit(word: str) -> str:
    folded = word.casefold()
    if folded in ("hole", "cup"):
        return f"-{folded}"
    return " in" if folded in ("inch", "inches", '"', "in") else f" {folded}"
