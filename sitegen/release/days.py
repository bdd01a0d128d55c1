"""Who may see what on which day: pure functions, the clock comes in as an argument."""

from dataclasses import dataclass
from datetime import date, datetime
from zoneinfo import ZoneInfo

from sitegen.kitchen.recipe import PublicShows, Release


@dataclass(frozen=True)
class Standing:
    """What each audience may see of one recipe on one day.

    subscribers: True where they see the whole. public: what everyone sees, None for nothing.
    """

    subscribers: bool
    public: PublicShows | None

    @property
    def is_out(self) -> bool:
        """True where at least one audience sees something."""
        return self.subscribers or self.public is not None


def school_day(now: datetime, time_zone: str) -> date:
    """The date on the school's wall calendar.

    now: an aware moment in any zone. time_zone: an IANA name that was checked when it was read.
    """
    return now.astimezone(ZoneInfo(time_zone)).date()


def standing(release: Release, day: date) -> Standing:
    """Who may see what on a day, the release day itself included.

    Subscribers never see less than everyone: a recipe that is public is theirs too.
    """
    public = release.public_shows if _has_come(release.public, day) else None
    return Standing(_has_come(release.subscribers, day) or public is not None, public)


def is_draft(release: Release) -> bool:
    """True for a recipe that no day will ever publish."""
    return release.subscribers is None and release.public is None


def _has_come(release_day: date | None, day: date) -> bool:
    return release_day is not None and release_day <= day
