"""Hours of a day as a kitchen writes them: '2026-12-05 09:00', 'Saturday 09:00', nights as '22:00-07:00'."""

import re
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from sitegen.faults import FaultCode, Severity
from sitegen.source.misread import Misread

BAD_HOUR = FaultCode(
    "bad-hour",
    Severity.ERROR,
    "An hour that no wall clock shows, or one without its day.",
    "Write it as `2026-12-05 09:00`, or as `Saturday 09:00` for the next one.",
    good="ready-by: Saturday 09:00",
    bad="ready-by: nine on Saturday",
    file="order.yaml",
)
BAD_REST = FaultCode(
    "bad-rest",
    Severity.ERROR,
    "The hours in which nobody works are two hours of the wall, and leave some of the day.",
    "Write them as `22:00-07:00`.",
    good="rest: 22:00-04:00",
    bad="rest: at night",
    file="order.yaml",
)
CODES = (BAD_HOUR, BAD_REST)

_WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_HOUR = re.compile(
    rf"(?:(?P<day>\d{{4}}-\d{{2}}-\d{{2}})[ T]|(?P<weekday>{'|'.join(_WEEKDAYS)}) +(?:at +)?)"
    r"(?P<clock>\d{1,2}:\d{2})",
    re.IGNORECASE,
)
_REST = re.compile(r"(\d{1,2}:\d{2}) ?[-–] ?(\d{1,2}:\d{2})")
DAYS_IN_WEEK = 7


@dataclass(frozen=True)
class DayHour:
    """An hour of a certain day, or of a day of the week (0 for Monday); the other is None."""

    clock: time
    day: date | None = None
    weekday: int | None = None

    def after(self, now: datetime, zone: ZoneInfo) -> datetime:
        """The hour itself, on the wall of a time zone; of a weekday the next one after `now`. now: aware."""
        here = now.astimezone(zone)
        if self.day is not None:
            return datetime.combine(self.day, self.clock, zone)
        ahead = ((self.weekday or 0) - here.weekday()) % DAYS_IN_WEEK
        found = datetime.combine(here.date() + timedelta(days=ahead), self.clock, zone)
        return found if found > here else found + timedelta(days=DAYS_IN_WEEK)


def read_day_hour(text: str) -> DayHour:
    """'2026-12-05 09:00' or 'Saturday 09:00'. Raises Misread."""
    found = _HOUR.fullmatch(text)
    clock = _clock(found["clock"]) if found else None
    if found is None or clock is None:
        raise _misread(BAD_HOUR, text, f"'{text}' is no hour of a day")
    if found["weekday"]:
        return DayHour(clock, weekday=_WEEKDAYS.index(found["weekday"].casefold()))
    try:
        return DayHour(clock, day=date.fromisoformat(found["day"]))
    except ValueError as problem:
        raise _misread(BAD_HOUR, text, f"'{found['day']}' is a day that no calendar has") from problem


def read_rest(text: str) -> tuple[time, time]:
    """'22:00-07:00': between which hours nobody works. Raises Misread."""
    found = _REST.fullmatch(text)
    begins, ends = (_clock(found[1]), _clock(found[2])) if found else (None, None)
    if begins is None or ends is None:
        raise _misread(BAD_REST, text, f"'{text}' is no night")
    if begins == ends:
        raise _misread(BAD_REST, text, f"'{text}' leaves no hour to work in")
    return begins, ends


def _clock(text: str) -> time | None:
    """'9:00' -> nine; None for what no clock shows."""
    hour, _, minute = text.partition(":")
    return time(int(hour), int(minute)) if int(hour) < 24 and int(minute) < 60 else None


def _misread(code: FaultCode, text: str, sentence: str) -> Misread:
    return Misread(code, sentence, "", 0, max(len(text), 1))
