"""Whose amount it is: each spoken figure with its name, without those that are taken back."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import islice

from sitegen.film.names import Mention
from sitegen.film.repairs import JOINED, repaired
from sitegen.film.scene import Scene
from sitegen.film.spoken_amounts import Said, SpokenAmount
from sitegen.film.stems import stem

FAR_BEFORE = 8
"""Words between a name and an amount of it that is said later."""
FAR_OF_IT = 20
"""The same where the amount is said to be 'of it'."""
FAR_YIELD = 3
"""Words between 'makes' and how much."""
FAR_AGAIN = 6
"""Words between an amount and the same said again."""
PEOPLE = frozenset({"people", "children", "men", "women"})
LEAST_PLURAL = 3
"""Letters of a word below which its s is no ending."""
IMPLIED_GRAMS = 10
"""From here on a bare figure beside an ingredient is meant in grams: 'butter, a hundred and thirty'."""
OF_THEM = frozenset({"it", "them", "these", "those", "that", "this"})
POINTING = frozenset({"that's", "it's", "weighs"})
METRIC_WEIGHTS = frozenset({"g", "kg"})
CONVERTED = frozenset({"is", "or", "that's", "which", "about"})
"""Words with which the same amount is said again in other units."""
FALLING_UNITS = (
    ("l", "pint", "cup", "stick", "dl", "floz", "cl", "tbsp", "dsp", "tsp", "ml", "pinch"),
    ("kg", "lb", "oz", "g"),
)
"""Of one amount the larger unit is said first."""


@dataclass(frozen=True)
class Attributed:
    """One figure of a film. parts: amounts that are said as one ('a cup and two tablespoons').

    mention: the name that it is of; None where none is said near. sure: whether the two stand together.
    """

    parts: tuple[SpokenAmount, ...]
    mention: Mention | None
    sure: bool

    @property
    def amount(self) -> SpokenAmount:
        return self.parts[0]


def attributed(scene: Scene) -> tuple[Attributed, ...]:
    """All figures that stand, from left to right."""
    kept = tuple(repaired(scene))
    found: list[Attributed] = []
    for parts, inherited in _joined(scene, kept):
        mention, sure = _mention_of(scene, parts, found)
        if mention is None and inherited is not None:
            mention, sure = inherited, True
        found.append(Attributed(parts, mention, sure))
    return tuple(found)


def _joined(
    scene: Scene, kept: Sequence[tuple[SpokenAmount, Mention | None]]
) -> Iterator[tuple[tuple[SpokenAmount, ...], Mention | None]]:
    """Amounts that are said as one: 'a cup and two tablespoons', 'a pound and 2 ounces'."""
    group: list[SpokenAmount] = []
    inherited: Mention | None = None
    before: SpokenAmount | None = None
    for amount, mention in kept:
        if group and _goes_on(scene, group[-1], amount):
            if before is not None and _is_again(before, group[0]):
                group.clear()
            group.append(amount)
            continue
        if group:
            yield tuple(group), inherited
            before = group[-1]
        group, inherited = [amount], mention
    if group:
        yield tuple(group), inherited


def _goes_on(scene: Scene, last: SpokenAmount, amount: SpokenAmount) -> bool:
    between = scene.words[last.end : amount.begin]
    is_joined = 0 < len(between) <= 2 and JOINED.issuperset(between)
    return is_joined and any(
        last.unit in units and amount.unit in units[units.index(last.unit) + 1 :] for units in FALLING_UNITS
    )


def _is_again(before: SpokenAmount, amount: SpokenAmount) -> bool:
    """'A spoon of ginger, a whole spoon, and half a teaspoon of salt': the second is the first said again."""
    is_same = (before.span, before.unit) == (amount.span, amount.unit)
    return is_same and amount.begin - before.end <= FAR_AGAIN


def _mention_of(
    scene: Scene, parts: Sequence[SpokenAmount], found: Sequence[Attributed]
) -> tuple[Mention | None, bool]:
    first, last = parts[0], parts[-1]
    behind = scene.named_behind(last.end)
    before = None if _is_yield(scene, first) else _before(scene, first, found)
    if is_of_them(scene, last):
        before = before or _far_before(scene, first, found)
        if before is not None:
            return before, True
    if behind is not None and before is not None and before.end == first.begin:
        between = scene.words[last.end : behind.begin]
        if between and between[0] != "of" and first.what is Said.MEASURE:
            return before, True
    if behind is not None:
        return behind, True
    if before is None and _points_back(scene, first):
        before = _far_before(scene, first, found)
    if before is None:
        return None, False
    gap = first.begin - before.end
    if first.what is Said.BARE and first.is_part:
        return None, False
    if first.what is Said.BARE:
        is_one_of_many = before.begin > 0 and scene.words[before.begin - 1] == "and"
        is_amount = first.span.low >= IMPLIED_GRAMS and gap <= 4 and not is_one_of_many
        between = scene.words[before.end : first.begin]
        is_joined = all(word in scene.known.between or stem(word) in scene.known.little for word in between)
        is_amount = is_amount and is_joined and not _counts_something(scene, first)
        return (before, False) if is_amount else (None, False)
    return before, gap <= 3


def _is_yield(scene: Scene, amount: SpokenAmount) -> bool:
    """'the pastry cream makes seven hundred and forty': what comes out is no amount of what goes in."""
    return scene.known.yields.ends_near(scene.words, amount.begin - FAR_YIELD, amount.begin, FAR_YIELD - 1)


def _counts_something(scene: Scene, amount: SpokenAmount) -> bool:
    """'forty jars': a figure before a plural that nobody weighs by."""
    word = scene.words[amount.end] if amount.end < len(scene.words) else ""
    return word in PEOPLE or (
        word.endswith("s")
        and len(word) > LEAST_PLURAL
        and stem(word) not in scene.known.little
        and word not in scene.known.between
    )


def is_of_them(scene: Scene, amount: SpokenAmount) -> bool:
    """'three of them', '180 grams of it'."""
    behind = scene.words[amount.end : amount.end + 2]
    return len(behind) == 2 and behind[0] == "of" and behind[1] in OF_THEM


def _points_back(scene: Scene, amount: SpokenAmount) -> bool:
    """'I have unwrapped a pack and a half, so that is three hundred grams': of what was named last."""
    is_metric = amount.what is Said.MEASURE and amount.unit in METRIC_WEIGHTS
    return is_metric and not POINTING.isdisjoint(scene.words[max(0, amount.begin - 1) : amount.begin])


def _far_before(scene: Scene, amount: SpokenAmount, found: Sequence[Attributed]) -> Mention | None:
    """The ingredient that 'two hundred grams of it' goes back to: the last one that was named at all."""
    if amount.what is Said.BARE and amount.span.low < IMPLIED_GRAMS:
        return None
    named = (each for each in scene.mentions_before(amount.begin) if not each.name.doubtful)
    for mention in islice(named, 1):
        is_free = mention.name.lines and not any(other.mention is mention for other in found[-3:])
        if is_free and amount.begin - mention.end <= FAR_OF_IT:
            return mention
    return None


def _before(scene: Scene, amount: SpokenAmount, found: Sequence[Attributed]) -> Mention | None:
    """The name that was said last before an amount, in its own sentence, and has no other amount since."""
    sentence = scene.sentence_at(amount.begin)
    if sentence.goes_on:
        sentence = scene.sentence_at(sentence.begin - 1)
    for mention in scene.mentions_before(amount.begin):
        if mention.begin < sentence.begin or amount.begin - mention.end > FAR_BEFORE:
            return None
        if mention.name.doubtful or not (mention.name.lines or mention.name.row):
            continue
        has_its_own = not amount.is_part and any(
            other.mention is mention and not other.amount.is_part for other in found[-3:]
        )
        is_same = CONVERTED.intersection(scene.words[mention.end : amount.begin])
        return None if has_its_own and not is_same else mention
    return None
