"""How long what a step made may wait: '2 days chilled', '8 h, covered' -> minutes and the baker's words."""

import re
from dataclasses import dataclass
from fractions import Fraction

from sitegen.faults import Place
from sitegen.source.durations import MINUTES, read_span_of_minutes

_UNITS = "|".join(sorted(MINUTES, key=len, reverse=True))
_DURATION_FIRST = re.compile(
    rf"(?P<duration>(?:(?:[\d\s./½¼¾⅓⅔–—-]|\bto\b)+(?:{_UNITS})\b)+)[\s,.]*(?P<how>.*)",
    re.IGNORECASE | re.DOTALL,
)


@dataclass(frozen=True)
class Holding:
    """minutes: at most, exact. how: 'chilled', 'covered', '' for nothing said."""

    minutes: Fraction
    how: str


def read_holding(text: str, at: Place | None = None) -> Holding:
    """A time that something may wait, and how it is kept. Raises Misread; of a range the shorter counts."""
    found = _DURATION_FIRST.fullmatch(text)
    if found is None:
        return Holding(read_span_of_minutes(text, at).low, "")
    return Holding(read_span_of_minutes(found["duration"].strip(), at).low, found["how"].strip())
