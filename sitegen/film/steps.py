"""The steps of a recipe, and what a film says where it shows one of them."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor

from sitegen.film.spoken_numbers import number_at
from sitegen.film.vocabulary import SpokenWords
from sitegen.film.words import tokens
from sitegen.kitchen.method import Reference, RefKind, Step, Words
from sitegen.kitchen.recipe import Component, Recipe

OF_LINE, OF_COMPONENT, OF_WORK, OF_FIRST_WORK, OF_WORD, OF_UNTIL = 1.6, 1.2, 1.1, 0.8, 0.8, 0.6
OF_PART, OF_AMOUNT = 0.8, 0.8
OF_TITLE, OF_OVEN, OF_FULL, OF_TIME, OF_SAME = 0.5, 1.2, 1.4, 0.3, 1.3
"""What a thing in common weighs, before it is shared among the steps that have it. Tuned on films."""
SHORT_RANGE_MIN = 6
"""Of 38 to 44 minutes any may be said; of a longer range, mostly its ends."""
FEW = 3
"""A step that begins with no more things than these is known by its time as well."""
REST = ("rest", "")

Feature = tuple[str, object]


@dataclass(frozen=True)
class FilmStep:
    """A step with its place in the recipe: number of its component and in the component, both from 0."""

    component: int
    number: int
    step: Step


def steps_of(recipe: Recipe) -> tuple[FilmStep, ...]:
    """All steps of the recipe's own components, as written."""
    return tuple(
        FilmStep(place, number, step)
        for place, component in enumerate(recipe.components)
        for number, step in enumerate(component.steps)
    )


@dataclass(frozen=True)
class StepFeatures:
    """What a film says where it shows a step, with what each thing weighs. first: what it begins with."""

    weights: Mapping[Feature, float]
    first: frozenset[Feature]


class _Features:
    """Grows as a step is read."""

    def __init__(self) -> None:
        self.weights: dict[Feature, float] = {}
        self.first: set[Feature] = set()
        self.is_first = True

    def take(self, feature: Feature, weight: float) -> None:
        self.weights[feature] = max(self.weights.get(feature, 0.0), weight)
        if self.is_first:
            self.first.add(feature)


def step_features(recipe: Recipe, film_step: FilmStep, known: SpokenWords) -> StepFeatures:
    """What a film says where it shows the step: of its text in order, then of its other keys."""
    step, component = film_step.step, recipe.components[film_step.component]
    found = _Features()
    is_work_first = True
    for part in step.prose:
        if isinstance(part, Reference):
            _take_reference(found, part, film_step.component)
            _take_amount(found, part, component)
            continue
        for text in _sentences_of(part.text):
            for word in known.norms(tokens(text)):
                if word in known.works:
                    found.take(
                        ("work", known.works[word]), OF_WORK + (OF_FIRST_WORK if is_work_first else 0.0)
                    )
                    is_work_first = False
                elif word not in known.little and not word[:1].isdigit():
                    found.take(("word", word), OF_WORD)
            if text.endswith("."):
                found.is_first = False
    bake = ("work", known.works.get("bak"))
    found.is_first = bake in found.first
    if step.oven:
        found.take(("heat", ""), OF_OVEN)
        found.take(("degrees", step.oven.degrees), OF_SAME)
        found.take(bake, OF_WORK)
    found.is_first = found.is_first or len(found.first) <= FEW
    if step.heat == "fridge":
        found.take(("work", known.works.get("fridg")), OF_WORK)
    for minutes in times_of(step, known):
        found.take(("time", ""), OF_TIME)
        found.take(("minutes", minutes), OF_SAME)
    found.is_first = False
    if step.heat == "hob":
        found.take(("word", "pan"), OF_WORD)
    if step.fill:
        found.take(("full", ""), OF_FULL)
    for word in known.norms(tokens(step.until)):
        if word not in known.little and word not in known.works and not word[:1].isdigit():
            found.take(("word", word), OF_UNTIL)
    found.take(("title", component.title), OF_TITLE)
    return StepFeatures(found.weights, frozenset(found.first))


def _take_reference(found: _Features, reference: Reference, component: int) -> None:
    if reference.text.startswith("the rest of"):
        found.take(REST, OF_PART)
    elif 0 < reference.share < 1:
        found.take(("part", reference.share), OF_PART)
    if reference.line is not None:
        found.take(("line", (component, reference.line)), OF_LINE)
    if reference.kind is RefKind.COMPONENT:
        found.take(("component", reference.target), OF_COMPONENT)
    if reference.kind in (RefKind.TEMPERATURE, RefKind.OVEN):
        found.take(("heat", ""), OF_OVEN)
    if reference.amount is not None:
        found.take(("degrees", reference.amount.span.low), OF_SAME)


def _take_amount(found: _Features, reference: Reference, component: Component) -> None:
    """How much there is of what a step takes: 'icing sugar next | five hundred grams'."""
    line = component.lines[reference.line] if reference.line is not None else None
    if line is not None and line.amount is not None:
        found.take(("amount", (line.amount.unit, line.amount.span.low)), OF_AMOUNT)


def _sentences_of(text: str) -> list[str]:
    """A run of prose at its full stops, which stay where they stand."""
    parts = text.split(".")
    return [f"{part}." for part in parts[:-1]] + parts[-1:]


def words_of(step: Step) -> tuple[str, ...]:
    """The words of a step's text, as `words.tokens` cuts them, without what stands in braces."""
    return tokens(" ".join(part.text for part in step.prose if isinstance(part, Words)))


def times_of(step: Step, known: SpokenWords) -> Iterator[object]:
    """The minutes that a step names: of its wait, of a short range each, and of its text."""
    if step.wait_min:
        low, high = step.wait_min.low, step.wait_min.high
        between = range(ceil(low), floor(high) + 1) if high - low <= SHORT_RANGE_MIN else ()
        yield from {low, high, *map(Fraction, between)}
    prose = words_of(step)
    for index in range(len(prose)):
        number = number_at(prose, index)
        if number is not None and number.end < len(prose) and prose[number.end] in known.minutes:
            yield number.high * known.minutes[prose[number.end]]
