"""Hours of a day and nights, as a kitchen writes them."""

from datetime import UTC, date, datetime, time
from zoneinfo import ZoneInfo

import pytest

from sitegen.source.day_hours import DayHour, read_day_hour, read_rest
from sitegen.source.misread import Misread

LONDON = ZoneInfo("Europe/London")
WEDNESDAY = datetime(2026, 11, 25, 13, tzinfo=UTC)


@pytest.mark.parametrize(
    ("text", "hour"),
    [
        ("2026-12-05 09:00", DayHour(time(9), day=date(2026, 12, 5))),
        ("2026-12-05T09:00", DayHour(time(9), day=date(2026, 12, 5))),
        ("2026-12-05 9:30", DayHour(time(9, 30), day=date(2026, 12, 5))),
        ("Saturday 09:00", DayHour(time(9), weekday=5)),
        ("saturday at 16:45", DayHour(time(16, 45), weekday=5)),
    ],
)
def test_an_hour_has_a_date_or_a_weekday(text: str, hour: DayHour) -> None:
    assert read_day_hour(text) == hour


@pytest.mark.parametrize(
    "text",
    ["09:00", "2026-12-05", "2026-12-05 24:00", "2026-12-05 09:60", "2026-02-30 09:00", "5/12/2026 09:00"],
)
def test_an_hour_that_no_wall_shows_is_refused(text: str) -> None:
    with pytest.raises(Misread) as problem:
        read_day_hour(text)
    assert problem.value.code.code == "bad-hour"


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Saturday 09:00", "2026-11-28T09:00:00+00:00"),
        ("Wednesday 14:00", "2026-11-25T14:00:00+00:00"),
        ("Wednesday 13:00", "2026-12-02T13:00:00+00:00"),
        ("Wednesday 09:00", "2026-12-02T09:00:00+00:00"),
        ("2026-07-01 09:00", "2026-07-01T09:00:00+01:00"),
    ],
)
def test_a_weekday_is_the_next_one_on_the_schools_own_wall(text: str, found: str) -> None:
    assert read_day_hour(text).after(WEDNESDAY, LONDON).isoformat() == found


def test_a_weekday_counts_from_the_day_where_the_school_is() -> None:
    """23:30 on Friday in London is Saturday 10:30 in Sydney."""
    late = datetime(2026, 11, 27, 23, 30, tzinfo=UTC)
    found = read_day_hour("Saturday 12:00").after(late, ZoneInfo("Australia/Sydney"))
    assert found.date() == date(2026, 11, 28)


@pytest.mark.parametrize("text", ["22:00-07:00", "22:00 - 07:00", "22:00–7:00"])
def test_a_night_is_two_hours_of_the_wall(text: str) -> None:
    assert read_rest(text) == (time(22), time(7))


@pytest.mark.parametrize("text", ["at night", "22:00", "22:00-24:00", "22-07", "22:00-22:00"])
def test_a_night_that_is_none_is_refused(text: str) -> None:
    with pytest.raises(Misread) as problem:
        read_rest(text)
    assert problem.value.code.code == "bad-rest"
