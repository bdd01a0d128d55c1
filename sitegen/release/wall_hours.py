"""Hours on the wall that a cook names, where clocks change: some never come, some come twice."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

from sitegen.release.asking import NotAsked
from sitegen.source.day_hours import read_day_hour, read_rest
from sitegen.source.misread import Misread
from sitegen.timing.rested import Rest

MOST_YEARS = 10
_STEP = timedelta(minutes=1)


def hour_asked(text: str, now: datetime, zone: ZoneInfo) -> datetime:
    """The hour of '2026-12-05 16:00' or 'Saturday 16:00' on the wall of a time zone. now: aware.

    Raises NotAsked for what is no hour, for one that a change of clocks leaves out, and for another age.
    """
    way_out = "write it as '2026-12-05 16:00' or 'Saturday 16:00'"
    try:
        hour = read_day_hour(text.strip()).after(now, zone)
    except Misread as problem:
        raise NotAsked(problem.sentence, way_out) from problem
    if abs(hour.year - now.year) > MOST_YEARS:
        raise NotAsked(f"'{text}' is too far from today for a plan", way_out)
    return on_the_wall(hour)


def rest_asked(text: str) -> Rest:
    """The nights of '22:00-07:00'. Raises NotAsked."""
    try:
        return read_rest(text.strip())
    except Misread as problem:
        raise NotAsked(problem.sentence, "write it as '22:00-07:00'") from problem


def on_the_wall(hour: datetime) -> datetime:
    """The same hour, where the clocks of its zone ever show it; of two such the first.

    Raises NotAsked for an hour that is left out when clocks go forward, with the next that there is.
    """
    first = hour.replace(fold=0)
    if _is_shown(first):
        return first
    following = first
    while not _is_shown(following):
        following += _STEP
    raise NotAsked(
        f"there is no {hour:%H:%M} on {hour:%Y-%m-%d}: clocks go forward then",
        f"the next hour is {following:%H:%M}",
    )


def comes_twice(hour: datetime) -> bool:
    """Whether clocks show this hour twice, because they go back in between."""
    return _is_shown(hour) and hour.replace(fold=0).utcoffset() != hour.replace(fold=1).utcoffset()


def _is_shown(hour: datetime) -> bool:
    """Whether an hour there and back by the sun is still the same on the wall."""
    back = hour.astimezone(UTC).astimezone(hour.tzinfo)
    return back.replace(tzinfo=None, fold=0) == hour.replace(tzinfo=None, fold=0)
