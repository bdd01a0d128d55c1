"""Shares in words and figures: 'half of', '1/3 of', 'all of', 'the rest of'."""

import re
from dataclasses import dataclass
from fractions import Fraction

from sitegen.source.numbers import GLYPHS, number_at

WORDS = {
    "half": Fraction(1, 2),
    "a half": Fraction(1, 2),
    "one half": Fraction(1, 2),
    "a third": Fraction(1, 3),
    "one third": Fraction(1, 3),
    "two thirds": Fraction(2, 3),
    "two-thirds": Fraction(2, 3),
    "a quarter": Fraction(1, 4),
    "one quarter": Fraction(1, 4),
    "three quarters": Fraction(3, 4),
    "three-quarters": Fraction(3, 4),
    "a fifth": Fraction(1, 5),
    "all": Fraction(1),
}
REST = ("the rest", "rest", "what is left")
_OF = r" (?:of the|of|the) "
_WORD = re.compile(
    "(" + "|".join(sorted((*WORDS, *REST), key=len, reverse=True)) + f"){_OF}|the remaining ", re.IGNORECASE
)
_FIGURE = re.compile(_OF, re.IGNORECASE)


@dataclass(frozen=True)
class Share:
    """share: None for 'the rest of'. end: index where the thing that is shared begins."""

    share: Fraction | None
    end: int


def share_at(text: str) -> Share | None:
    """The share that a text begins with; None where it begins with none.

    A figure is a share only if it is a fraction of one ('1/3 of', '¾ of'). Raises Misread for bad numbers.
    """
    word = _WORD.match(text)
    if word:
        return Share(WORDS.get((word.group(1) or "").casefold()), word.end())
    head = text[:12].partition(" ")[0]
    if not any(mark in head for mark in ("/", "⁄", *GLYPHS)):
        return None
    found = number_at(text)
    if found is None or found.span.is_range or found.span.low > 1:
        return None
    of = _FIGURE.match(text, found.end)
    return Share(found.span.low, of.end()) if of else None
