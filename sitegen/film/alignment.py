"""The monotone alignment of sentences and steps: one dynamic programme over scored matches. Pure.

Each step takes a stretch of sentences or none; the stretches keep the order of the steps and do not overlap.
A sentence between two stretches belongs to none. The sum of the matches is as high as it can be.
"""

from collections.abc import Sequence
from dataclasses import dataclass

NOWHERE = float("-inf")


@dataclass(frozen=True)
class Stretch:
    """The sentences [begin, end) that one step takes, and what they score."""

    step: int
    begin: int
    end: int
    score: float


@dataclass(frozen=True)
class Alignment:
    """score: of all stretches. stretches: of those steps that have any, in order."""

    score: float
    stretches: tuple[Stretch, ...]


def align(matches: Sequence[Sequence[float]], entries: Sequence[Sequence[float]], steps: int) -> Alignment:
    """The best monotone alignment.

    matches: [sentence][step], what a sentence scores within the step's stretch; below 0 where it does not
    speak of it. entries: [sentence][step], what it scores beside where it is the first of the stretch;
    minus infinity where it cannot be. steps: how many. Time and room: sentences times steps.

    best[step] is the best score of all stretches so far where the last one is of a step up to this one and
    is over; open[step] where the stretch of this step goes on.
    """
    best = [0.0] * (steps + 1)
    open_ = [NOWHERE] * steps
    began: list[list[bool]] = []
    closed: list[list[int]] = []
    for sentence, row in enumerate(matches):
        entry = entries[sentence]
        new_open = [NOWHERE] * steps
        new_best = [0.0] * (steps + 1)
        began_row, closed_row = [False] * steps, [0] * (steps + 1)
        for step in range(steps):
            started = best[step] + entry[step] + row[step]
            continued = open_[step] + row[step]
            began_row[step] = started > continued
            new_open[step] = started if started > continued else continued
            # 0: left to the step before; 1: was over before this sentence; 2: this sentence is its last.
            value, how = best[step + 1], 1
            if new_best[step] > value:
                value, how = new_best[step], 0
            if new_open[step] > value:
                value, how = new_open[step], 2
            new_best[step + 1], closed_row[step + 1] = value, how
        best, open_ = new_best, new_open
        began.append(began_row)
        closed.append(closed_row)
    return Alignment(best[steps], _traced(matches, entries, began, closed, steps))


def _traced(
    matches: Sequence[Sequence[float]],
    entries: Sequence[Sequence[float]],
    began: Sequence[Sequence[bool]],
    closed: Sequence[Sequence[int]],
    steps: int,
) -> tuple[Stretch, ...]:
    found: list[Stretch] = []
    sentence, step = len(matches) - 1, steps
    while sentence >= 0 and step > 0:
        how = closed[sentence][step]
        if how == 0:
            step -= 1
        elif how == 1:
            sentence -= 1
        else:
            end = sentence + 1
            while not began[sentence][step - 1]:
                sentence -= 1
            score = entries[sentence][step - 1] + sum(matches[at][step - 1] for at in range(sentence, end))
            found.append(Stretch(step - 1, sentence, end, score))
            sentence, step = sentence - 1, step - 1
    return tuple(reversed(found))
