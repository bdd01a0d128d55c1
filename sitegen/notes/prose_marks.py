"""Temperatures and lengths of a step's words in braces; words that stand for several ingredients at once."""

import re

from sitegen.notes.heats_in_notes import heats_in
from sitegen.notes.word_table import note_words

_LENGTHS = re.compile(
    r"(?P<wide>\d+(?:\.\d+)?)\s*(?:cm|mm|in|inch(?:es)?|\")?\s*(?:[x×]|by)\s*(?P<long>\d+(?:\.\d+)?)[\s-]*"
    r"(?P<units>cm|mm|inch(?:es)?|\"|in)(?![a-z])"
    r"|(?<![\d.,/x×])(?P<one>\d+ \d/\d|\d/\d|\d ?[½¼¾]|[½¼¾]|\d+(?:\.\d+)?(?: ?[-–] ?\d+(?:\.\d+)?)?)[\s-]*"
    r"(?P<unit>cm|mm|inch(?:es)?|\")(?![a-z])",
    re.IGNORECASE,
)
_EXCEPT_END = re.compile(r"[,.;(]| until | till | and (?=mix|then)", re.IGNORECASE)


def heats_and_lengths(text: str) -> str:
    """Temperatures and lengths in braces: '{118 C}', '{2 cm}', '{30 cm} x {40 cm}'."""
    out, index = "", 0
    for heats in heats_in(text):
        out += f"{text[index : heats.start]}{{{heats.in_prose}}}"
        index = heats.end
    text = out + text[index:]
    return _LENGTHS.sub(_length_in_braces, text)


def _length_in_braces(found: re.Match[str]) -> str:
    if found["one"]:
        return f"{{{found['one'].replace('–', '-')} {_length(found['unit'])}}}"
    unit = _length(found["units"])
    return f"{{{found['wide']} {unit}}} x {{{found['long']} {unit}}}"


def _length(unit: str) -> str:
    return unit.casefold() if unit.casefold() in ("cm", "mm") else "in"


def group_in(text: str) -> tuple[str, int, int] | None:
    """Words that stand for several ingredients ('the dry ingredients'), where they begin and end."""
    for words in sorted(note_words().groups, key=len, reverse=True):
        found = re.search(rf"(?<![{{\w]){re.escape(words)}(?![}}\w])", text, re.IGNORECASE)
        if found:
            return words, found.start(), found.end()
    return None


def excepted_in(text: str, start: int) -> str:
    """The words behind 'except' in what follows an index; '' where nothing is excepted."""
    leads = "|".join(sorted(map(re.escape, note_words().excepted), key=len, reverse=True))
    found = re.search(rf"\b(?:{leads})\b", text[start:], re.IGNORECASE)
    if not found:
        return ""
    rest = text[start + found.end() :]
    end = _EXCEPT_END.search(rest)
    return rest[: end.start()] if end else rest
