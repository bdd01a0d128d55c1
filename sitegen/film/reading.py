"""Cues and a recipe -> where its steps begin on film, and what is said otherwise than it is written."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from sitegen.film.amount_claims import amount_findings
from sitegen.film.attribution import Attributed, attributed
from sitegen.film.evidence import Evidence
from sitegen.film.goes_claims import goes_findings
from sitegen.film.heat_claims import heat_findings
from sitegen.film.keeping_claims import keeping_findings
from sitegen.film.lists import with_lists
from sitegen.film.moments import found_steps
from sitegen.film.name_claims import added_findings, unsaid_findings
from sitegen.film.names import name_index, other_recipes
from sitegen.film.scene import Scene
from sitegen.film.sentences import sentences
from sitegen.film.share_claims import share_findings
from sitegen.film.spoken_amounts import Said, spoken_amounts
from sitegen.film.time_claims import time_findings
from sitegen.film.values import Cue, FilmReading, Finding, StepMoment
from sitegen.film.vocabulary import SpokenWords
from sitegen.film.words import heard_words
from sitegen.film.yield_claims import yield_findings
from sitegen.kitchen.editions import Edition
from sitegen.kitchen.recipe import Recipe
from sitegen.kitchen.tables import Tables


@dataclass(frozen=True)
class FilmTables:
    """What films are read with.

    written: the edition that the recipes are written in. titles: of all recipes of the school.
    """

    tables: Tables
    written: Edition
    known: SpokenWords
    titles: tuple[str, ...] = ()


def read_film(recipe: Recipe, bases: Iterable[Recipe], cues: Sequence[Cue], with_: FilmTables) -> FilmReading:
    """The moments and findings of a film; nothing of one that speaks of something else.

    bases: the recipes that this one draws on, and those that they draw on.
    """
    known, tables = with_.known, with_.tables
    heard = heard_words(cues)
    count = sum(len(component.steps) for component in recipe.components)
    if not heard:
        return FilmReading(steps=count)
    words = tuple(word.text for word in heard)
    norms = known.norms(words)
    cut = sentences(heard, known, other_recipes(recipe, with_.titles, known))
    amounts = spoken_amounts(words, known, tables.measures)
    priced = {at for each in amounts if each.what is Said.PRICE for at in range(each.begin, each.end)}
    names = name_index(recipe, bases, tables.larder, known).mentions(norms)
    mentions = tuple(mention for mention in names if mention.begin not in priced)
    cut = with_lists(recipe, cut, mentions, amounts)
    evidence = Evidence(recipe, known)
    rows = evidence.matches(cut, words, mentions, amounts)
    steps = found_steps(evidence, rows, cut)
    scene = Scene(
        recipe=recipe,
        tables=tables,
        written=with_.written,
        known=known,
        heard=heard,
        words=words,
        norms=norms,
        sentences=cut,
        mentions=mentions,
        amounts=amounts,
        begun=tuple((step.begin, step.film_step) for step in steps),
    )
    moments = tuple(
        StepMoment(
            recipe.components[step.film_step.component].title,
            step.film_step.number + 1,
            scene.second(step.begin),
            step.sure,
        )
        for step in steps
    )
    follows = FilmReading(moments, steps=count).follows_recipe
    return FilmReading(moments, _sorted(_findings(scene, follows)), count, len(words))


def _findings(scene: Scene, follows_recipe: bool) -> Iterable[Finding]:
    """All of them; of a film that does not talk through the recipe, nothing is certain or missing."""
    said = attributed(scene)
    if not follows_recipe:
        yield from (replace(finding, certain=False) for finding in _said_otherwise(scene, said))
        return
    yield from _said_otherwise(scene, said)
    yield from unsaid_findings(scene, said)


def _said_otherwise(scene: Scene, said: Sequence[Attributed]) -> Iterable[Finding]:
    yield from amount_findings(scene, said)
    yield from share_findings(scene, said)
    yield from heat_findings(scene, said)
    yield from time_findings(scene, said)
    yield from keeping_findings(scene, said)
    yield from goes_findings(scene, said)
    yield from yield_findings(scene, said)
    yield from added_findings(scene, said)


def _sorted(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """The certain first, then in the order of the film; what is said again is told once."""
    once = {(each.kind, each.about, each.said, each.written): each for each in reversed(list(findings))}
    return tuple(
        sorted(
            once.values(),
            key=lambda each: (not each.certain, each.moment_s is None, each.moment_s or 0, each.about),
        )
    )
