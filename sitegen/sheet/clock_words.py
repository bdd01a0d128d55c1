"""Minutes of a plan as its clock is printed: on the wall of a day, or counted from the start of the work."""

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from fractions import Fraction

from sitegen.kitchen.editions import Edition
from sitegen.sheet.days import WEEKDAYS, weekday_text
from sitegen.timing.hours import clock


@dataclass(frozen=True)
class PlanClock:
    """begins: the hour at which the plan's clock stands at 0, with its time zone; None without an hour."""

    begins: datetime | None = None

    def hour(self, minute: Fraction) -> datetime | None:
        """The hour of a minute, true across a change of clocks, to the second."""
        return None if self.begins is None else hours_after(self.begins, minute)

    def on_wall(self, minute: Fraction) -> str:
        """'14:05', or '' without an hour."""
        hour = self.hour(minute)
        return f"{nearest_minute(hour):%H:%M}" if hour else ""

    def told(self, minute: Fraction, since: Fraction = Fraction(0)) -> str:
        """'14:05'; '07:10 on Saturday' where `since` was another day; '+1:25' without an hour."""
        hour, before = self.hour(minute), self.hour(since)
        if hour is None or before is None:
            return clock(minute)
        hour, before = nearest_minute(hour), nearest_minute(before)
        day = "" if hour.date() == before.date() else f" on {WEEKDAYS[hour.weekday()]}"
        return f"{hour:%H:%M}{day}"


def hours_after(hour: datetime, minutes: Fraction) -> datetime:
    """An hour so many minutes later, by the sun: the wall may have been changed in between."""
    return (hour.astimezone(UTC) + timedelta(seconds=round(minutes * 60))).astimezone(hour.tzinfo)


def nearest_minute(hour: datetime) -> datetime:
    """As the wall shows it: whole minutes, halves up."""
    return hours_after(hour, Fraction(1, 2)).replace(second=0, microsecond=0)


def hour_text(hour: datetime | None, edition: Edition) -> str:
    """'10:40, Saturday 5 December 2026'; '' for none."""
    if hour is None:
        return ""
    hour = nearest_minute(hour)
    return f"{hour:%H:%M}, {weekday_text(hour.date(), edition)}"
