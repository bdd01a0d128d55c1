"""Shares as said: how full a tin is filled, how much of a component or an ingredient is taken."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from sitegen.faults import Place
from sitegen.film.amount_claims import candidates, name_of
from sitegen.film.attribution import Attributed
from sitegen.film.evidence import is_fill
from sitegen.film.figures import number_text
from sitegen.film.marks import NOT_THIS_BAKE, About
from sitegen.film.names import LineKey
from sitegen.film.scene import Scene
from sitegen.film.spoken_amounts import SpokenAmount
from sitegen.film.steps import FilmStep
from sitegen.film.values import Finding, FindingKind
from sitegen.kitchen.recipe import PartLine


def share_findings(scene: Scene, said: Sequence[Attributed]) -> Iterator[Finding]:
    """Every share that differs from the one that is written."""
    for one in said:
        amount = one.amount
        if not amount.is_part or scene.about(amount.begin) & NOT_THIS_BAKE:
            continue
        finding = _fill(scene, amount) if is_fill(amount, scene.words) else _taken(scene, one)
        if finding is not None:
            yield finding


def _fill(scene: Scene, amount: SpokenAmount) -> Finding | None:
    near = [step for step in (scene.step_at(amount.begin), scene.next_step(amount.begin)) if step]
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
    if mention is None or not one.sure or not mention.name.lines:
        return None
    here, there = candidates(scene, amount.begin, mention)
    written = [(share, key, at) for key in here for share, at in _shares(scene, key)]
    others = [share for key in there for share, _ in _shares(scene, key)]
    if not written or amount.span.low in [*(share for share, _, _ in written), *others]:
        return None
    share, key, at = written[0]
    line = scene.recipe.components[key[0]].lines[key[1]]
    sure = len({share for share, _, _ in written}) == 1
    is_other = bool(scene.about(amount.begin) & (About.AHEAD | About.BACK))
    return _differs(scene, amount, name_of(line), share, at, sure and not is_other)


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
        written=number_text(share),
        certain=certain,
        at=at,
    )
