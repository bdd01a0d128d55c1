"""The one place where public views are made: whatever a public page is given was made here.

The public values have no fields for steps, plans, notes or step photos, so a template cannot print
what it was never given.
"""

from collections.abc import Collection
from dataclasses import replace
from datetime import date

from sitegen.kitchen.recipe import PublicShows
from sitegen.sheet.facet_values import TIN
from sitegen.sheet.values import Head, IngredientSide, PublicComponent, Sheet, SheetRevision, Teaser, View

SOME_PACKET = "ingredients that come in packets"
"""As a list says it of a teaser: 'Read the label of the ...'."""


def public_view(sheet: Sheet, shows: PublicShows, since: date | None = None) -> View:
    """What everyone may see of a sheet.

    since: the public day, which is this audience's day of first release; None keeps the sheet's own.
    """
    head = _released(sheet.head, since)
    match shows:
        case PublicShows.TEASER:
            return Teaser(_teaser_head(head), sheet.allergens, sheet.estimates_note, sheet.video)
        case PublicShows.INGREDIENTS:
            return _ingredient_side(sheet, head)
        case PublicShows.EVERYTHING:
            return replace(sheet, head=head)


def public_revisions(sheet: Sheet, shows: PublicShows) -> tuple[SheetRevision, ...]:
    """Corrections that everyone hears of: wherever a figure is shown, its correction is too."""
    return () if shows is PublicShows.TEASER else sheet.revisions


def with_pages_of(view: View, slugs: Collection[str]) -> View:
    """The view with links to those base recipes only that have a page in the same tree.

    slugs: of the recipes that the audience may open. A base recipe that is still a draft is printed
    as a part of this sheet, and its address is not told.
    """
    if not isinstance(view, Sheet):
        return view
    components = tuple(
        part if part.base_slug in slugs else replace(part, base_slug="") for part in view.components
    )
    return replace(view, components=components)


def photos_in(view: View) -> tuple[str, ...]:
    """Files of the pictures that a view may show, each once, in the order of the page."""
    shown = [view.head.photo]
    if isinstance(view, Sheet):
        shown += [step.photo for part in view.components for step in part.steps]
    return tuple(dict.fromkeys(photo.file for photo in shown if photo is not None))


def _released(head: Head, since: date | None) -> Head:
    """The head with this audience's day: what changed before it was never seen in another form."""
    if since is None:
        return head
    published = since.isoformat()
    return replace(head, published=published, modified=max(head.modified, published))


def _teaser_head(head: Head) -> Head:
    """A teaser tells no tin, so nobody may find it by one, and no ingredient whose label must be read."""
    marks = tuple(mark for mark in head.facets.marks if mark.group != TIN)
    labels_of = SOME_PACKET if head.facets.labels_of else ""
    return replace(
        head, batch=replace(head.batch, tin=""), facets=replace(head.facets, marks=marks, labels_of=labels_of)
    )


def _ingredient_side(sheet: Sheet, head: Head) -> IngredientSide:
    return IngredientSide(
        head=head,
        components=tuple(PublicComponent(part.title, part.lines) for part in sheet.components if part.lines),
        tin=sheet.tin,
        oven=sheet.oven,
        allergens=sheet.allergens,
        egg_note=sheet.egg_note,
        measure_note=sheet.measure_note,
        batch_notes=sheet.batch_notes,
        estimates_note=sheet.estimates_note,
        video=sheet.video,
        swaps=sheet.swaps,
        unknowns=sheet.unknowns,
    )
