"""Figures that notes write in words, as a dictated memo has them: 'two hundred grams' -> '200 g'."""

import re

from sitegen.film.spoken_amounts import Said as What
from sitegen.film.spoken_amounts import SpokenAmount, spoken_amounts
from sitegen.notes.figures import NoFigure, minutes_text, span_text
from sitegen.notes.values import Lore
from sitegen.source.spoken_words import spoken_words

_WORD = re.compile(r"[0-9]+(?:\.[0-9]+)?|[A-Za-zÀ-ɏ]+(?:['’][A-Za-zÀ-ɏ]+)*|[½⅓⅔¼¾⅛]")
_SPOKEN = re.compile(
    r"\b(?:hundred|thousand|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|ten|eleven|twelve|\w+teen)\b",
    re.IGNORECASE,
)
_PLAIN = re.compile(r"[A-Za-zÀ-ɏ'’ -]+")
"""A figure in words alone, without marks and figures between them."""
_LONGEST = 3_000


def with_figures(text: str, lore: Lore) -> str:
    """The text with each measure, time and temperature in figures that it says in words alone."""
    if len(text) > _LONGEST or not _SPOKEN.search(text):
        return text
    found = list(_WORD.finditer(text))
    words = tuple(word.group(0).casefold().replace("’", "'") for word in found)
    out, begin = "", 0
    for amount in spoken_amounts(words, spoken_words(), lore.context.tables.measures):
        start, end = found[amount.begin].start(), found[amount.end - 1].end()
        is_plain = _PLAIN.fullmatch(text, start, end) is not None and start >= begin
        figure = figure_of(amount) if is_plain else ""
        if figure:
            out, begin = f"{out}{text[begin:start]}{figure}", end
    return out + text[begin:]


def figure_of(amount: SpokenAmount) -> str:
    """'160 g', '22-24 min', '150 C fan'; '' for what words say better: counts, shares and articles."""
    if amount.is_article or amount.is_part or amount.what in (What.BARE, What.PRICE):
        return ""
    try:
        if amount.what is What.TIME:
            return minutes_text(amount.span)
        figure = span_text(amount.span)
    except NoFigure:
        return ""
    if amount.what is What.TEMPERATURE:
        scale = {"celsius": "C", "fahrenheit": "F", "gas": ""}.get(amount.unit, "C")
        gas = "gas " if amount.unit == "gas" else ""
        return f"{gas}{figure} {scale}{' fan' if amount.fan else ''}".strip()
    return f"{figure} {amount.unit}".strip()
