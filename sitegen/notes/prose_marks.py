"""Temperatures and lengths of a step's words, in braces."""

import re

from sitegen.notes.heats_in_notes import heats_in
from sitegen.notes.number_patterns import RANGE

_LENGTHS = re.compile(
    r"(?P<wide>\d+(?:\.\d+)?)\s*(?:cm|mm|in|inch(?:es)?|\")?\s*(?:[x×]|by)\s*(?P<long>\d+(?:\.\d+)?)[\s-]*"
    r"(?P<units>cm|mm|inch(?:es)?|\"|in)(?![a-z])"
    rf"|(?<![\d.,/x×])(?P<one>{RANGE})[\s-]*"
    r"(?P<unit>cm|mm|inch(?:es)?|\")(?![a-z])",
    re.IGNORECASE,
)


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
