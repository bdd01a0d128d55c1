"""How far a sentence speaks of a step: what they share, and how few other steps share it."""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import sqrt

from sitegen.film.names import LineKey, Mention
from sitegen.film.sentences import About, Sentence
from sitegen.film.spoken_amounts import Said, SpokenAmount
from sitegen.film.spoken_numbers import number_at
from sitegen.film.vocabulary import SpokenWords
from sitegen.film.words import tokens
from sitegen.kitchen.method import Reference, RefKind, Step, Words
from sitegen.kitchen.recipe import Recipe

OF_LINE, OF_COMPONENT, OF_WORK, OF_FIRST_WORK, OF_WORD, OF_UNTIL = 1.6, 1.2, 1.1, 0.8, 0.8, 0.6
OF_TITLE, OF_OVEN, OF_FULL, OF_TIME, OF_SAME = 0.5, 1.2, 1.4, 0.3, 1.3
"""What a thing in common weighs, before it is shared among the steps that have it. Tuned on films."""
SAID_BEFORE = 0.3
"""What is left of the weight of what was said in the sentences just before."""
SENTENCES_BACK = 5
IDLE, IDLE_WORD = 0.3, 0.02
"""What each sentence of a stretch costs, and each word: a step does not reach over talk of something else."""
ELSEWHERE = {
    About.ASIDE: 0.25,
    About.ADVICE: 0.6,
    About.OTHER_BATCH: 0.3,
    About.AHEAD: 0.5,
    About.BACK: 0.7,
    About.LIST: 0.3,
}
"""What is left of a match in a sentence that speaks of something else."""
LISTED_AT_WORK = 0.8
NOT_THE_WORK = About.ASIDE | About.OTHER_BATCH | About.ADVICE | About.LIST | About.AHEAD
FEW = 3
"""A step that begins with no more things than these is known by its time as well."""
MOST = 5.0
"""A sentence is no surer of a step than this, however long it is."""

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
    if reference.line is not None:
        found.take(("line", (component, reference.line)), OF_LINE)
    if reference.kind is RefKind.COMPONENT:
        found.take(("component", reference.target), OF_COMPONENT)
    if reference.kind in (RefKind.TEMPERATURE, RefKind.OVEN):
        found.take(("heat", ""), OF_OVEN)
    if reference.amount is not None:
        found.take(("degrees", reference.amount.span.low), OF_SAME)


def _sentences_of(text: str) -> list[str]:
    """A run of prose at its full stops, which stay where they stand."""
    parts = text.split(".")
    return [f"{part}." for part in parts[:-1]] + parts[-1:]


def times_of(step: Step, known: SpokenWords) -> Iterator[object]:
    """The minutes that a step names, both ends of a range: of its wait, and of its text."""
    if step.wait_min:
        yield from {step.wait_min.low, step.wait_min.high}
    prose = tokens(" ".join(part.text for part in step.prose if isinstance(part, Words)))
    for index in range(len(prose)):
        number = number_at(prose, index)
        if number is not None and number.end < len(prose) and prose[number.end] in known.minutes:
            yield number.high * known.minutes[prose[number.end]]


@dataclass(frozen=True)
class Match:
    """How far a sentence speaks of each step, 0 and more; first: of what the step begins with."""

    whole: tuple[float, ...]
    first: tuple[float, ...]


class Evidence:
    """The matches of a film's sentences with a recipe's steps."""

    def __init__(self, recipe: Recipe, known: SpokenWords) -> None:
        self.steps = steps_of(recipe)
        self._known = known
        self._recipe = recipe
        features = [step_features(recipe, step, known) for step in self.steps]
        shared = Counter(feature for own in features for feature in own.weights)
        self._by_feature: dict[Feature, list[tuple[int, float, bool]]] = {}
        for index, own in enumerate(features):
            for feature, weight in own.weights.items():
                rare = weight / sqrt(shared[feature])
                self._by_feature.setdefault(feature, []).append((index, rare, feature in own.first))

    def matches(
        self,
        found: Sequence[Sentence],
        norms: Sequence[str],
        mentions: Sequence[Mention],
        amounts: Sequence[SpokenAmount],
    ) -> tuple[Match, ...]:
        """For each sentence, how far it speaks of each step."""
        by_word_m = {mention.begin: mention for mention in mentions}
        by_word_a = {amount.begin: amount for amount in amounts}
        recent: list[set[Feature]] = []
        rows = []
        for sentence in found:
            said = self._said(sentence, norms, by_word_m, by_word_a)
            is_work = any(kind == "work" for kind, _ in said)
            before = set().union(*recent[-SENTENCES_BACK:]) if recent else set()
            row, first = [0.0] * len(self.steps), [0.0] * len(self.steps)
            heard_here: set[Feature] = set()
            for feature, word in said.items():
                about = sentence.about_at(word)
                weight = _left(about, is_work) * (SAID_BEFORE if feature in before else 1.0)
                for step, own, is_first in self._by_feature.get(feature, ()):
                    row[step] += own * weight
                    if is_first:
                        first[step] += own * weight
                if is_work and not about & NOT_THE_WORK:
                    heard_here.add(feature)
            rows.append(Match(tuple(min(value, MOST) for value in row), tuple(first)))
            recent.append(heard_here)
        return tuple(rows)

    def _said(
        self,
        sentence: Sentence,
        norms: Sequence[str],
        mentions: Mapping[int, Mention],
        amounts: Mapping[int, SpokenAmount],
    ) -> dict[Feature, int]:
        """What a sentence has in common with any step, and the word by which it was told last."""
        found: dict[Feature, int] = {}
        works = self._known.works
        index = sentence.begin
        while index < sentence.end:
            if index in amounts:
                found.update(dict.fromkeys(_of_amount(amounts[index], norms), index))
            for phrase, work in self._known.work_phrases.items():
                if phrase == tuple(norms[index : index + len(phrase)]):
                    found["work", work] = index
            if index in mentions:
                mention = mentions[index]
                found.update(dict.fromkeys(_of_mention(mention), index))
                if not mention.name.lines:
                    own = (word for word in norms[index : mention.end] if word in works)
                    found.update({("work", works[word]): index for word in own})
                index = mention.end
                continue
            word = norms[index]
            if word in works:
                found["work", works[word]] = index
            elif word not in self._known.little:
                found["word", word] = index
            index += 1
        return found


def _of_amount(amount: SpokenAmount, norms: Sequence[str]) -> Iterator[Feature]:
    if amount.what is Said.TIME:
        yield ("time", "")
        yield ("minutes", amount.span.low)
        yield ("minutes", amount.span.high)
    elif amount.what is Said.TEMPERATURE:
        yield ("heat", "")
        yield ("degrees", amount.span.low)
    elif amount.is_part and "full" in norms[amount.end : amount.end + 2]:
        yield ("full", "")


def _of_mention(mention: Mention) -> Iterator[Feature]:
    lines: frozenset[LineKey] = mention.name.full or mention.name.lines
    for line in lines:
        yield ("line", line)
    for title in mention.name.components:
        yield ("component", title)
        yield ("title", title)


def _left(about: About, is_work: bool) -> float:
    """What is left of a match where something else is spoken of; work makes a list none."""
    shares = [share for kind, share in ELSEWHERE.items() if kind in about and kind is not About.LIST]
    if About.LIST in about:
        shares.append(LISTED_AT_WORK if is_work else ELSEWHERE[About.LIST])
    return min(shares, default=1.0)
