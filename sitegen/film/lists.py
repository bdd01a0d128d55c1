"""Where somebody reads out what is wanted before any work: told by its shape, whatever leads up to it."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from sitegen.film.marks import About, Mark
from sitegen.film.names import LineKey, Mention
from sitegen.film.sentences import Sentence
from sitegen.film.spoken_amounts import Said, SpokenAmount
from sitegen.film.steps import FilmStep, steps_of
from sitegen.kitchen.recipe import Recipe

FAR_NAME = 4
"""Words between an amount and its ingredient."""
FAR_NEXT = 10
"""Words between an ingredient of a list and the amount of the next."""
LEAST_STEPS = 3
"""Whoever names amounts of so many steps in a row does not work at them."""
LEAST_SHARE = 2
"""A list has at least one in so many of the recipe's lines."""


def with_lists(
    recipe: Recipe, found: Sequence[Sentence], mentions: Sequence[Mention], amounts: Sequence[SpokenAmount]
) -> tuple[Sentence, ...]:
    """The sentences, those of a list read out and those before it marked as such."""
    ends = [
        names[-1].end
        for names in _runs(found, mentions, amounts)
        if _is_of_all(recipe, {line for name in names for line in name.name.full or name.name.lines})
    ]
    last = max(ends, default=0)
    return tuple(
        replace(
            sentence,
            marks=(*sentence.marks, Mark(sentence.begin, About.LIST)),
            about=sentence.about | About.LIST,
        )
        if sentence.begin < last
        else sentence
        for sentence in found
    )


def _runs(
    found: Sequence[Sentence], mentions: Sequence[Mention], amounts: Sequence[SpokenAmount]
) -> Iterator[list[Mention]]:
    """Ingredients with their amounts, one after the other, no work asked for between them."""
    works = {work for sentence in found for work in sentence.works}
    by_begin = {mention.begin: mention for mention in mentions if mention.name.lines}
    run: list[Mention] = []
    for amount in amounts:
        if amount.what not in (Said.MEASURE, Said.BARE):
            continue
        name = next((by_begin[at] for at in range(amount.end, amount.end + FAR_NAME) if at in by_begin), None)
        if name is None:
            continue
        gap = range(run[-1].end, amount.begin) if run else range(0)
        if run and (len(gap) > FAR_NEXT or not works.isdisjoint(gap)):
            yield run
            run = []
        run.append(name)
    if run:
        yield run


def _is_of_all(recipe: Recipe, lines: set[LineKey]) -> bool:
    """Whether lines are of many steps, and of a good part of the recipe."""
    of_steps = _steps_by_line(recipe)
    steps = {(step.component, step.number) for line in lines for step in of_steps.get(line, ())[:1]}
    count = sum(len(component.lines) for component in recipe.components)
    return len(steps) >= LEAST_STEPS and len(lines) * LEAST_SHARE >= count


def _steps_by_line(recipe: Recipe) -> Mapping[LineKey, list[FilmStep]]:
    found: dict[LineKey, list[FilmStep]] = {}
    for step in steps_of(recipe):
        for reference in step.step.references:
            if reference.line is not None:
                found.setdefault((step.component, reference.line), []).append(step)
    return found
