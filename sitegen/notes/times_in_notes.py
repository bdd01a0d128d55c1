"""Times in the words of notes: '50-55 mins', 'an hour and a half', '1 1/2 hrs' -> '50-55 min', '1 1/2 h'."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from sitegen.notes.figures import NoFigure, minutes_text
from sitegen.notes.number_patterns import NUMBER, RANGE, number_word, number_words
from sitegen.notes.word_table import any_of, note_words
from sitegen.source.durations import MINUTES, read_span_of_minutes
from sitegen.source.misread import Misread

_LEADS = ("for", "only", "just", "another", "a further", "further", "a")
"""What stands before a time and is cut out with it, beside the words that say how near it is."""


@dataclass(frozen=True)
class TimeSaid:
    """text: as our format reads it. start: of the figure. lead: of 'for about'. end: behind 'or so'."""

    text: str
    start: int
    end: int
    lead: int


@cache
def _pattern() -> re.Pattern[str]:
    units = any_of(unit for unit in MINUTES if unit != "s")
    part = rf"(?:{RANGE}|\b(?:{number_word()})) ?-?(?:{units})\b\.?"
    lead = rf"(?:\b(?:{any_of((*note_words().near, *_LEADS))})\b\.?\s+)*"
    more = rf"(?:(?: and)? {NUMBER} ?(?:min|mins|minutes|minute|sec|secs|seconds)\b\.?"
    more = rf"{more}|(?<=h|r|s) [1-5]\d(?![\d°%]| ?(?:g|ml|c|cm)\b))?"
    return re.compile(
        rf"(?P<lead>{lead})(?P<time>{part}{more}(?: ?(?:-|–|to) ?{part}{more})?(?P<half> and a half)?)"
        r"(?: more| approx\b\.?| or so)?",
        re.IGNORECASE,
    )


def times_in(text: str) -> Iterator[TimeSaid]:
    """Every time of a text that can be put on a clock, in order."""
    for found in _pattern().finditer(text):
        if text[found.end() : found.end() + 1].isalnum():
            continue
        written = _written(found["time"])
        if written:
            yield TimeSaid(written, found.start("time"), found.end(), found.start("lead"))


def _written(time: str) -> str:
    """The time as our format reads it, in its own units; '' for what is none."""
    words = time.casefold().replace(".", "." if re.search(r"\d\.\d", time) else " ")
    words = re.sub(r"(?<=\d) ?[–—] ?(?=\d)", "-", words).replace("-min", " min").replace("-hour", " hour")
    words = re.sub(r"((?:h|hr|hrs|hour|hours)) (\d\d)$", r"\1 \2 min", words.strip())
    half = "and a half" in words
    words = words.replace("and a half", "").replace(" and ", " ")
    words = re.sub(rf"\b(?:{number_word()})\b", lambda said: number_words()[said[0]], words)
    try:
        span = read_span_of_minutes(" ".join(words.split()).strip(" ."))
        more = (
            read_span_of_minutes("30 min" if "hour" in words or "hr" in words else "30 s") if half else None
        )
        if more:
            span = type(span)(span.low + more.low, span.high + more.high)
        return minutes_text(span)
    except (Misread, NoFigure):
        return ""
