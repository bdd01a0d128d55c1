"""Whether what is written in the file holds every word of a line of the notes."""

import re
from collections.abc import Iterable, Mapping
from functools import cache

from sitegen.source.durations import MINUTES
from sitegen.source.numbers import GLYPHS

_TOKEN = re.compile(r"\d+|[^\W\d_]+|[" + "".join(GLYPHS) + "]")
_SMALL = frozenset(
    re.findall(
        r"\w+",
        "a an the of for to at in on and or until till til about then with w s it t x is are so step degrees "
        "deg mark approx makes method ingredients instructions",
    )
)
"""Words without which a line says the same."""
_ALIKE = {
    **{word: "min" for word, minutes in MINUTES.items() if minutes == 1},
    **{word: "h" for word, minutes in MINUTES.items() if minutes == 60},
    **dict.fromkeys(("g", "gm", "gms", "gram", "grams", "gr"), "g"),
    **dict.fromkeys(("ml", "mls", "millilitre", "millilitres", "milliliters"), "ml"),
    **dict.fromkeys(("tsp", "tsps", "teaspoon", "teaspoons"), "tsp"),
    **dict.fromkeys(("tbsp", "tbsps", "tbs", "tablespoon", "tablespoons"), "tbsp"),
    **dict.fromkeys(("oz", "ounce", "ounces"), "oz"),
    **dict.fromkeys(("lb", "lbs", "pound", "pounds"), "lb"),
    **dict.fromkeys(("cup", "cups"), "cup"),
    **dict.fromkeys(("inch", "inches", "in"), "inch"),
    **dict.fromkeys(("lge", "lg", "lrg", "large"), "large"),
    **dict.fromkeys(("serves", "servings", "serving", "portions"), "serves"),
    **dict.fromkeys(("makes", "yield", "yields", "make", "gives"), "makes"),
}


def lost_words(written: str, outputs: Iterable[str]) -> tuple[str, ...]:
    """The words of a line that none of the texts has, in order."""
    there = {token for text in outputs for token in _tokens(text)}
    return tuple(token for token in _tokens(written) if token not in there and token not in _SMALL)


def _tokens(text: str) -> list[str]:
    glyphs = _glyphs()
    plain = "".join(glyphs.get(letter, letter) for letter in text.casefold())
    return [_ALIKE.get(token, token) for token in _TOKEN.findall(plain)]


@cache
def _glyphs() -> Mapping[str, str]:
    """'½' as '1/2', so that both are the same words."""
    return {glyph: f" {value.numerator}/{value.denominator} " for glyph, value in GLYPHS.items()}
