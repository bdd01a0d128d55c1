"""Whose amount it is: each spoken figure with its name, without those that are taken back."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from sitegen.film.names import Mention
from sitegen.film.phrases import Phrases
from sitegen.film.scene import Scene
from sitegen.film.spoken_amounts import Said, SpokenAmount
from sitegen.film.stems import stem
from sitegen.kitchen.amounts import Span

FAR_BEHIND = 5
"""Words that may stand between an amount and the name behind it, all of them small."""
FAR_BEFORE = 8
"""Words between a name and an amount of it that is said later."""
FAR_REPAIR = 14
"""Words between a figure and the one that takes its place."""
FAR_WARNING = 8
"""Words between 'do not' and what is not to be done, none of them a new subject."""
SUBJECTS = frozenset({"i", "you", "they", "we", "she", "he", "that's", "it's", "but", "until", "till"})
FAR_YIELD = 3
"""Words between 'makes' and how much."""
PEOPLE = frozenset({"people", "children", "men", "women"})
LEAST_PLURAL = 3
"""Letters of a word below which its s is no ending."""
IMPLIED_GRAMS = 10
"""From here on a bare figure beside an ingredient is meant in grams: 'butter, a hundred and thirty'."""
OF_THEM = frozenset({"it", "them", "these", "those", "that", "this"})
CONVERTED = frozenset({"is", "or", "that's", "which", "about"})
"""Words with which the same amount is said again in other units."""
JOINED = frozenset({"and", "plus"})
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
    kept = tuple(_repaired(scene))
    found: list[Attributed] = []
    for parts, inherited in _joined(scene, kept):
        mention, sure = _mention_of(scene, parts, found)
        if mention is None and inherited is not None:
            mention, sure = inherited, True
        found.append(Attributed(parts, mention, sure))
    return tuple(found)


def _repaired(scene: Scene) -> Iterator[tuple[SpokenAmount, Mention | None]]:
    """The amounts that are not taken back, with the name that one has from the figure that it replaces."""
    amounts = list(scene.amounts)
    inherited: Mention | None = None
    for index, amount in enumerate(amounts):
        following = amounts[index + 1] if index + 1 < len(amounts) else None
        if following is not None and _replaces(scene, amount, following):
            inherited = _behind(scene, amount) or inherited
            if following.what is Said.BARE and amount.what is not Said.BARE:
                amounts[index + 1] = replace(
                    following,
                    what=amount.what,
                    unit=amount.unit,
                    fan=amount.fan,
                    is_part=False,
                    span=_in_unit(scene, amount, following),
                )
            continue
        if not _is_negated(scene, amount):
            yield amount, inherited
        inherited = None


def _in_unit(scene: Scene, amount: SpokenAmount, following: SpokenAmount) -> Span:
    """A bare figure behind a time is in the unit of that time."""
    if amount.what is not Said.TIME:
        return following.span
    unit = scene.words[amount.end - 1]
    return following.span.times(scene.known.minutes.get(unit, Fraction(1)))


def _replaces(scene: Scene, amount: SpokenAmount, following: SpokenAmount) -> bool:
    gap = range(amount.end, following.begin)
    if not 0 < len(gap) <= FAR_REPAIR or not _are_alike(amount, following):
        return False
    if _ends_near(scene, scene.known.repairs, gap.start, gap.stop, 6):
        return True
    return len(gap) <= 7 and _ends_near(scene, scene.known.weak_repairs, gap.start, gap.stop, 1)


def _are_alike(amount: SpokenAmount, following: SpokenAmount) -> bool:
    return amount.what is following.what or Said.BARE in (amount.what, following.what)


def _ends_near(scene: Scene, phrases: Phrases, begin: int, end: int, gap: int) -> bool:
    """Whether a phrase stands between two words and ends no more than so many words before the second."""
    for index in phrases.within(scene.words, begin, end):
        last = index + phrases.at(scene.words, index)
        if last <= end and end - last <= gap:
            return True
    return False


def _is_negated(scene: Scene, amount: SpokenAmount) -> bool:
    """'not a hundred and thirty', 'instead of two hundred'."""
    return _ends_near(scene, scene.known.not_this, amount.begin - 5, amount.begin, 1)


def _joined(
    scene: Scene, kept: Sequence[tuple[SpokenAmount, Mention | None]]
) -> Iterator[tuple[tuple[SpokenAmount, ...], Mention | None]]:
    """Amounts that are said as one: 'a cup and two tablespoons', 'a pound and 2 ounces'."""
    group: list[SpokenAmount] = []
    inherited: Mention | None = None
    for amount, mention in kept:
        if group and _goes_on(scene, group[-1], amount):
            group.append(amount)
            continue
        if group:
            yield tuple(group), inherited
        group, inherited = [amount], mention
    if group:
        yield tuple(group), inherited


def _goes_on(scene: Scene, last: SpokenAmount, amount: SpokenAmount) -> bool:
    between = scene.words[last.end : amount.begin]
    is_joined = 0 < len(between) <= 2 and JOINED.issuperset(between)
    return is_joined and any(
        last.unit in units and amount.unit in units[units.index(last.unit) + 1 :] for units in FALLING_UNITS
    )


def _behind(scene: Scene, amount: SpokenAmount) -> Mention | None:
    """The name that follows an amount, with only small words between."""
    for mention in scene.mentions_from(amount.end):
        between = scene.words[amount.end : mention.begin]
        if len(between) <= FAR_BEHIND and scene.known.between.issuperset(between):
            return mention
        break
    return None


def _mention_of(
    scene: Scene, parts: Sequence[SpokenAmount], found: Sequence[Attributed]
) -> tuple[Mention | None, bool]:
    first, last = parts[0], parts[-1]
    behind = _behind(scene, last)
    before = None if _is_yield(scene, first) else _before(scene, first, found)
    if _of_them(scene, last) and before is not None:
        return before, True
    if behind is not None and before is not None and before.end == first.begin:
        between = scene.words[last.end : behind.begin]
        if between and between[0] != "of" and first.what is Said.MEASURE:
            return before, True
    if behind is not None:
        return behind, True
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
    return _ends_near(scene, scene.known.yields, amount.begin - FAR_YIELD, amount.begin, FAR_YIELD - 1)


def is_warned(scene: Scene, amount: SpokenAmount) -> bool:
    """'do not be tempted to go to two hundred': forbidden, in one breath."""
    words, warnings = scene.words, scene.known.warnings
    for index in warnings.within(words, amount.begin - FAR_WARNING, amount.begin):
        gap = words[index + warnings.at(words, index) : amount.begin]
        if SUBJECTS.isdisjoint(gap):
            return True
    return False


def _counts_something(scene: Scene, amount: SpokenAmount) -> bool:
    """'forty jars': a figure before a plural that nobody weighs by."""
    word = scene.words[amount.end] if amount.end < len(scene.words) else ""
    return word in PEOPLE or (
        word.endswith("s")
        and len(word) > LEAST_PLURAL
        and stem(word) not in scene.known.little
        and word not in scene.known.between
    )


def _of_them(scene: Scene, amount: SpokenAmount) -> bool:
    """'three of them', '180 grams of it'."""
    behind = scene.words[amount.end : amount.end + 2]
    return len(behind) == 2 and behind[0] == "of" and behind[1] in OF_THEM


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
        has_its_own = not amount.is_part and any(other.mention is mention for other in found[-3:])
        is_same = CONVERTED.intersection(scene.words[mention.end : amount.begin])
        return None if has_its_own and not is_same else mention
    return None
