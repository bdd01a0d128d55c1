"""Nights off before an hour."""

from datetime import datetime, time
from fractions import Fraction
from itertools import pairwise
from zoneinfo import ZoneInfo

from sitegen.timing.nights import nights_after, nights_before

LONDON = ZoneInfo("Europe/London")
BED, UP = time(22), time(7)


def test_the_night_before_is_counted_back_from_the_hour() -> None:
    last = nights_before(datetime(2026, 12, 5, 16, tzinfo=LONDON), BED, UP)[-1]
    assert (last.start_min, last.end_min) == (-18 * 60, -9 * 60)


def test_nights_stand_in_order_and_never_touch() -> None:
    nights = nights_before(datetime(2026, 12, 5, 16, tzinfo=LONDON), BED, UP)
    assert all(one.end_min < other.start_min for one, other in pairwise(nights))


def test_a_night_that_has_begun_ends_with_the_hour() -> None:
    last = nights_before(datetime(2026, 12, 5, 23, tzinfo=LONDON), BED, UP)[-1]
    assert (last.start_min, last.end_min) == (-60, 0)


def test_the_night_of_the_spring_change_is_an_hour_shorter() -> None:
    last = nights_before(datetime(2026, 3, 29, 12, tzinfo=LONDON), BED, UP)[-1]
    assert last.end_min - last.start_min == Fraction(8 * 60)


def test_the_night_of_the_autumn_change_is_an_hour_longer() -> None:
    last = nights_before(datetime(2026, 10, 25, 12, tzinfo=LONDON), BED, UP)[-1]
    assert last.end_min - last.start_min == Fraction(10 * 60)


def test_a_rest_within_one_day() -> None:
    last = nights_before(datetime(2026, 12, 5, 16, tzinfo=LONDON), time(12), time(13))[-1]
    assert (last.start_min, last.end_min) == (-4 * 60, -3 * 60)


def test_the_night_after_an_hour() -> None:
    first = nights_after(datetime(2026, 12, 5, 16, tzinfo=LONDON), BED, UP)[0]
    assert (first.start_min, first.end_min) == (6 * 60, 15 * 60)


def test_who_begins_in_the_night_waits_for_what_is_left_of_it() -> None:
    first = nights_after(datetime(2026, 12, 5, 5, tzinfo=LONDON), BED, UP)[0]
    assert (first.start_min, first.end_min) == (0, 2 * 60)
