"""How long something keeps as said, held against the keeping of the recipe's components."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from sitegen.film.attribution import Attributed
from sitegen.film.figures import keeping_text
from sitegen.film.marks import About
from sitegen.film.scene import Scene
from sitegen.film.spoken_amounts import Said, SpokenAmount
from sitegen.film.values import Finding, FindingKind
from sitegen.kitchen.amounts import Span
from sitegen.kitchen.recipe import Component, Keeps

DAY_MIN, HOUR_MIN = Fraction(1440), Fraction(60)
LONG_WAIT_MIN = Fraction(480)
"""A recipe that waits as long may mean its own night in the fridge by a day."""
IN, ALONE = frozenset({"in", "into", "at"}), frozenset({"freeze", "frozen", "airtight"})
FAR_PLACE = 8
"""Words between how long and where."""


def keeping_findings(scene: Scene, said: Sequence[Attributed]) -> Iterator[Finding]:
    """Every time in the fridge, the freezer or the room that no component keeps; doubtful, all of them."""
    kept = [each for component in scene.recipe.components for each in component.keeping]
    for amount in [one.amount for one in said]:
        place = keeping_place(scene, amount)
        if not place or scene.about_in_clause(amount.begin) & (About.ASIDE | About.OTHER_BATCH):
            continue
        if any(_agrees(amount.span, each.hours) for each in kept):
            continue
        found = _in_hand(scene, amount, place)
        if found is not None:
            component, keeps = found
            yield Finding(
                kind=FindingKind.TIME,
                about=component.title,
                moment_s=scene.second(amount.begin),
                said=keeping_text(amount.span),
                written=keeping_text(keeps.hours.times(HOUR_MIN)),
                certain=False,
                at=component.at,
            )


def keeping_place(scene: Scene, amount: SpokenAmount) -> str:
    """'in the fridge it will go three days': where, for a time of days; '' for what tells no keeping."""
    if amount.what is not Said.TIME or amount.span.low < DAY_MIN:
        return ""
    waits = [step.wait_min for component in scene.recipe.components for step in component.steps]
    is_night = any(wait is not None and wait.high >= LONG_WAIT_MIN for wait in waits)
    return _place(scene, amount) if amount.span.low > DAY_MIN or not is_night else ""


def _place(scene: Scene, amount: SpokenAmount) -> str:
    """The place that is named nearest to a time; '' for none."""
    sentence = scene.sentence_at(amount.begin)
    near = range(max(sentence.begin, amount.begin - FAR_PLACE), min(sentence.end, amount.end + FAR_PLACE))
    places = scene.known.keeping_places
    named = [index for index in near if scene.words[index] in places and _is_in(scene.words, index)]
    if not named:
        return ""
    return places[scene.words[min(named, key=lambda index: abs(index - amount.begin))]]


def _is_in(words: Sequence[str], index: int) -> bool:
    """'in the fridge', 'it freezes': not 'the fridge was empty'."""
    return words[index] in ALONE or not IN.isdisjoint(words[max(0, index - 2) : index])


def _in_hand(scene: Scene, amount: SpokenAmount, place: str) -> tuple[Component, Keeps] | None:
    """What is spoken of with its keeping there: the component in hand, the last, or the only one kept so."""
    step, components = scene.step_at(amount.begin), scene.recipe.components
    kept = [(each, keeps) for each in components for keeps in each.keeping if keeps.place == place]
    for component in (components[step.component] if step else None, components[-1]):
        for one in kept:
            if one[0] is component:
                return one
    return kept[0] if len(kept) == 1 else None


def _agrees(said: Span, hours: Span) -> bool:
    return said.low <= hours.high * HOUR_MIN and hours.low * HOUR_MIN <= said.high
