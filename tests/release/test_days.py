"""Release days: who may see what on which day, by the school's own calendar."""

from datetime import UTC, date, datetime

import pytest

from sitegen.kitchen.recipe import PublicShows, Release
from sitegen.release.days import Standing, is_draft, school_day, standing

THURSDAY = date(2026, 7, 2)
FRIDAY = date(2026, 7, 3)
NEXT_FRIDAY = date(2026, 7, 10)
RELEASE = Release(FRIDAY, NEXT_FRIDAY, PublicShows.INGREDIENTS)


@pytest.mark.parametrize(
    ("day", "expected"),
    [
        (THURSDAY, Standing(subscribers=False, public=None)),
        (FRIDAY, Standing(subscribers=True, public=None)),
        (date(2026, 7, 9), Standing(subscribers=True, public=None)),
        (NEXT_FRIDAY, Standing(subscribers=True, public=PublicShows.INGREDIENTS)),
        (date(2031, 1, 1), Standing(subscribers=True, public=PublicShows.INGREDIENTS)),
    ],
)
def test_each_audience_sees_a_recipe_from_its_day_on(day: date, expected: Standing) -> None:
    assert standing(RELEASE, day) == expected


def test_a_recipe_without_a_public_date_is_never_public() -> None:
    only_subscribers = Release(FRIDAY, None, PublicShows.EVERYTHING)
    assert standing(only_subscribers, date(2099, 1, 1)).public is None


def test_subscribers_never_see_less_than_everyone() -> None:
    public_first = Release(NEXT_FRIDAY, FRIDAY, PublicShows.TEASER)
    assert standing(public_first, FRIDAY) == Standing(subscribers=True, public=PublicShows.TEASER)


def test_a_draft_is_out_for_nobody_on_any_day() -> None:
    draft = Release(None, None, PublicShows.EVERYTHING)
    assert is_draft(draft)
    assert not standing(draft, date(2099, 1, 1)).is_out


@pytest.mark.parametrize(
    ("moment", "zone", "day"),
    [
        # British Summer Time is an hour ahead of UTC: the release night begins at 23:00 UTC.
        (datetime(2026, 7, 2, 22, 59, tzinfo=UTC), "Europe/London", THURSDAY),
        (datetime(2026, 7, 2, 23, 0, tzinfo=UTC), "Europe/London", FRIDAY),
        # In winter London keeps UTC.
        (datetime(2026, 1, 2, 23, 30, tzinfo=UTC), "Europe/London", date(2026, 1, 2)),
        (datetime(2026, 7, 2, 14, 0, tzinfo=UTC), "Australia/Sydney", FRIDAY),
        (datetime(2026, 7, 3, 6, 59, tzinfo=UTC), "America/Los_Angeles", THURSDAY),
    ],
)
def test_the_day_turns_at_the_schools_midnight(moment: datetime, zone: str, day: date) -> None:
    assert school_day(moment, zone) == day
