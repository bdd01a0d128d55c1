"""Durations in minutes."""

from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import Span, single
from sitegen.source.durations import read_span_of_minutes
from sitegen.source.misread import Misread


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("3 min", single(3)),
        ("3min", single(3)),
        ("22-24 min", Span(Fraction(22), Fraction(24))),
        ("22 to 24 minutes", Span(Fraction(22), Fraction(24))),
        ("1 h", single(60)),
        ("1 h 30 min", single(90)),
        ("1½ h", single(90)),
        ("8-12 h", Span(Fraction(480), Fraction(720))),
        ("45 min-1 h 15 min", Span(Fraction(45), Fraction(75))),
        ("1 h to 1 h 15 min", Span(Fraction(60), Fraction(75))),
        ("2 days", single(2880)),
        ("30 s", single(Fraction(1, 2))),
    ],
)
def test_a_duration_is_minutes_exactly(text: str, minutes: Span) -> None:
    assert read_span_of_minutes(text) == minutes


@pytest.mark.parametrize(
    ("text", "code", "way_out"),
    [
        ("overnight", "duration", "say how long: '8-12 h'"),
        ("22-", "duration", "write `3 min`, `22-24 min`, `1 h 30 min`, `8-12 h` or `2 days`"),
        ("3", "duration", "write `3 min`, `22-24 min`, `1 h 30 min`, `8-12 h` or `2 days`"),
        ("3 weeks", "duration", "write `3 min`, `22-24 min`, `1 h 30 min`, `8-12 h` or `2 days`"),
        ("", "duration", "write it in minutes, hours or days, sixty days at most"),
        ("61 days", "duration", "write it in minutes, hours or days, sixty days at most"),
        ("1 h-30 min", "duration", "write the shorter time first: '45 min-1 h'"),
        ("1 h 5-10 min", "duration", "a range stands alone: '8-12 h'"),
        ("24-22 min", "backwards-range", "write '22-24'"),
        ("-5 min", "duration", "no time is less than none: write it without a minus"),
        ("−2 days", "duration", "no time is less than none: write it without a minus"),
        ("0 min", "not-a-number", "write how much it is"),
    ],
)
def test_what_no_clock_can_take_comes_with_a_way_out(text: str, code: str, way_out: str) -> None:
    with pytest.raises(Misread) as fault:
        read_span_of_minutes(text)
    assert (fault.value.code.code, fault.value.way_out) == (code, way_out)
