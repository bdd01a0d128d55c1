"""Hours on the wall, where clocks change."""

from datetime import UTC, datetime, time
from zoneinfo import ZoneInfo

import pytest

from sitegen.release.asking import NotAsked
from sitegen.release.wall_hours import comes_twice, hour_asked, rest_asked

LONDON = ZoneInfo("Europe/London")
WEDNESDAY = datetime(2026, 11, 25, 12, tzinfo=UTC)


def refused(text: str) -> tuple[str, str]:
    with pytest.raises(NotAsked) as problem:
        hour_asked(text, WEDNESDAY, LONDON)
    return problem.value.sentence, problem.value.way_out


@pytest.mark.parametrize(
    ("text", "hour"),
    [
        ("2026-12-05 16:00", datetime(2026, 12, 5, 16, tzinfo=LONDON)),
        (" 2026-12-05T9:05 ", datetime(2026, 12, 5, 9, 5, tzinfo=LONDON)),
        ("Saturday 16:00", datetime(2026, 11, 28, 16, tzinfo=LONDON)),
    ],
)
def test_an_hour_is_one_of_the_schools_own_wall(text: str, hour: datetime) -> None:
    assert hour_asked(text, WEDNESDAY, LONDON) == hour


@pytest.mark.parametrize("text", ["tea", "16:00", "2026-12-05", "2026-13-05 16:00", "2026-12-05 25:00", ""])
def test_what_is_no_hour_comes_with_the_form(text: str) -> None:
    assert refused(text)[1] == "write it as '2026-12-05 16:00' or 'Saturday 16:00'"


@pytest.mark.parametrize("text", ["0001-01-01 00:00", "9999-12-31 23:59", "2037-01-01 09:00"])
def test_another_age_is_refused(text: str) -> None:
    assert "too far from today" in refused(text)[0]


def test_an_hour_that_spring_leaves_out_is_refused_with_the_next() -> None:
    """Clocks in London went from 01:00 to 02:00 on 29 March 2026, and do again on 28 March 2027."""
    assert refused("2027-03-28 01:30") == (
        "there is no 01:30 on 2027-03-28: clocks go forward then",
        "the next hour is 02:00",
    )
    assert hour_asked("2027-03-28 02:00", WEDNESDAY, LONDON).astimezone(UTC).hour == 1
    assert hour_asked("2027-03-28 00:59", WEDNESDAY, LONDON).astimezone(UTC).hour == 0


def test_of_an_hour_that_comes_twice_the_first_is_meant() -> None:
    hour = hour_asked("2027-10-31 01:30", WEDNESDAY, LONDON)
    assert comes_twice(hour)
    assert hour.astimezone(UTC) == datetime(2027, 10, 31, 0, 30, tzinfo=UTC)
    assert not comes_twice(hour_asked("2027-10-31 02:30", WEDNESDAY, LONDON))


def test_nights_are_two_hours_of_the_wall() -> None:
    assert rest_asked("22:00-07:00") == (time(22), time(7))
    for text in ("22-7", "at night", "22:00-22:00", "25:00-07:00"):
        with pytest.raises(NotAsked):
            rest_asked(text)
