"""Technique pages and the list of them."""

from collections.abc import Mapping, Sequence
from posixpath import dirname, join, normpath

from markupsafe import Markup

from sitegen.press.addresses import TUTORIALS
from sitegen.press.entries import TutorialEntry
from sitegen.press.imprint import Imprint
from sitegen.press.page import Page, page_bytes, shared_picture
from sitegen.press.picture import Picture
from sitegen.press.prose import ProsePicture, prose_parts
from sitegen.press.theme import Theme
from sitegen.sheet.values import SheetPhoto


def tutorial_page(
    theme: Theme, imprint: Imprint, tutorial: TutorialEntry, pictures: Mapping[str, Picture]
) -> bytes:
    """One technique. pictures: by the path of their source, below the folder that holds `content/`."""
    opening = pictures.get(tutorial.photo.file) if tutorial.photo else None
    page = Page(
        here=tutorial.path,
        title=tutorial.title,
        description=tutorial.summary,
        language=imprint.language,
        picture_address=shared_picture(imprint, opening),
    )
    content = {"tutorial": tutorial, "pictures": pictures, "parts": _parts(tutorial)}
    return page_bytes(theme, imprint, "tutorial.html", page, content)


def tutorials_page(
    theme: Theme, imprint: Imprint, tutorials: Sequence[TutorialEntry], pictures: Mapping[str, Picture]
) -> bytes:
    """The list of all techniques."""
    page = Page(
        here=TUTORIALS,
        title="Techniques",
        description=f"Techniques of {imprint.name}",
        language=imprint.language,
    )
    content = {"tutorials": tuple(tutorials), "pictures": pictures}
    return page_bytes(theme, imprint, "tutorials.html", page, content)


def _parts(tutorial: TutorialEntry) -> list[Markup | SheetPhoto]:
    """The text, and each picture in it by the path that the pictures are kept under."""
    folder = dirname(tutorial.source)
    return [
        SheetPhoto(normpath(join(folder, part.file)), part.alt) if isinstance(part, ProsePicture) else part
        for part in prose_parts(tutorial.markdown)
    ]
