"""The times that a step writes: its wait, those in its text, its limits; each with the work that it is of."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from sitegen.faults import Place
from sitegen.film.spoken_numbers import number_at
from sitegen.film.steps import FilmStep, words_of
from sitegen.film.vocabulary import SpokenWords
from sitegen.film.words import tokens
from sitegen.kitchen.amounts import Span, single

LEAVE = "leav"
"""The stem of the work that any wait is."""
FAR_WORK = 16
"""Words before a time in which the work is said that it is of."""


@dataclass(frozen=True)
class WrittenTime:
    """span: minutes. works: numbers of the works that it is of. is_wait: whether it is its step's wait."""

    span: Span
    works: frozenset[int]
    step: FilmStep
    at: Place
    is_wait: bool


def times_of_step(film_step: FilmStep, known: SpokenWords) -> Iterator[WrittenTime]:
    """The times of a step: its wait, and those in its text, each with the works that it belongs to."""
    step = film_step.step
    prose = words_of(step)
    norms = known.norms(prose)
    works = frozenset(known.works[word] for word in norms if word in known.works)
    if step.wait_min is not None:
        until = known.norms(tokens(step.until))
        waits = [LEAVE, *(word for word in until if word in known.works)]
        waits += ["bak"] if step.oven else []
        waits += ["fridg"] if step.heat == "fridge" else []
        own = works | {known.works[stem] for stem in waits if stem in known.works}
        yield WrittenTime(step.wait_min, own, film_step, step.wait_at, True)
    index = 0
    while index < len(prose):
        number = number_at(prose, index)
        minutes = known.minutes.get(prose[number.end]) if number and number.end < len(prose) else None
        if number is not None and minutes is not None:
            span = Span(number.low, number.high).times(minutes)
            named = _works_before(norms, index, known) or works
            yield WrittenTime(span, named, film_step, step.at, False)
        index = number.end if number is not None else index + 1
    for limit in (step.within_min, step.holds_min):
        if limit is not None:
            yield WrittenTime(single(limit), frozenset(), film_step, step.at, False)


def _works_before(norms: Sequence[str], index: int, known: SpokenWords) -> frozenset[int]:
    """The work that a written time is of: what stands last before it."""
    for before in range(index - 1, max(0, index - FAR_WORK) - 1, -1):
        works = known.works_at(norms, before)
        if works:
            return works
    return frozenset()
