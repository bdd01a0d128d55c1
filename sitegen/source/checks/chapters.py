"""The chapters of a film as a whole: from its start, rising, and such as players show.

What hosts of films ask of chapters is common practice: at least three, each of ten seconds or more.
"""

from collections.abc import Iterator
from itertools import pairwise

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.kitchen.recipe import Chapter, Recipe
from sitegen.kitchen.tables import Tables

LEAST_CHAPTERS = 3
"""Fewer are shown as none. Common practice."""
LEAST_SECONDS = 10
"""Of a chapter. Common practice."""
MOST_BYTES = 2_400
"""Of UTF-8, of all titles with their moments: half of what a video's description takes."""
_BESIDE_TITLE = len("0:00:00 \n")

NOT_FROM_START = FaultCode(
    "chapters-not-from-start",
    Severity.ERROR,
    "The first chapter begins later than the film, and a host then shows no chapter at all.",
    "Let the first begin at `0:00`.",
    good='"0:00 What we make"',
    bad='"0:20 What we make"',
)
NOT_RISING = FaultCode(
    "chapters-not-rising",
    Severity.ERROR,
    "A chapter begins no later than the one above it.",
    "Sort them by their moments.",
    good='"1:25 The sponge"',
    bad='"7:25 The sponge"',
)
TOO_MUCH = FaultCode(
    "chapters-too-long",
    Severity.ERROR,
    "The chapters together fill half of a video's description, which must hold the ingredients too.",
    "Shorten their titles, or join some.",
    good='"1:25 The sponge"',
    bad=", ".join(f'"{minute}:25 {"The sponge " * 9}"' for minute in range(1, 31)),
)
TOO_SHORT = FaultCode(
    "chapter-short",
    Severity.ADVICE,
    "A chapter is shorter than ten seconds, and hosts of films usually show no chapters then.",
    "Join it with its neighbour.",
    good='"1:25 The sponge"',
    bad='"0:09 The sponge"',
)
TOO_FEW = FaultCode(
    "chapters-few",
    Severity.ADVICE,
    "The film has one or two chapters; hosts of films usually show them from three on.",
    "Write one more, or none.",
    good=', "1:25 The sponge"',
    bad="",
)

CODES = (NOT_FROM_START, NOT_RISING, TOO_MUCH, TOO_SHORT, TOO_FEW)


def chapters_hold(recipe: Recipe, _tables: Tables) -> Iterator[Fault]:
    """What is wrong with the chapters of a film that has any."""
    chapters = recipe.video.chapters if recipe.video else ()
    if not chapters:
        return
    first = chapters[0]
    if first.seconds:
        yield NOT_FROM_START.fault(first.at, f"'{first.title}' does not begin at 0:00")
    for earlier, later in pairwise(chapters):
        yield from _after(earlier, later)
    if sum(len(chapter.title.encode()) + _BESIDE_TITLE for chapter in chapters) > MOST_BYTES:
        yield TOO_MUCH.fault(first.at, f"{len(chapters)} chapters take more than {MOST_BYTES} letters")
    if len(chapters) < LEAST_CHAPTERS:
        yield TOO_FEW.fault(first.at, f"{len(chapters)} of at least {LEAST_CHAPTERS} chapters")


def _after(earlier: Chapter, later: Chapter) -> Iterator[Fault]:
    seconds = later.seconds - earlier.seconds
    if seconds <= 0:
        yield NOT_RISING.fault(later.at, f"'{later.title}' begins no later than '{earlier.title}'")
    elif seconds < LEAST_SECONDS:
        yield TOO_SHORT.fault(later.at, f"'{earlier.title}' lasts {seconds} s before this one begins")


CHECKS = (chapters_hold,)
