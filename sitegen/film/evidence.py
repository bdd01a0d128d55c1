"""How far a sentence speaks of a step: what they share, and how few other steps share it."""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import sqrt

from sitegen.film.marks import JOINTS, About
from sitegen.film.names import LineKey, Mention
from sitegen.film.phrases import Phrases
from sitegen.film.sentences import Sentence
from sitegen.film.spoken_amounts import Said, SpokenAmount
from sitegen.film.steps import REST, Feature, step_features, steps_of
from sitegen.film.vocabulary import SpokenWords
from sitegen.kitchen.recipe import Recipe

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
    About.LISTING: 0.6,
}
"""What is left of a match in a sentence that speaks of something else."""
LISTS = About.LIST | About.LISTING
WARNED = 0.2
"""What is left of a match behind 'do not'."""
FAR_WARNING = 6
LISTED_AT_WORK = 0.8
NOT_THE_WORK = About.ASIDE | About.OTHER_BATCH | About.ADVICE | About.LIST | About.AHEAD
MOST = 5.0
"""A sentence is no surer of a step than this, however long it is."""

FULL = frozenset({"full", "ful", "filled", "fill"})
UP = frozenset({"way", "up"})


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
        self._title = Phrases.of([recipe.title], known.norm)
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
        words: Sequence[str],
        mentions: Sequence[Mention],
        amounts: Sequence[SpokenAmount],
    ) -> tuple[Match, ...]:
        """For each sentence, how far it speaks of each step. words: as they are heard."""
        norms = self._known.norms(words)
        by_word_m = {mention.begin: mention for mention in mentions}
        by_word_a = {amount.begin: amount for amount in amounts}
        recent: list[set[Feature]] = []
        rows = []
        for sentence in found:
            said = self._said(sentence, norms, by_word_m, by_word_a)
            is_work = any(kind == "work" for kind, _ in said)
            has_amount = not by_word_a.keys().isdisjoint(range(sentence.begin, sentence.end))
            warned = set(self._known.warnings.within(words, sentence.begin, sentence.end))
            before = set().union(*recent[-SENTENCES_BACK:]) if recent else set()
            row, first = [0.0] * len(self.steps), [0.0] * len(self.steps)
            heard_here: set[Feature] = set()
            for feature, word in said.items():
                about = sentence.about_at(word)
                if feature[0] == "amount" and about & NOT_THE_WORK:
                    continue
                weight = _left(about, is_work, has_amount) * (SAID_BEFORE if feature in before else 1.0)
                if any(_is_warned(words, begin, word) for begin in warned):
                    weight *= WARNED
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
            if (titled := self._title.at(norms, index)) > 1:
                index += titled
                continue
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
            if word == "rest" and norms[index - 1 : index] == ("the",):
                found[REST] = index
            elif word in works:
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
    elif amount.what is Said.MEASURE:
        yield ("amount", (amount.unit, amount.span.low))
    elif amount.is_part and is_fill(amount, norms):
        yield ("full", "")
    elif amount.is_part:
        yield ("part", amount.span.low)


def is_fill(amount: SpokenAmount, words: Sequence[str]) -> bool:
    """Whether a part is that of a tin: 'two thirds full', 'half way up the sides'."""
    behind = words[amount.end : amount.end + 4]
    return bool(FULL.intersection(behind[:2])) or (
        "up" in behind
        and UP.issuperset(word for word in behind[: behind.index("up")] if word not in ("of", "the"))
    )


def _of_mention(mention: Mention) -> Iterator[Feature]:
    lines: frozenset[LineKey] = mention.name.full or mention.name.lines
    for line in lines:
        yield ("line", line)
    for title in mention.name.components:
        yield ("component", title)
        yield ("title", title)


def _is_warned(words: Sequence[str], warning: int, word: int) -> bool:
    """'Do not let it sweat | and on to a rack with it': what is forbidden ends where a clause begins."""
    return 0 < word - warning <= FAR_WARNING and JOINTS.isdisjoint(words[warning:word])


def _left(about: About, is_work: bool, has_amount: bool) -> float:
    """What is left of a match where something else is spoken of; work makes a list none.

    'There's prunes in it' is none without an amount, and says as little.
    """
    shares = [share for kind, share in ELSEWHERE.items() if kind in about and kind not in LISTS]
    if About.LIST in about:
        shares.append(LISTED_AT_WORK if is_work else ELSEWHERE[About.LIST])
    if About.LISTING in about and not is_work and not has_amount:
        shares.append(ELSEWHERE[About.LISTING])
    return min(shares, default=1.0)
