"""What a recipe's film tells: where its steps begin, what is said otherwise, the chapters that follow."""

from dataclasses import dataclass
from enum import StrEnum

from sitegen.faults import Place
from sitegen.kitchen.amounts import at_place

OPENING = "What we make"
"""The chapter before the first step."""
LEAST_CHAPTERS = 3
"""Fewer are shown as none. Common practice."""
LEAST_CHAPTER_S = 10
"""Shorter ones are joined with their neighbour: hosts of films show none then. Common practice."""


@dataclass(frozen=True)
class StepMoment:
    """Where a step begins on film, whole seconds from its start.

    component: its title; step: its number there, from 1. sure: 0 to 1, how far the words point at this step.
    """

    component: str
    step: int
    begins_s: int
    sure: float = 1.0


class FindingKind(StrEnum):
    """How a film and a recipe can differ."""

    AMOUNT = "amount"
    TEMPERATURE = "temperature"
    TIME = "time"
    COUNT = "count"
    SHARE = "share"
    UNSAID = "unsaid"
    ADDED = "added"


@dataclass(frozen=True)
class Finding:
    """What is said otherwise than it is written.

    about: whose figure it is: an ingredient's name, 'oven', or the title of a component.
    moment_s: when it is said; None for what is never said.
    said, written: as a reader would write them ('180 g', '170 g'); '' where one of them is missing.
    certain: False where the words leave it open, or may be meant of something else.
    at: the line of the recipe; of what no line has, the component in which it is added.
    """

    kind: FindingKind
    about: str
    moment_s: int | None
    said: str
    written: str
    certain: bool
    at: Place = at_place()


@dataclass(frozen=True)
class FilmReading:
    """What a film tells. moments: of the steps that were found, as the film has them.

    findings: the certain first. steps: how many the recipe has. words: how many were heard.
    """

    moments: tuple[StepMoment, ...] = ()
    findings: tuple[Finding, ...] = ()
    steps: int = 0
    words: int = 0

    @property
    def follows_recipe(self) -> bool:
        """Whether the film talks through the recipe: half of its steps are found, or more and less surely."""
        return self.steps > 0 and 2 * sum(moment.sure for moment in self.moments) >= self.steps

    def begins_s(self, component: str, step: int) -> int | None:
        """Where a step begins, as readers may be told; None where it is not known.

        step: its number in its component, from 1.
        """
        if not self.follows_recipe:
            return None
        found = (each.begins_s for each in self.moments if (each.component, each.step) == (component, step))
        return next(found, None)


@dataclass(frozen=True)
class SaidOtherwise:
    """A finding that the baker has read and decided against.

    moment_s: about when it is said, None for what is never said. about: words of the finding.
    """

    about: str
    reason: str
    moment_s: int | None = None
    at: Place = at_place()


def moment_text(seconds: int) -> str:
    """As players show it: '0:00', '12:05', '1:02:30'."""
    minutes, seconds = divmod(seconds, 60)
    hours, minutes = divmod(minutes, 60)
    return f"{hours}:{minutes:02}:{seconds:02}" if hours else f"{minutes}:{seconds:02}"


def chapter_starts(film: FilmReading) -> tuple[tuple[int, str], ...]:
    """(second, title) of the chapters that follow from where the steps begin: an opening, one a component.

    The first begins at 0, and none is shorter than ten seconds. Nothing for a film that does not talk through
    the recipe, or where one would be too few for the hosts of films to show.
    """
    if not film.follows_recipe:
        return ()
    first: dict[str, int] = {}
    for moment in sorted(film.moments, key=lambda moment: moment.begins_s):
        first.setdefault(moment.component, moment.begins_s)
    starts: list[tuple[int, str]] = []
    for title, second in first.items():
        if not starts:
            opens = second >= LEAST_CHAPTER_S
            starts += [(0, OPENING), (second, title)] if opens else [(0, title)]
        elif second - starts[-1][0] >= LEAST_CHAPTER_S:
            starts.append((second, title))
    return tuple(starts) if len(starts) >= LEAST_CHAPTERS else ()
