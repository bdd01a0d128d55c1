"""Substitutes that a recipe offers."""

from collections.abc import Iterator, Sequence
from difflib import get_close_matches

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.kitchen.declared import with_bases
from sitegen.kitchen.recipe import IngredientLine, Recipe
from sitegen.source.school import Content

NO_SWAP = FaultCode(
    "no-swap",
    Severity.ERROR,
    "A substitute is offered for something that the recipe does not take, or that nothing known replaces.",
    "Name an ingredient of the recipe that the table of substitutions has.",
    good="swaps: [buttermilk]",
    bad="swaps: [buttermilch]",
)
CODES = (NO_SWAP,)


def swaps_can_be_offered(content: Content) -> Iterator[Fault]:
    """Every substitute that a recipe offers has a row in the table, and a line that takes the original."""
    bases = {recipe.title: recipe for recipe in content.recipes}
    known = {swap.instead_of for swap in content.tables.swaps}
    for recipe in content.recipes:
        taken = _taken([*with_bases(recipe, bases)]) if recipe.swaps else frozenset()
        for offered in recipe.swaps:
            if offered.ingredient not in known:
                near = get_close_matches(offered.ingredient, sorted(known), n=1, cutoff=0.6)
                way_out = f"did you mean '{near[0]}'?" if near else "take it out, or say it in `notes`"
                sentence = f"no substitute for '{offered.ingredient}' is known"
                yield NO_SWAP.fault(offered.at, sentence, way_out)
            elif offered.ingredient not in taken:
                sentence = f"no line of this recipe takes '{offered.ingredient}'"
                yield NO_SWAP.fault(offered.at, sentence, "take it out")


def _taken(recipes: Sequence[Recipe]) -> frozenset[str]:
    lines = (line for recipe in recipes for part in recipe.components for line in part.lines)
    return frozenset(
        choice.ingredient for line in lines if isinstance(line, IngredientLine) for choice in line.choices
    )


SCHOOL_CHECKS = (swaps_can_be_offered,)
