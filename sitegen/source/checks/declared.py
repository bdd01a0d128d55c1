"""Ingredients that recipes declare themselves, where two such recipes meet on one sheet."""

from collections.abc import Iterator

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.kitchen.declared import with_bases
from sitegen.kitchen.larder import Ingredient
from sitegen.source.school import Content

DECLARED_TWICE = FaultCode(
    "declared-twice",
    Severity.ERROR,
    "A recipe and a base recipe of it declare the same name, each with other facts: one would be lost.",
    "Declare it once for all recipes, in content/larder.yaml.",
)
CODES = (DECLARED_TWICE,)


def declared_alike(content: Content) -> Iterator[Fault]:
    """A name that is declared by a recipe, and by one that it draws on, means the same in both."""
    bases = {recipe.title: recipe for recipe in content.recipes}
    for recipe in content.recipes:
        known: dict[str, tuple[Ingredient, str]] = {}
        for other in with_bases(recipe, bases):
            for row in other.declared:
                first, title = known.setdefault(row.key.casefold(), (row, other.title))
                if first != row:
                    sentence = f"'{title}' and '{other.title}' declare '{row.key}' each in its own way"
                    yield DECLARED_TWICE.fault(recipe.at, sentence)


SCHOOL_CHECKS = (declared_alike,)
