"""What is taken by weight, held against what is made."""

from collections.abc import Iterator
from fractions import Fraction

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.kitchen.declared import tables_of
from sitegen.kitchen.part_errors import BaseCircle, MoreThanIsMade, NoWeight, SharesDontAddUp, UnknownPart
from sitegen.kitchen.recipe import PartLine, Recipe
from sitegen.kitchen.shares import made_components
from sitegen.kitchen.weighing import Scales
from sitegen.source.school import Content

MORE_THAN_IS_MADE = FaultCode(
    "more-than-is-made",
    Severity.ERROR,
    "More is taken of a component, by weight, than all its ingredients weigh together.",
    "Take less of it, or take shares: `half of ...`, `the rest of ...`.",
    good="all of Bay sponge",
    bad="9 kg of Bay sponge",
)
NO_WEIGHT = FaultCode(
    "no-weight",
    Severity.ERROR,
    "A weight is taken of a base recipe whose own weight nobody can know.",
    "Let that recipe say what it makes as a weight: `makes: 900 g`.",
)
CODES = (MORE_THAN_IS_MADE, NO_WEIGHT)

TESTED = Fraction(1)
TOLD_ELSEWHERE = (BaseCircle, SharesDontAddUp, UnknownPart)
"""By `circles.py`, by `takings.py`, and by the reader of lines."""


def enough_is_made(content: Content) -> Iterator[Fault]:
    """No recipe takes more of a component than it makes, nor weighs out what has no weight."""
    if content.school is None:
        return
    edition = content.tables.editions[content.school.written_in]
    bases = {recipe.title: recipe for recipe in content.recipes}
    for recipe in content.recipes:
        try:
            tables = tables_of(recipe, bases, content.tables)
            made_components(recipe, bases, TESTED, Scales(tables, edition).grams)
        except MoreThanIsMade as error:
            yield from _too_much(recipe, error)
        except NoWeight as error:
            yield from _unknown(recipe, error)
        except TOLD_ELSEWHERE:
            continue


def _too_much(recipe: Recipe, error: MoreThanIsMade) -> Iterator[Fault]:
    """Nothing where a base recipe takes too much, which is told with its own lines, or shares take it all."""
    if error.made_g <= 0:
        return
    for part in _parts(recipe, error.title)[-1:]:
        sentence = (
            f"{round(error.taken_g)} g of '{error.title}' are taken, and {round(error.made_g)} g are there"
        )
        yield MORE_THAN_IS_MADE.fault(part.at, sentence, MORE_THAN_IS_MADE.cure)


def _unknown(recipe: Recipe, error: NoWeight) -> Iterator[Fault]:
    for part in _parts(recipe, error.title)[:1]:
        missing = ", ".join(f"'{name}'" for name in error.unknown)
        sentence = f"nobody knows what '{error.title}' weighs: {missing or 'it'} cannot be weighed"
        yield NO_WEIGHT.fault(part.at, sentence, NO_WEIGHT.cure)


def _parts(recipe: Recipe, title: str) -> list[PartLine]:
    """The lines that take a weight of it."""
    lines = (line for component in recipe.components for line in component.lines)
    return [line for line in lines if isinstance(line, PartLine) and line.source == title and line.amount]


SCHOOL_CHECKS = (enough_is_made,)
