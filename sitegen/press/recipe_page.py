"""A recipe's page, one template for each kind of view that an audience may have."""

from collections.abc import Mapping, Sequence

from markupsafe import Markup, escape

from sitegen.press import addresses
from sitegen.press.choices import Choices
from sitegen.press.entries import tag_link
from sitegen.press.imprint import Imprint
from sitegen.press.json_ld import recipe_data
from sitegen.press.json_ld_pages import trail
from sitegen.press.page import Page, page_bytes
from sitegen.press.picture import Picture
from sitegen.press.prose import to_html
from sitegen.press.shared import described, shared_picture
from sitegen.press.theme import Theme
from sitegen.sheet.values import Head, Sheet, SheetCaution, SheetRevision, Teaser, View

_TEMPLATES = {
    "Sheet": "recipe.html",
    "IngredientSide": "recipe-ingredients.html",
    "Teaser": "recipe-teaser.html",
}


def recipe_page(
    theme: Theme,
    imprint: Imprint,
    view: View,
    choices: Choices,
    pictures: Mapping[str, Picture],
    here: str,
    revisions: Sequence[SheetRevision] = (),
) -> bytes:
    """The page of what one audience sees of a recipe, in one edition at one batch.

    here: its path. choices: what its lists offer. pictures: by the path of their source.
    revisions: what changed, for a view that has none of its own; a Sheet brings its own.
    """
    head = view.head
    page = Page(
        here=here,
        title=head.title,
        description=described(head.summary),
        language=head.edition.language,
        data=(recipe_data(imprint, view, pictures, here), trail(imprint, (head.title, here))),
        picture=shared_picture(imprint, head.photo, pictures),
        canonical=choices.tested or here,
        translations=choices.translations if here == choices.tested else (),
        published=head.published,
        modified=head.modified,
    )
    content = {
        "view": view,
        "head": head,
        "choices": choices,
        "pictures": pictures,
        "tags": [tag_link(tag) for tag in head.tags],
        "revisions": view.revisions if isinstance(view, Sheet) else tuple(revisions),
        "recipe_path": addresses.recipe_page,
        "tutorial_path": addresses.tutorial_page,
        "has_ingredients": not isinstance(view, Teaser),
        "full_address": _full_address(imprint, head),
        **_sheet_only(view),
    }
    return page_bytes(theme, imprint, _TEMPLATES[type(view).__name__], page, content)


def _full_address(imprint: Imprint, head: Head) -> Markup:
    """Where a public reader finds the full sheet, '' where the school has no such place."""
    if not imprint.subscribers_address:
        return Markup("")
    return escape(imprint.subscribers_address + addresses.recipe_page(head.slug))


def _sheet_only(view: View) -> dict[str, object]:
    if not isinstance(view, Sheet):
        return {}
    return {
        "notes": to_html(view.notes),
        "red_cautions": _of_level(view.cautions, "red"),
        "other_cautions": tuple(caution for caution in view.cautions if caution.level != "red"),
    }


def _of_level(cautions: Sequence[SheetCaution], level: str) -> tuple[SheetCaution, ...]:
    return tuple(caution for caution in cautions if caution.level == level)
