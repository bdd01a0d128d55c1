"""What is said under `base-recipes`, held against what the lines take."""

from collections.abc import Iterator

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.kitchen.recipe import PartLine, Recipe
from sitegen.kitchen.tables import Tables

UNUSED_BASE = FaultCode(
    "unused-base",
    Severity.ERROR,
    "A recipe says how it makes a base recipe of which no line of it takes.",
    "Take some of it in a component (`250 g of ...`), or delete it under `base-recipes`.",
    good="base-recipes:\n",
    bad="base-recipes:\n  Blackcurrant and bay cupcakes: {made: once}\n",
)
MADE_ONCE_ANYWAY = FaultCode(
    "made-once-anyway",
    Severity.ADVICE,
    "A base recipe is to be made for each component that takes of it, and only one does.",
    "Write `made: once`, or leave `made` out.",
    good="made: once",
    bad="made: for each",
)
CODES = (UNUSED_BASE, MADE_ONCE_ANYWAY)


def base_uses_are_used(recipe: Recipe, _tables: Tables) -> Iterator[Fault]:
    """Each base recipe that is spoken of is taken of; one made for each is taken of by several."""
    for use in recipe.base_uses:
        users = [
            component.title
            for component in recipe.components
            if any(isinstance(line, PartLine) and line.source == use.title for line in component.lines)
        ]
        if not users:
            yield UNUSED_BASE.fault(use.at, f"no component takes of '{use.title}'")
        elif not use.made_once and len(users) == 1:
            yield MADE_ONCE_ANYWAY.fault(use.at, f"only '{users[0]}' takes of '{use.title}'")


CHECKS = (base_uses_are_used,)
