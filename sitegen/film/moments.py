"""Where each step begins on film."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from sitegen.film.alignment import NOWHERE, Alignment, Stretch, align
from sitegen.film.evidence import IDLE, IDLE_WORD, Evidence, Match
from sitegen.film.marks import NOT_THIS_BAKE, About
from sitegen.film.sentences import Sentence
from sitegen.film.steps import FilmStep

LEAST_MATCH, LEAST_ALONE = 1.15, 0.6
"""What a sentence must have in common with a step to begin it: with half of the next one's, and alone."""
NO_MATCH = Match((), ())
OF_FIRST, MOST_FIRST = 1.0, 2.0
"""What the first sentence of a step should have of what the step begins with, and what more is worth."""
OPENS = 0.6
"""What an opening word adds to the first sentence of a step."""
FAR_INTRODUCTION_S, LEAST_NAMED, SURELY_NAMED = 12.0, 0.1, 0.5
"""A step is named at most so long before its first work, and something of it is said there; without a word
that leads on to something new, of what it begins with."""
BY_FAR = 2.0
"""How much better another order must fit than the one that is written."""
SURE = 5.0
"""A stretch of this score is as sure as can be."""


def aligned(rows: Sequence[Match], found: Sequence[Sentence], order: Sequence[int]) -> Alignment:
    """The alignment of sentences with steps in the order in which the film may show them.

    rows: of each sentence, as `Evidence.matches` gives them. order: numbers of steps.
    """
    matches = [
        [row.whole[step] - IDLE - IDLE_WORD * (sentence.end - sentence.begin) for step in order]
        for row, sentence in zip(rows, found, strict=True)
    ]
    following = [*rows[1:], NO_MATCH]
    entries = [
        [
            _entry(row.whole[step], row.first[step], after.whole[step] if after.whole else 0.0, sentence)
            for step in order
        ]
        for row, after, sentence in zip(rows, following, found, strict=True)
    ]
    return align(matches, entries, len(order))


def _entry(match: float, first: float, after: float, sentence: Sentence) -> float:
    """What a sentence scores beside as the first of a step. after: the match of the one behind it."""
    if match < LEAST_ALONE or match + after / 2 < LEAST_MATCH:
        return NOWHERE
    bonus = OPENS if sentence.opens else 0.0
    return bonus + min(first, MOST_FIRST) - OF_FIRST - (1.0 if sentence.about & NOT_THIS_BAKE else 0.0)


@dataclass(frozen=True)
class FoundStep:
    """A step with the word at which it begins on film. sure: 0 to 1."""

    film_step: FilmStep
    begin: int
    sure: float


def found_steps(
    evidence: Evidence, rows: Sequence[Match], found: Sequence[Sentence]
) -> tuple[FoundStep, ...]:
    """The steps that the film shows, in its order.

    A film may show the components in another order than the recipe, or begin one while another bakes: of the
    orders that keep each component's own, the one that fits best by far is taken, else the recipe's.
    """
    order, alignment = _best(rows, found, evidence.steps)
    steps = []
    ended: int = 0
    last: int | None = None
    for stretch in alignment.stretches:
        step = order[stretch.step]
        begin = _without_last(stretch, step, rows, last)
        first = _introduced(begin, step, last, rows, found, ended)
        sure = min(1.0, max(0.0, stretch.score / SURE))
        steps.append(FoundStep(evidence.steps[step], found[first].begin, sure))
        ended, last = stretch.end, step
    return tuple(steps)


def _without_last(stretch: Stretch, step: int, rows: Sequence[Match], last: int | None) -> int:
    """The first sentence of a stretch that speaks of its step more than of the one before. last: that one."""
    for index in range(stretch.begin, stretch.end):
        is_of_last = last is not None and rows[index].whole[last] > rows[index].whole[step]
        if not is_of_last and rows[index].whole[step] >= LEAST_ALONE:
            return index
    return stretch.begin


def _introduced(
    begin: int,
    step: int,
    last: int | None,
    rows: Sequence[Match],
    found: Sequence[Sentence],
    ended: int,
) -> int:
    """The sentence with which a step begins: 'now for the custard', where that stands just before it.

    last: the step before. ended: the first sentence that is not of that. An aside may follow in one breath
    with it: 'now get your tin, my mother's was bigger'.
    """
    for index in range(begin - 1, ended - 1, -1):
        before, whole = found[index], rows[index].whole
        if found[begin].begins_s - before.begins_s > FAR_INTRODUCTION_S:
            break
        is_new = before.opens or rows[index].first[step] >= SURELY_NAMED
        about = before.about & ~About.ASIDE | before.about_at(before.begin, in_clause=True)
        is_new = is_new and not about & (NOT_THIS_BAKE | About.AHEAD | About.LIST)
        is_named = whole[step] >= LEAST_NAMED and (last is None or whole[step] > whole[last])
        if is_new and is_named:
            return index
    return begin


def _best(
    rows: Sequence[Match], found: Sequence[Sentence], steps: Sequence[FilmStep]
) -> tuple[Sequence[int], Alignment]:
    order: Sequence[int] = range(len(steps))
    best = aligned(rows, found, order)
    for other in _orders(rows, found, steps):
        alignment = aligned(rows, found, other)
        if alignment.score > best.score + BY_FAR:
            order, best = other, alignment
    return order, best


def _orders(
    rows: Sequence[Match], found: Sequence[Sentence], steps: Sequence[FilmStep]
) -> Iterator[list[int]]:
    """Other orders of the steps: by where each component lies on its own, and by where each step does."""
    own: dict[int, list[int]] = {}
    for index, step in enumerate(steps):
        own.setdefault(step.component, []).append(index)
    if len(own) == 1:
        return
    centres: dict[int, float] = {}
    begins: dict[int, float] = {}
    for component, indices in own.items():
        stretches = aligned(rows, found, indices).stretches
        weight = sum(stretch.score for stretch in stretches)
        centres[component] = (
            sum(stretch.begin * stretch.score for stretch in stretches) / weight if weight > 0 else len(rows)
        )
        at = {indices[stretch.step]: float(stretch.begin) for stretch in stretches}
        last = min(at.values(), default=float(len(rows)))
        for index in indices:
            last = begins[index] = max(last, at.get(index, last))
    yield sorted(range(len(steps)), key=lambda index: (centres[steps[index].component], index))
    yield sorted(range(len(steps)), key=lambda index: (begins[index], index))
