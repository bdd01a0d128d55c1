"""Times in the words of notes: '50-55 mins', 'an hour and a half', '1 1/2 hrs' -> '50-55 min', '1 1/2 h'."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from sitegen.notes.amounts_in_notes import NUMBER, RANGE
from sitegen.notes.figures import NoFigure, minutes_text
from sitegen.notes.word_table import note_words
from sitegen.source.durations import MINUTES, read_span_of_minutes
from sitegen.source.misread import Misread


@dataclass(frozen=True)
class TimeSaid:
    """text: as our format reads it. start, end: of figure and unit. lead: where 'for about' begins."""

    text: str
    start: int
    end: int
    lead: int


@cache
def _pattern() -> re.Pattern[str]:
    units = "|".join(sorted((unit for unit in MINUTES if unit != "s"), key=len, reverse=True))
    worded = "|".join(sorted(map(re.escape, note_words().numbers), key=len, reverse=True))
    part = rf"(?:{RANGE}|\b(?:{worded})) ?-?(?:{units})\b\.?"
    near = "about|approx\\.?|approximately|around|roughly|at least|up to|only|just"
    words = f"for|{near}|another|a further|further|a"
    lead = rf"(?:\b(?:{words})\s+)*"
    more = rf"(?:(?: and)? {NUMBER} ?(?:min|mins|minutes|minute|sec|secs|seconds)\b\.?"
    more = rf"{more}|(?<=h|r|s) [1-5]\d(?![\d°%]| ?(?:g|ml|c|cm)\b))?"
    return re.compile(
        rf"(?P<lead>{lead})(?P<time>{part}{more}(?P<half> and a half)?)(?: more)?",
        re.IGNORECASE,
    )


def times_in(text: str) -> Iterator[TimeSaid]:
    """Every time of a text that can be put on a clock, in order."""
    for found in _pattern().finditer(text):
        if text[found.end() : found.end() + 1].isalnum():
            continue
        written = _written(found["time"])
        if written:
            yield TimeSaid(written, found.start("time"), found.end("time"), found.start("lead"))


def _written(time: str) -> str:
    """The time as our format reads it, in its own units; '' for what is none."""
    words = time.casefold().replace(".", "." if re.search(r"\d\.\d", time) else " ")
    words = re.sub(r"(?<=\d) ?[–—] ?(?=\d)", "-", words).replace("-min", " min").replace("-hour", " hour")
    words = re.sub(r"((?:h|hr|hrs|hour|hours)) (\d\d)$", r"\1 \2 min", words.strip())
    half = "and a half" in words
    words = words.replace("and a half", "").replace(" and ", " ")
    for said in sorted(note_words().numbers, key=len, reverse=True):
        words = re.sub(rf"\b{re.escape(said)}\b", note_words().numbers[said], words, count=1)
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
