"""Lists, techniques and the way to a page as schema.org data: CollectionPage, Article, BreadcrumbList."""

from collections.abc import Mapping, Sequence
from typing import Protocol

from markupsafe import Markup

from sitegen.press.addresses import INDEX
from sitegen.press.entries import TutorialEntry
from sitegen.press.imprint import Imprint
from sitegen.press.json_ld_text import CONTEXT, Json, block, school_object
from sitegen.press.picture import Picture
from sitegen.press.shared import shared_picture


class Listed(Protocol):
    """What a list leads to. path: in the tree."""

    @property
    def title(self) -> str: ...

    @property
    def path(self) -> str: ...


def collection(imprint: Imprint, here: str, title: str, entries: Sequence[Listed]) -> Markup:
    """A list of pages or files, in the order of the page that shows it. here: its path."""
    found: dict[str, Json] = {
        "@context": CONTEXT,
        "@type": "CollectionPage",
        "name": title,
        "url": imprint.address_of(here),
        "inLanguage": imprint.language,
        "publisher": school_object(imprint),
        "mainEntity": {
            "@type": "ItemList",
            "itemListElement": [
                _numbered(number, {"name": entry.title, "url": imprint.address + entry.path})
                for number, entry in enumerate(entries, start=1)
            ],
        },
    }
    return block(found)


def technique(imprint: Imprint, tutorial: TutorialEntry, pictures: Mapping[str, Picture]) -> Markup:
    """A technique page, which tells no day."""
    school = school_object(imprint)
    found: dict[str, Json] = {
        "@context": CONTEXT,
        "@type": "Article",
        "headline": tutorial.title,
        "description": tutorial.summary,
        "url": imprint.address + tutorial.path,
        "inLanguage": imprint.language,
        "author": school,
        "publisher": school,
    }
    picture = shared_picture(imprint, tutorial.photo, pictures)
    return block({**found, "image": picture.address} if picture else found)


def trail(imprint: Imprint, *pages: tuple[str, str]) -> Markup:
    """The way from the front page to this one, the last. pages: title and path of each after the first."""
    steps = ((imprint.name, INDEX), *pages)
    found: dict[str, Json] = {
        "@context": CONTEXT,
        "@type": "BreadcrumbList",
        "itemListElement": [
            _numbered(number, {"name": title, "item": {"@type": "WebPage", "@id": imprint.address_of(path)}})
            for number, (title, path) in enumerate(steps, start=1)
        ],
    }
    return block(found)


def _numbered(number: int, found: Mapping[str, Json]) -> dict[str, Json]:
    return {"@type": "ListItem", "position": number, **found}
