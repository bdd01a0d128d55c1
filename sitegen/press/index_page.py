"""Lists of recipes: the front page and one page a tag."""

from collections.abc import Mapping, Sequence

from sitegen.press.addresses import INDEX
from sitegen.press.entries import IndexEntry, TutorialEntry, tag_link
from sitegen.press.imprint import Imprint
from sitegen.press.page import Page, page_bytes, shared_picture
from sitegen.press.picture import Picture
from sitegen.press.prose import to_html
from sitegen.press.theme import Theme


def index_page(
    theme: Theme,
    imprint: Imprint,
    entries: Sequence[IndexEntry],
    pictures: Mapping[str, Picture],
    tags: Sequence[str],
    tutorials: Sequence[TutorialEntry],
) -> bytes:
    """The front page. entries: in the order of the list, the newest first; it opens the page."""
    newest = entries[0] if entries else None
    picture = pictures.get(newest.photo.file) if newest and newest.photo else None
    page = Page(
        here=INDEX,
        title="",
        description=imprint.tagline,
        language=imprint.language,
        picture_address=shared_picture(imprint, picture),
    )
    content = {
        "newest": newest,
        "entries": tuple(entries[1:]),
        "pictures": pictures,
        "tags": [tag_link(tag) for tag in tags],
        "tutorials": tuple(tutorials),
        "about": to_html(imprint.about),
    }
    return page_bytes(theme, imprint, "index.html", page, content)


def tag_page(
    theme: Theme, imprint: Imprint, tag: str, entries: Sequence[IndexEntry], pictures: Mapping[str, Picture]
) -> bytes:
    """All recipes of one tag, in the order given."""
    page = Page(
        here=tag_link(tag).path,
        title=tag.capitalize(),
        description=f"Recipes of {imprint.name}: {tag}",
        language=imprint.language,
    )
    return page_bytes(theme, imprint, "tag.html", page, {"entries": tuple(entries), "pictures": pictures})
