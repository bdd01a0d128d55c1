"""Recipes and components that are made of themselves."""

from collections.abc import Iterator, Mapping

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.kitchen.recipe import PartLine, Recipe
from sitegen.kitchen.tables import Tables
from sitegen.source.school import Content

BASE_CIRCLE = FaultCode(
    "base-circle",
    Severity.ERROR,
    "Base recipes that need each other, so that none of them could ever be begun.",
    "Take one of them out of the circle.",
)
COMPONENT_CIRCLE = FaultCode(
    "component-circle",
    Severity.ERROR,
    "Components of a recipe that are made of each other.",
    "Take one of the parts out of the circle.",
    good="- 2 medium eggs",
    bad="- all of Assembly\n      - 2 medium eggs",
)
CODES = (BASE_CIRCLE, COMPONENT_CIRCLE)
Needs = Mapping[str, tuple[str, ...]]


def components_stand_in_order(recipe: Recipe, _tables: Tables) -> Iterator[Fault]:
    """No component of a recipe is made of itself, by whatever way round."""
    needs = {
        component.title: tuple(line.source for line in component.lines if isinstance(line, PartLine))
        for component in recipe.components
    }
    for component in recipe.components:
        circle = _way_round(component.title, needs)
        if circle and component.title == min(circle):
            yield COMPONENT_CIRCLE.fault(component.at, f"made of itself: {' -> '.join(circle)}")


def bases_stand_in_order(content: Content) -> Iterator[Fault]:
    """No recipe needs itself as a base, by whatever way round."""
    needs = {recipe.title: _bases(recipe) for recipe in content.recipes}
    for recipe in content.recipes:
        circle = _way_round(recipe.title, needs)
        if circle and recipe.title == min(circle):
            yield BASE_CIRCLE.fault(recipe.at, f"these recipes need each other: {' -> '.join(circle)}")


def _bases(recipe: Recipe) -> tuple[str, ...]:
    lines = (line for component in recipe.components for line in component.lines)
    return tuple(line.source for line in lines if isinstance(line, PartLine) and line.from_base)


def _way_round(start: str, needs: Needs) -> tuple[str, ...]:
    """The titles from `start` back to itself; empty where there is no such way."""
    pending: list[tuple[str, ...]] = [(start,)]
    seen: set[str] = set()
    while pending:
        way = pending.pop()
        for title in needs.get(way[-1], ()):
            if title == start:
                return (*way, start)
            if title not in seen:
                seen.add(title)
                pending.append((*way, title))
    return ()


CHECKS = (components_stand_in_order,)
SCHOOL_CHECKS = (bases_stand_in_order,)
