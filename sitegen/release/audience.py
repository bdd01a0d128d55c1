"""The one place where public views are made: whatever a public page is given was made here.

The public values have no fields for steps, plans, notes or step photos, so a template cannot print
what it was never given.
"""

from collections.abc import Collection
from dataclasses import replace

from sitegen.kitchen.recipe import PublicShows
from sitegen.sheet.values import IngredientSide, PublicComponent, Sheet, SheetPhoto, Teaser, View


def public_view(sheet: Sheet, shows: PublicShows) -> View:
    """What everyone may see of a sheet."""
    match shows:
        case PublicShows.TEASER:
            return _teaser(sheet)
        case PublicShows.INGREDIENTS:
            return _ingredient_side(sheet)
        case PublicShows.EVERYTHING:
            return sheet


def with_pages_of(sheet: Sheet, slugs: Collection[str]) -> Sheet:
    """The sheet with links to those base recipes only that have a page in the same tree.

    slugs: of the recipes that the audience may open. A base recipe that is still a draft is printed
    as a part of this sheet, and its address is not told.
    """
    components = tuple(
        part if part.base_slug in slugs else replace(part, base_slug="") for part in sheet.components
    )
    return replace(sheet, components=components)


def photos_in(view: View) -> tuple[str, ...]:
    """Files of the pictures that a view may show, each once, in the order of the page."""
    shown = [view.head.photo]
    if isinstance(view, Sheet):
        shown += [step.photo for component in view.components for step in component.steps]
    return tuple(dict.fromkeys(photo.file for photo in shown if isinstance(photo, SheetPhoto)))


def _teaser(sheet: Sheet) -> Teaser:
    return Teaser(sheet.head, sheet.allergens, sheet.estimates_note)


def _ingredient_side(sheet: Sheet) -> IngredientSide:
    return IngredientSide(
        head=sheet.head,
        components=tuple(PublicComponent(part.title, part.lines) for part in sheet.components if part.lines),
        tin=sheet.tin,
        oven=sheet.oven,
        allergens=sheet.allergens,
        egg_note=sheet.egg_note,
        measure_note=sheet.measure_note,
        batch_notes=sheet.batch_notes,
        estimates_note=sheet.estimates_note,
    )
