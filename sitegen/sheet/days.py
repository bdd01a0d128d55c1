"""Days as a region writes them."""

from datetime import date

from sitegen.kitchen.editions import Edition

MONTHS = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)
WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")


def day_text(day: date, edition: Edition) -> str:
    """'20 July 2026', or 'July 20, 2026' in American English."""
    if edition.language == "en-US":
        return f"{MONTHS[day.month - 1]} {day.day}, {day.year}"
    return f"{day.day} {MONTHS[day.month - 1]} {day.year}"


def weekday_text(day: date, edition: Edition) -> str:
    """'Monday 20 July 2026', or 'Monday, July 20, 2026' in American English."""
    comma = "," if edition.language == "en-US" else ""
    return f"{WEEKDAYS[day.weekday()]}{comma} {day_text(day, edition)}"
