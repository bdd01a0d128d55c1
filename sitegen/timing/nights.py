"""Nights off, as minutes on a plan's own clock."""

from collections.abc import Iterable, Iterator
from datetime import UTC, datetime, time, timedelta
from fractions import Fraction

from sitegen.timing.kitchens import Night

FORTNIGHT = 14


def nights_before(ready_by: datetime, begins: time, ends: time, days: int = FORTNIGHT) -> tuple[Night, ...]:
    """The nights of the days before an hour, on a clock that stands at 0 then.

    ready_by: with its time zone. begins, ends: hours on the wall; a night that ends at or before it begins
    ends the next day. A night in which clocks change is an hour longer or shorter, as it is for the cook.
    """
    nights = _nights(ready_by, begins, ends, range(-days, 1))
    now = Fraction(0)
    return tuple(Night(one.start_min, min(one.end_min, now)) for one in nights if one.start_min < now)


def nights_after(start: datetime, begins: time, ends: time, days: int = FORTNIGHT) -> tuple[Night, ...]:
    """The same for the days after an hour; a night that has begun is what is left of it."""
    nights = _nights(start, begins, ends, range(-1, days + 1))
    now = Fraction(0)
    return tuple(Night(max(one.start_min, now), one.end_min) for one in nights if one.end_min > now)


def _nights(hour: datetime, begins: time, ends: time, days: Iterable[int]) -> Iterator[Night]:
    """The nights that begin so many days from the day of an hour."""
    for count in days:
        day = hour.date() + timedelta(days=count)
        morning = day if ends > begins else day + timedelta(days=1)
        start = datetime.combine(day, begins, hour.tzinfo)
        yield Night(_minutes(start, hour), _minutes(datetime.combine(morning, ends, hour.tzinfo), hour))


def _minutes(then: datetime, hour: datetime) -> Fraction:
    """Minutes from an hour to another, by the sun: differences across a change of clocks are true ones."""
    return Fraction(int((then.astimezone(UTC) - hour.astimezone(UTC)).total_seconds()), 60)
