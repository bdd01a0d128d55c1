"""Lists of recipes: the front page, one page a tag, and the contents, where all are listed by word."""

from collections.abc import Mapping, Sequence

from markupsafe import Markup

from sitegen.press.addresses import CONTENTS, INDEX
from sitegen.press.drawer import drawer
from sitegen.press.entries import IndexEntry, TutorialEntry, tag_link
from sitegen.press.imprint import Imprint
from sitegen.press.json_ld_pages import collection, trail
from sitegen.press.page import Page, page_bytes
from sitegen.press.picture import Picture
from sitegen.press.prose import to_html, to_plain
from sitegen.press.shared import described, shared_picture
from sitegen.press.theme import Theme


def index_page(
    theme: Theme,
    imprint: Imprint,
    entries: Sequence[IndexEntry],
    pictures: Mapping[str, Picture],
    tutorials: Sequence[TutorialEntry],
    index: Markup,
) -> bytes:
    """The front page. entries: in the order of the list, the newest first; it opens the page.

    index: of the recipes and then the techniques, see `find_index`. Both are numbered in one row, as there.
    """
    newest = entries[0] if entries else None
    page = Page(
        here=INDEX,
        title="",
        description=described(imprint.tagline, to_plain(imprint.about)),
        language=imprint.language,
        data=(collection(imprint, INDEX, imprint.name, entries),),
        picture=shared_picture(imprint, newest.photo, pictures) if newest else None,
    )
    content = {
        "entries": tuple(enumerate(entries)),
        "pictures": pictures,
        "tutorials": tuple(enumerate(tutorials, start=len(entries))),
        "drawer": drawer(entries),
        "index": index,
        "about": to_html(imprint.about),
    }
    return page_bytes(theme, imprint, "index.html", page, content)


def tag_page(
    theme: Theme, imprint: Imprint, tag: str, entries: Sequence[IndexEntry], pictures: Mapping[str, Picture]
) -> bytes:
    """All recipes of one tag, in the order given; at least one."""
    here, title = tag_link(tag).path, tag.capitalize()
    page = Page(
        here=here,
        title=title,
        description=described(f"{title}, from {imprint.name}: {', '.join(entry.title for entry in entries)}"),
        language=imprint.language,
        data=(collection(imprint, here, title, entries), trail(imprint, (title, here))),
        picture=shared_picture(imprint, entries[0].photo, pictures),
    )
    return page_bytes(theme, imprint, "tag.html", page, {"entries": tuple(entries), "pictures": pictures})


def contents_page(theme: Theme, imprint: Imprint, entries: Sequence[IndexEntry]) -> bytes:
    """Every recipe by its title, then by all that readers choose by: the drawer of those without a script."""
    title = "Contents"
    by_title = sorted(entries, key=lambda entry: entry.title.casefold())
    page = Page(
        here=CONTENTS,
        title=title,
        description=f"Recipes of {imprint.name} by kind, time, tin and what they do without",
        language=imprint.language,
        data=(collection(imprint, CONTENTS, title, by_title), trail(imprint, (title, CONTENTS))),
    )
    content = {"entries": tuple(by_title), "drawer": drawer(by_title)}
    return page_bytes(theme, imprint, "contents.html", page, content)
