"""The head of a sheet: what any audience may know of a recipe."""

from sitegen.kitchen.recipe import Recipe
from sitegen.sheet.days import day_text
from sitegen.sheet.facet_values import Facets
from sitegen.sheet.setting import Setting
from sitegen.sheet.values import BatchLabel, EditionLabel, Head, SheetPhoto, SheetRevision
from sitegen.sheet.work_values import Times


def head_of(
    recipe: Recipe, makes: str, batch: BatchLabel, times: Times, facets: Facets, setting: Setting
) -> Head:
    """The head, with the day of the first release and of the latest revision as ISO dates."""
    days = [day for day in (recipe.release.subscribers, recipe.release.public) if day is not None]
    published = min(days).isoformat() if days else ""
    revised = [revision.date.isoformat() for revision in recipe.revisions]
    photo = recipe.photo
    return Head(
        slug=recipe.slug,
        title=setting.respelled(recipe.title),
        summary=setting.respelled(recipe.summary),
        makes=makes,
        tags=recipe.tags,
        photo=SheetPhoto(photo.file, setting.respelled(photo.alt)) if photo else None,
        published=published,
        modified=max([*revised, published]) if revised or published else "",
        times=times,
        edition=EditionLabel(setting.edition.key, setting.edition.title, setting.edition.language),
        batch=batch,
        facets=facets,
    )


def revisions_of(recipe: Recipe, setting: Setting) -> tuple[SheetRevision, ...]:
    """All revisions, the latest first, their days as the region writes them."""
    latest_first = sorted(recipe.revisions, key=lambda revision: revision.date, reverse=True)
    return tuple(
        SheetRevision(
            iso=revision.date.isoformat(),
            day=day_text(revision.date, setting.edition),
            note=setting.respelled(revision.note),
        )
        for revision in latest_first
    )
