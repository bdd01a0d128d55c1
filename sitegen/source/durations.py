"""Durations: '3 min', '22-24 min', '1 h 30 min', '8-12 h', '45 min-1 h 15 min', '2 days' -> minutes."""

import re
from dataclasses import dataclass
from fractions import Fraction

from sitegen.faults import FaultCode, Place, Severity
from sitegen.kitchen.amounts import Span
from sitegen.source.misread import Misread
from sitegen.source.numbers import number_at

DURATION = FaultCode(
    "duration",
    Severity.ERROR,
    "A time that cannot be put on a clock.",
    "Write `3 min`, `22-24 min`, `1 h 30 min`, `8-12 h` or `2 days`.",
    good="wait: 22-24 min",
    bad="wait: overnight",
)
CODES = (DURATION,)

MINUTES = {
    **dict.fromkeys(("min", "mins", "minute", "minutes"), Fraction(1)),
    **dict.fromkeys(("s", "sec", "second", "seconds"), Fraction(1, 60)),
    **dict.fromkeys(("h", "hr", "hrs", "hour", "hours"), Fraction(60)),
    **dict.fromkeys(("day", "days"), Fraction(24 * 60)),
}
LONGEST_MIN = 60 * 24 * 60
_MINUS = ("-", "–", "—", "−")
_UNIT_WORD = re.compile(r" {0,2}([a-z]+) {0,2}", re.IGNORECASE)
_BETWEEN = re.compile(r"(?<=[a-z]) ?(?:[-–—]|to) ?(?=[\d½¼¾])", re.IGNORECASE)


@dataclass(frozen=True)
class _Part:
    """One figure with its unit, in minutes; end: the index behind it."""

    span: Span
    end: int


def read_span_of_minutes(text: str, _at: Place | None = None) -> Span:
    """A duration in minutes, exact: '1 h 30 min' -> 90, '22-24 min' -> 22 to 24. Raises Misread.

    A range may have a unit at both ends: '45 min-1 h 15 min'.
    """
    if text.startswith(_MINUS):
        raise _no_duration(text, "no time is less than none: write it without a minus")
    between = _BETWEEN.search(text)
    if not between:
        return _sum_of_parts(text, 0, len(text))
    low = _sum_of_parts(text, 0, between.start())
    high = _sum_of_parts(text, between.end(), len(text))
    if low.is_range or high.is_range or high.low <= low.low:
        raise _no_duration(text, "write the shorter time first: '45 min-1 h'")
    return Span(low.low, high.low)


def _sum_of_parts(text: str, index: int, end: int) -> Span:
    total: Span | None = None
    while index < end:
        part = _part_at(text, index)
        if total is not None and (total.is_range or part.span.is_range):
            raise _no_duration(text, "a range stands alone: '8-12 h'")
        total = part.span if total is None else Span(total.low + part.span.low, total.high + part.span.high)
        index = part.end
    if total is None or total.high > LONGEST_MIN:
        raise _no_duration(text, "write it in minutes, hours or days, sixty days at most")
    return total


def _part_at(text: str, index: int) -> _Part:
    found = number_at(text, index)
    word = _UNIT_WORD.match(text, found.end) if found else None
    minutes = MINUTES.get(word.group(1).casefold()) if word else None
    if found is None or word is None or minutes is None:
        raise _no_duration(text, "write `3 min`, `22-24 min`, `1 h 30 min`, `8-12 h` or `2 days`")
    return _Part(found.span.times(minutes), word.end())


def _no_duration(text: str, way_out: str) -> Misread:
    if "overnight" in text.casefold():
        way_out = "say how long: '8-12 h'"
    return Misread(DURATION, f"'{text}' cannot be put on a clock", way_out, 0, max(len(text), 1))
