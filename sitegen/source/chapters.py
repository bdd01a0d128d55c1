"""A chapter of a film: '1:25 The sponge' -> the second at which it begins, and its title."""

import re

from sitegen.faults import FaultCode, Place, Severity
from sitegen.kitchen.recipe import Chapter
from sitegen.source.misread import Misread

BAD_MOMENT = FaultCode(
    "chapter-moment",
    Severity.ERROR,
    "A moment of the film is written in minutes and seconds, in a long one hours too.",
    "Write `0:00 What we make`, `12:05 The glaze` or `1:02:30 To finish`.",
    good='"1:25 The sponge"',
    bad='"85 s The sponge"',
)
NO_TITLE = FaultCode(
    "chapter-without-title",
    Severity.ERROR,
    "A chapter has a moment and no title, so that nobody knows what begins there.",
    "Write the title behind the moment, as in `1:25 The sponge`.",
    good='"1:25 The sponge"',
    bad='"1:25"',
)

CODES = (BAD_MOMENT, NO_TITLE)

_OF_HOURS = re.compile(r"([0-9]{1,2}):([0-5][0-9]):([0-5][0-9])")
_OF_MINUTES = re.compile(r"([0-9]{1,3}):([0-5][0-9])")


def read_chapter(text: str, at: Place) -> Chapter:
    """'1:25 The sponge' -> 85 seconds. Raises Misread.

    A title is one line, whatever the file's own lines are.
    """
    moment, *words = text.split() or [""]
    seconds = seconds_of(moment)
    if seconds is None:
        sentence = f"'{moment}' is no moment of a film"
        way_out = (
            "write minutes and seconds, as in '1:25 The sponge', or hours before them: '1:02:30 To finish'"
        )
        raise Misread(BAD_MOMENT, sentence, way_out, 0, max(len(moment), 1))
    if not words:
        raise Misread(NO_TITLE, f"nothing is written behind '{moment}'", "", 0, len(moment))
    return Chapter(seconds, " ".join(words), at)


def read_moment(text: str, _at: Place) -> int:
    """'2:31' -> 151 seconds. Raises Misread."""
    seconds = seconds_of(text)
    if seconds is None:
        way_out = "write minutes and seconds, as in '2:31', or hours before them: '1:02:30'"
        raise Misread(BAD_MOMENT, f"'{text}' is no moment of a film", way_out, 0, max(len(text), 1))
    return seconds


def seconds_of(moment: str) -> int | None:
    """Seconds from the film's start; None for what no player shows."""
    if found := _OF_HOURS.fullmatch(moment):
        hours, minutes, seconds = map(int, found.groups())
        return (hours * 60 + minutes) * 60 + seconds
    if found := _OF_MINUTES.fullmatch(moment):
        minutes, seconds = map(int, found.groups())
        return minutes * 60 + seconds
    return None
