"""One recipe read and proofed with all that it draws on, whatever becomes of it afterwards."""

from collections.abc import Sequence
from dataclasses import dataclass

from sitegen.faults import Fault, Severity
from sitegen.kitchen.declared import bases_of
from sitegen.kitchen.recipe import Recipe
from sitegen.release.proof import kitchen_faults, recipe_proof
from sitegen.release.settled_advice import Settled
from sitegen.release.sheets import SheetSetter, sheet_setter
from sitegen.source.headings import Heading
from sitegen.source.library import read_kitchen, read_recipes
from sitegen.source.school import Content


@dataclass(frozen=True)
class ReadRecipe:
    """content: read with the recipe and all that it draws on. recipe: None where it cannot be read.

    setter: holds the sheets that were set for the proof; None without a readable `site.yaml`. proofed: its
    own faults. is_all: whether it draws on nothing but what was named beforehand.
    """

    slug: str
    content: Content
    recipe: Recipe | None
    setter: SheetSetter | None
    proofed: Settled
    is_all: bool

    @property
    def title(self) -> str:
        """Its title, or its folder's name where it cannot be read."""
        return self.recipe.title if self.recipe else self.slug

    @property
    def has_sheets(self) -> bool:
        """Whether neither it nor anything that it draws on has an error, which would stop its sheets."""
        told = (*self.proofed.faults, *self.content.faults)
        faulty = any(fault.severity is Severity.ERROR for fault in told)
        return self.recipe is not None and self.setter is not None and not faulty


def read_recipe(
    school: Content, headings: Sequence[Heading], slug: str, drawn_on: Sequence[str]
) -> ReadRecipe:
    """Read and proof one recipe.

    school: what all recipes have in common. headings: of all recipes. drawn_on: slugs of it and of all that
    it may draw on.
    """
    content, is_all = read_with(school, headings, drawn_on)
    setter = sheet_setter(content, content.school) if content.school else None
    proofed = recipe_proof(content, slug, setter)
    return ReadRecipe(slug, content, recipe_of(content, slug), setter, proofed, is_all)


def read_with(school: Content, headings: Sequence[Heading], drawn_on: Sequence[str]) -> tuple[Content, bool]:
    """Some recipes of the school, read and checked; and whether they were all that they draw on.

    A title that is written in escapes of YAML stands in no bare text: it is found once the line is read.
    """
    by_title = {heading.title: heading.slug for heading in headings}
    slugs = set(drawn_on)
    while True:
        content = read_recipes(school, sorted(slugs), headings)
        bases = (title for recipe in content.recipes for title in bases_of(recipe))
        missing = {by_title[title] for title in bases if title in by_title} - slugs
        if not missing:
            return content, slugs == set(drawn_on)
        slugs |= missing


def recipe_of(content: Content, slug: str) -> Recipe | None:
    """The recipe of that folder; None where it could not be read."""
    return next((recipe for recipe in content.recipes if recipe.slug == slug), None)


def read_kitchen_faults(
    school: Content, headings: Sequence[Heading], slugs: Sequence[str]
) -> tuple[Fault, ...]:
    """What is wrong with what is for the kitchen alone. slugs: of the recipes that it needs."""
    content, _ = read_with(school, headings, slugs)
    content = read_kitchen(content)
    setter = sheet_setter(content, content.school) if content.school else None
    return kitchen_faults(content, setter)
