"""Minutes as readers and machines write them."""

from fractions import Fraction

MINUTES_IN_HOUR = 60
MINUTES_IN_DAY = 24 * 60


def iso_duration(minutes: Fraction) -> str:
    """A duration as ISO 8601 writes it: 65 -> 'PT1H5M', 1,500 -> 'P1DT1H', 0 -> 'PT0M'.

    minutes: not negative; rounded to whole minutes, halves up.
    Source: ISO 8601-1:2019, 5.5.2.
    """
    whole = int(minutes + Fraction(1, 2))
    days, rest = divmod(whole, MINUTES_IN_DAY)
    hours, left = divmod(rest, MINUTES_IN_HOUR)
    date_part = f"{days}D" if days else ""
    time_part = (f"{hours}H" if hours else "") + (f"{left}M" if left else "")
    if not date_part and not time_part:
        return "PT0M"
    return f"P{date_part}" + (f"T{time_part}" if time_part else "")


def clock(minutes: Fraction) -> str:
    """Time since the work began, as '0:00' or '+1:25'."""
    hours, left = divmod(int(minutes + Fraction(1, 2)), MINUTES_IN_HOUR)
    return f"+{hours}:{left:02d}" if hours or left else "0:00"
