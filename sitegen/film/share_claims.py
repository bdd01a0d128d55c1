"""Shares as said: how full a tin is filled, how much of a component or an ingredient is taken."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from sitegen.faults import Place
from sitegen.film.amount_claims import candidates
from sitegen.film.amount_distance import line_at, name_of
from sitegen.film.attribution import Attributed, is_of_them
from sitegen.film.evidence import is_fill
from sitegen.film.figures import number_text
from sitegen.film.marks import NOT_THIS_BAKE, About
from sitegen.film.names import LineKey
from sitegen.film.number_words import PARTS
from sitegen.film.scene import Scene
from sitegen.film.spoken_amounts import SpokenAmount
from sitegen.film.spoken_numbers import spoken_numbers
from sitegen.film.steps import FilmStep, words_of
from sitegen.film.values import Finding, FindingKind
from sitegen.kitchen.recipe import PartLine

ALL = "all"
OF_ALL = frozenset({"of", "the", "your", "my", "our", "that", "this", "those", "these"})
REST = "rest"
FAR_REST, NEAR_KEPT = 60, 5
"""Words behind a share in which the rest of it is spoken of; and about that, in which it is kept."""


def share_findings(scene: Scene, said: Sequence[Attributed]) -> Iterator[Finding]:
    """Every share that differs from the one that is written."""
    for one in said:
        amount = one.amount
        if not amount.is_part or scene.about_in_clause(amount.begin) & NOT_THIS_BAKE:
            continue
        finding = _fill(scene, amount) if is_fill(amount, scene.words) else _taken(scene, one)
        if finding is not None:
            yield replace(finding, certain=finding.certain and not scene.is_doubted(amount.begin))


def _fill(scene: Scene, amount: SpokenAmount) -> Finding | None:
    near = scene.steps_about(amount.begin)
    filled = [step for step in near if step.step.fill]
    if not filled:
        steps = [step for component in scene.recipe.components for step in component.steps if step.fill]
        filled = [FilmStep(0, 0, step) for step in steps] if len(steps) == 1 else []
    if not filled or any(step.step.fill == amount.span.low for step in filled):
        return None
    step = filled[0]
    title = scene.recipe.components[step.component].title if step in near else "fill"
    return _differs(scene, amount, title, step.step.fill or Fraction(0), step.step.fill_at, len(filled) == 1)


def _taken(scene: Scene, one: Attributed) -> Finding | None:
    """'a third of the batter', where the recipe says how much of it is taken here."""
    mention, amount = one.mention, one.amount
    if mention is None:
        return _taken_of_it(scene, amount)
    if not one.sure or not mention.name.lines:
        return None
    here, there = candidates(scene, amount.begin, mention)
    written = [(share, key, at) for key in here for share, at in _shares(scene, key)]
    others = [share for key in there for share, _ in _shares(scene, key)]
    is_other = bool(scene.about(amount.begin) & (About.AHEAD | About.BACK))
    in_hand = [] if is_other else _in_hand(scene, amount, written)
    is_elsewhere = amount.span.low in [*(share for share, _, _ in written), *others]
    if is_elsewhere and (not in_hand or amount.span.low in [share for share, _, _ in in_hand]):
        return None
    if not written:
        used = None if is_other or others else _parted(scene, one, here) or _used_whole(scene, one, here)
        return _differs(scene, amount, *used, certain=True) if used is not None else None
    share, key, at = (in_hand or written)[0]
    sure = len({share for share, _, _ in in_hand or written}) == 1
    is_certain = sure and not is_other and not is_elsewhere
    return _differs(scene, amount, name_of(line_at(scene, key)), share, at, is_certain)


def _taken_of_it(scene: Scene, amount: SpokenAmount) -> Finding | None:
    """'what goes in now is a third of it': doubtful, and of the one share that the step in hand has."""
    now = scene.step_at(amount.begin)
    if now is None or not is_of_them(scene, amount):
        return None
    shares = [
        (each.share, line_at(scene, (now.component, each.line)), each.at)
        for each in now.step.references
        if 0 < each.share < 1 and each.line is not None
    ]
    if len(shares) != 1 or shares[0][0] == amount.span.low or scene.about(amount.begin):
        return None
    share, line, at = shares[0]
    return _differs(scene, amount, name_of(line), share, at, certain=False)


def _in_hand(
    scene: Scene, amount: SpokenAmount, written: Sequence[tuple[Fraction, LineKey, Place]]
) -> list[tuple[Fraction, LineKey, Place]]:
    """Those of the step that was begun last."""
    now = scene.step_at(amount.begin)
    places = [reference.at for reference in now.step.references] if now is not None else []
    return [one for one in written if one[2] in places]


def _used_whole(scene: Scene, one: Attributed, keys: Sequence[LineKey]) -> tuple[str, Fraction, Place] | None:
    """What a line is of, 1, and where it is used, where a step about takes all of it and the film does not.

    Who takes a half and then the rest works as is written; who keeps the rest does not.
    """
    if one.mention is None or _is_of_one(scene, one) or _rest_follows(scene, one.amount):
        return None
    for step in scene.steps_about(one.amount.begin):
        if _parts_something(step):
            continue
        for key in keys:
            line = line_at(scene, key)
            is_weighed = isinstance(line, PartLine) and line.amount is not None
            uses = [each for each in step.step.references if (step.component, each.line) == key]
            if len(uses) == 1 and uses[0].share == 1 and uses[0].amount is None and not is_weighed:
                return name_of(line), uses[0].share, uses[0].at
    return None


def _parted(scene: Scene, one: Attributed, keys: Sequence[LineKey]) -> tuple[str, Fraction, Place] | None:
    """What a line is of, the one part that the step's text takes, and where; None where that is said."""
    now = scene.step_at(one.amount.begin)
    if now is None or _is_of_one(scene, one):
        return None
    parts = [part.low for part in spoken_numbers(words_of(now.step)) if part.is_part]
    for key in keys:
        uses = [each for each in now.step.references if (now.component, each.line) == key]
        if uses and len(parts) == 1 and parts != [one.amount.span.low]:
            return name_of(line_at(scene, key)), parts[0], uses[0].at
    return None


