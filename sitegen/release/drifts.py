"""The drift of recipes in every edition and batch that their pages offer."""

from collections.abc import Iterator, Sequence
from pathlib import Path

from sitegen.faults import Severity
from sitegen.kitchen.ovens import OvenOutOfRange
from sitegen.kitchen.part_errors import RECIPE_AT_FAULT
from sitegen.kitchen.recipe import Recipe
from sitegen.kitchen.scaling import CannotScale
from sitegen.release.asking import AtFault, edition_named, recipe_named, school_without_errors
from sitegen.release.proof import proof
from sitegen.release.sheets import sheet_setter
from sitegen.sheet.batches import offered
from sitegen.sheet.conflict_words import CANNOT_BE_PLANNED
from sitegen.sheet.drift import SheetDrift, sheet_drift
from sitegen.source.library import read_content
from sitegen.source.school import Content


def drifts(root: Path, names: Sequence[str], edition: str) -> tuple[SheetDrift, ...]:
    """One a recipe, edition and batch. names: slugs or titles, none for all recipes.

    edition: a key, '' for all that the school prints. Raises NotAsked and AtFault.
    """
    content = read_content(root)
    recipes = tuple(recipe_named(content, name) for name in names) or content.recipes
    errors = [fault for fault in content.faults if fault.severity is Severity.ERROR]
    if errors and not names:
        raise AtFault(errors, content.texts)
    try:
        return tuple(drift for recipe in recipes for drift in _drifts_of(recipe, content, edition))
    except (*RECIPE_AT_FAULT, CannotScale, OvenOutOfRange, *CANNOT_BE_PLANNED) as problem:
        raise AtFault(proof(root).errors, content.texts) from problem


def _drifts_of(recipe: Recipe, content: Content, edition: str) -> Iterator[SheetDrift]:
    school = school_without_errors(content, recipe)
    setter = sheet_setter(content, school)
    for key in [edition_named(content, school, edition)] if edition else school.editions:
        for ask in offered(recipe):
            yield sheet_drift(setter.sheet(recipe, key, ask))
