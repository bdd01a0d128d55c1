"""Figures that are taken back, or forbidden: 'two hundred, no, a hundred and sixty', 'not two hundred'."""

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from sitegen.film.names import Mention
from sitegen.film.scene import Scene
from sitegen.film.spoken_amounts import Said, SpokenAmount
from sitegen.kitchen.amounts import Span

FAR_REPAIR = 14
"""Words between a figure and the one that takes its place."""
FAR_NOT = 5
"""Words of a phrase that says that a figure does not count."""
FAR_WARNING = 8
"""Words between 'do not' and what is not to be done, none of them a new subject."""
SUBJECTS = frozenset({"i", "you", "they", "we", "she", "he", "that's", "it's", "but", "until", "till"})
JOINED = frozenset({"and", "plus"})
"""What stands behind these comes beside what stands before, and not in its place."""


def repaired(scene: Scene) -> Iterator[tuple[SpokenAmount, Mention | None]]:
    """The amounts that are not taken back, with the name that one has from the figure that it replaces."""
    amounts = [amount for amount in scene.amounts if amount.what is not Said.PRICE]
    inherited: Mention | None = None
    for index, amount in enumerate(amounts):
        following = amounts[index + 1] if index + 1 < len(amounts) else None
        if following is not None and _replaces(scene, amount, following):
            inherited = scene.named_behind(amount.end) or inherited
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
    words, known = scene.words, scene.known
    gap = range(amount.end, following.begin)
    if not 0 < len(gap) <= FAR_REPAIR or not _are_alike(amount, following):
        return False
    if words[gap.stop - 1] in JOINED:
        return False
    if known.repairs.ends_near(words, gap.start, gap.stop, 6):
        return True
    return len(gap) <= 7 and known.weak_repairs.ends_near(words, gap.start, gap.stop, 1)


def _are_alike(amount: SpokenAmount, following: SpokenAmount) -> bool:
    return amount.what is following.what or Said.BARE in (amount.what, following.what)


def _is_negated(scene: Scene, amount: SpokenAmount) -> bool:
    """'not a hundred and thirty', 'instead of two hundred'; not 'it isn't, it's two hundred'."""
    is_begun_anew = not SUBJECTS.isdisjoint(scene.words[max(0, amount.begin - 1) : amount.begin])
    return not is_begun_anew and scene.known.not_this.ends_near(
        scene.words, amount.begin - FAR_NOT, amount.begin, 1
    )


def is_warned(scene: Scene, amount: SpokenAmount) -> bool:
    """'do not be tempted to go to two hundred': forbidden, in one breath."""
    words, warnings = scene.words, scene.known.warnings
    for index in warnings.within(words, amount.begin - FAR_WARNING, amount.begin):
        gap = words[index + warnings.at(words, index) : amount.begin]
        if SUBJECTS.isdisjoint(gap):
            return True
    return False