def _parts_something(step: FilmStep) -> bool:
    """Whether a step's text parts what no reference names: 'fold in half of this, then the rest'."""
    return any(word in PARTS or word == REST for word in words_of(step.step))


def _is_of_one(scene: Scene, one: Attributed) -> bool:
    """'the juice of half a lemon', 'half cream half milk': no share of what stands there."""
    if one.mention is None or one.mention.begin < one.amount.end:
        return True
    return OF_ALL.isdisjoint(scene.words[one.amount.begin : one.mention.begin])


def _rest_follows(scene: Scene, amount: SpokenAmount) -> bool:
    """Whether what is left is spoken of soon, and not as kept."""
    known, words = scene.known, scene.words
    for index in known.rests.within(words, amount.end, amount.end + FAR_REST):
        about = range(index - NEAR_KEPT, index + known.rests.at(words, index) + NEAR_KEPT)
        if not known.kept.any_in(words, about.start, about.stop):
            return True
    return False


def _shares(scene: Scene, key: LineKey) -> Iterator[tuple[Fraction, Place]]:
    component = scene.recipe.components[key[0]]
    line = component.lines[key[1]]
    if isinstance(line, PartLine) and line.share is not None and line.share < 1:
        yield line.share, line.at
    for step in component.steps:
        for reference in step.references:
            if reference.line == key[1] and 0 < reference.share < 1:
                yield reference.share, reference.at


def _differs(
    scene: Scene, amount: SpokenAmount, about: str, share: Fraction, at: Place, certain: bool
) -> Finding:
    return Finding(
        kind=FindingKind.SHARE,
        about=about,
        moment_s=scene.second(amount.begin),
        said=number_text(amount.span.low),
        written=number_text(share) if share < 1 else ALL,
        certain=certain,
        at=at,
    )
