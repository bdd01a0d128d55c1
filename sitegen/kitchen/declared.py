"""Ingredients that recipes declare themselves: known to that recipe, and to those that use it as a base."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from sitegen.kitchen.larder import Ingredient, Larder
from sitegen.kitchen.recipe import PartLine, Recipe
from sitegen.kitchen.tables import Tables


def tables_of(recipe: Recipe, bases: Mapping[str, Recipe], tables: Tables) -> Tables:
    """The tables as one recipe knows them: with what it and its base recipes, at any depth, declare.

    bases: all recipes by title. Of two declarations of one name the recipe's own wins, then the nearest.
    """
    return known_with(tables, tuple(each for one in with_bases(recipe, bases) for each in one.declared))


def known_with(tables: Tables, declared: tuple[Ingredient, ...]) -> Tables:
    """The tables with more ingredients in the larder; the very same where there are none."""
    if not declared:
        return tables
    return replace(tables, larder=Larder.of((*tables.larder.ingredients, *declared)))


def with_bases(recipe: Recipe, bases: Mapping[str, Recipe]) -> Iterator[Recipe]:
    """The recipe, then every base recipe that it draws on through any number of others, each once."""
    waiting, seen = [recipe], {recipe.title}
    while waiting:
        each = waiting.pop(0)
        yield each
        for title in bases_of(each):
            if title in bases and title not in seen:
                seen.add(title)
                waiting.append(bases[title])


def bases_of(recipe: Recipe) -> Iterator[str]:
    """Titles of the recipes that it draws on itself, one for each line that does."""
    for component in recipe.components:
        for line in component.lines:
            if isinstance(line, PartLine) and line.from_base:
                yield line.source
