"""Eggs of a size that the school's own region does not grade."""

from collections.abc import Iterator

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.kitchen.recipe import IngredientLine
from sitegen.kitchen.weighing import is_hens_egg
from sitegen.source.school import Content

NO_SUCH_EGG = FaultCode(
    "no-such-egg",
    Severity.ERROR,
    "Eggs of a size that the region of `written-in` does not grade, so that nobody could weigh them.",
    "Use a size of that region, or leave the size out for the school's own.",
    good="2 medium eggs",
    bad="2 very large eggs",
)
CODES = (NO_SUCH_EGG,)


def eggs_are_graded(content: Content) -> Iterator[Fault]:
    """Every counted egg has a size that the region's grades know."""
    if content.school is None:
        return
    region = content.tables.editions[content.school.written_in].egg_region
    sizes = content.tables.eggs.sizes(region)
    for recipe in content.recipes:
        for line in (line for component in recipe.components for line in component.lines):
            if not isinstance(line, IngredientLine):
                continue
            row = content.tables.larder.find(line.chosen.ingredient)
            size = line.chosen.size
            if row is not None and is_hens_egg(row) and size and size not in sizes:
                way_out = f"write one of: {', '.join(sizes)}"
                yield NO_SUCH_EGG.fault(line.at, f"no {region.upper()} egg is graded '{size}'", way_out)


SCHOOL_CHECKS = (eggs_are_graded,)
