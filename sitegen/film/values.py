"""A line of captions, and, from the kitchen, what is read from all of them."""

from dataclasses import dataclass

from sitegen.kitchen.filmed import FilmReading, Finding, FindingKind, StepMoment

__all__ = ["Cue", "FilmReading", "Finding", "FindingKind", "StepMoment"]


@dataclass(frozen=True)
class Cue:
    """A line of captions: what is heard from `begins_s` to `ends_s`, seconds from the film's start.

    text: in one line, without markup.
    """

    begins_s: float
    ends_s: float
    text: str
