"""In how many goes something is added, as said, held against the text of the steps about."""

from collections.abc import Iterator, Sequence

from sitegen.film.attribution import Attributed
from sitegen.film.figures import span_text
from sitegen.film.marks import NOT_THIS_BAKE, About
from sitegen.film.repairs import is_warned
from sitegen.film.scene import Scene
from sitegen.film.spoken_amounts import Said, SpokenAmount
from sitegen.film.spoken_numbers import number_at
from sitegen.film.steps import FilmStep, words_of
from sitegen.film.values import Finding, FindingKind
from sitegen.film.vocabulary import SpokenWords
from sitegen.kitchen.amounts import Span
from sitegen.kitchen.method import Step

INTO = frozenset({"in", "into", "over"})
FAR_IN = 3
"""Words between 'in' and how many goes."""


def goes_findings(scene: Scene, said: Sequence[Attributed]) -> Iterator[Finding]:
    """'Beat them in in two goes', where the step writes another number of them."""
    for one in said:
        amount = one.amount
        if amount.what is not Said.BARE or amount.is_part or not _is_of_goes(scene, amount):
            continue
        if scene.about_in_clause(amount.begin) & (NOT_THIS_BAKE | About.BACK) or is_warned(scene, amount):
            continue
        near = scene.steps_about(amount.begin)
        written = [(step, span) for step in near for span in _written(step.step, scene.known)]
        if written and not any(_agrees(amount.span, span) for _, span in written):
            yield _differs(scene, amount, *written[0])


def _is_of_goes(scene: Scene, amount: SpokenAmount) -> bool:
    before = scene.words[max(0, amount.begin - FAR_IN) : amount.begin]
    return not scene.known.goes.isdisjoint(scene.words[amount.end : amount.end + 1]) and not INTO.isdisjoint(
        before
    )


def _written(step: Step, known: SpokenWords) -> Iterator[Span]:
    """The numbers of goes in a step's text."""
    prose = words_of(step)
    for index in range(1, len(prose)):
        number = number_at(prose, index) if prose[index - 1] in INTO else None
        if number is not None and number.end < len(prose) and prose[number.end] in known.goes:
            yield Span(number.low, number.high)


def _agrees(said: Span, written: Span) -> bool:
    """Whether one of them can be the other: 'four or five goes' for five."""
    return said.low <= written.high and written.low <= said.high


def _differs(scene: Scene, amount: SpokenAmount, step: FilmStep, written: Span) -> Finding:
    return Finding(
        kind=FindingKind.COUNT,
        about=scene.recipe.components[step.component].title,
        moment_s=scene.second(amount.begin),
        said=f"{span_text(amount.span)} {scene.words[amount.end]}",
        written=f"{span_text(written)} {scene.words[amount.end]}",
        certain=not amount.is_about,
        at=step.step.at,
    )
