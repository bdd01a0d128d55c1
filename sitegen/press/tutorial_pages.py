"""Technique pages and the list of them."""

from collections.abc import Mapping, Sequence
from posixpath import dirname, join, normpath

from markupsafe import Markup

from sitegen.press.addresses import TUTORIALS
from sitegen.press.entries import TutorialEntry
from sitegen.press.imprint import Imprint
from sitegen.press.json_ld_pages import collection, technique, trail
from sitegen.press.page import Page, page_bytes
from sitegen.press.picture import Picture
from sitegen.press.prose import ProsePicture, prose_parts
from sitegen.press.shared import described, shared_picture
from sitegen.press.theme import Theme
from sitegen.sheet.values import SheetPhoto

TITLE = "Techniques"


def tutorial_page(
    theme: Theme, imprint: Imprint, tutorial: TutorialEntry, pictures: Mapping[str, Picture]
) -> bytes:
    """One technique. pictures: by the path of their source, below the folder that holds `content/`."""
    page = Page(
        here=tutorial.path,
        title=tutorial.title,
        description=described(tutorial.summary),
        language=imprint.language,
        data=(
            technique(imprint, tutorial, pictures),
            trail(imprint, (TITLE, TUTORIALS), (tutorial.title, tutorial.path)),
        ),
        picture=shared_picture(imprint, tutorial.photo, pictures),
    )
    content = {"tutorial": tutorial, "pictures": pictures, "parts": _parts(tutorial)}
    return page_bytes(theme, imprint, "tutorial.html", page, content)


def tutorials_page(
    theme: Theme, imprint: Imprint, tutorials: Sequence[TutorialEntry], pictures: Mapping[str, Picture]
) -> bytes:
    """The list of all techniques."""
    page = Page(
        here=TUTORIALS,
        title=TITLE,
        description=described(f"{TITLE} of {imprint.name}: {', '.join(each.title for each in tutorials)}"),
        language=imprint.language,
        data=(collection(imprint, TUTORIALS, TITLE, tutorials), trail(imprint, (TITLE, TUTORIALS))),
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
