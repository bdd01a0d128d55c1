"""Durations as machines and clocks write them."""

from fractions import Fraction

import pytest

from sitegen.timing.hours import clock, iso_duration


@pytest.mark.parametrize(
    ("minutes", "written"),
    [
        (0, "PT0M"),
        (3, "PT3M"),
        (60, "PT1H"),
        (65, "PT1H5M"),
        (24 * 60, "P1D"),
        (25 * 60 + 1, "P1DT1H1M"),
    ],
)
def test_iso_8601_duration(minutes: int, written: str) -> None:
    """ISO 8601-1:2019, 5.5.2: P, days, T, hours, minutes; parts of nothing are left out."""
    assert iso_duration(Fraction(minutes)) == written


@pytest.mark.parametrize(("minutes", "text"), [(0, "0:00"), (5, "+0:05"), (85, "+1:25"), (1500, "+25:00")])
def test_clock_counts_from_the_start_of_the_work(minutes: int, text: str) -> None:
    assert clock(Fraction(minutes)) == text
