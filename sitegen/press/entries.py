"""Recipes and technique pages as lists show them."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from unicodedata import normalize

from sitegen.press import addresses
from sitegen.sheet.facet_values import KIND, Facet
from sitegen.sheet.values import Head, SheetPhoto, SheetRevision

_NOT_IN_SLUG = re.compile(r"[^a-z0-9]+")


@dataclass(frozen=True)
class IndexEntry:
    """A recipe in a list. path: its page. published, modified: ISO dates, '' for unknown.

    start_to_finish: the whole time as print sets it, '' for unknown. marks: by what it is chosen, its tags
    among them. labels_of: see `Facets`. revised: the day of the latest correction that this audience has
    heard of, as print sets it, '' for none.
    """

    slug: str
    title: str
    summary: str
    makes: str
    start_to_finish: str
    tags: tuple[str, ...]
    photo: SheetPhoto | None
    path: str
    published: str
    modified: str
    marks: tuple[Facet, ...] = ()
    labels_of: str = ""
    revised: str = ""


@dataclass(frozen=True)
class TutorialEntry:
    """A technique page. source: the path of its Markdown, against which its pictures are found."""

    slug: str
    title: str
    summary: str
    markdown: str
    source: str
    photo: SheetPhoto | None = None

    @property
    def path(self) -> str:
        return addresses.tutorial_page(self.slug)


@dataclass(frozen=True)
class TagLink:
    """title: as the baker wrote it. path: its page."""

    title: str
    path: str


def entry_of(head: Head, revisions: Sequence[SheetRevision] = ()) -> IndexEntry:
    """The recipe as a list shows it, from what any audience may know of it.

    revisions: that the audience hears of, the latest first; one before its own first day is no news to it.
    """
    news = [one.day for one in revisions if one.iso > head.published]
    return IndexEntry(
        slug=head.slug,
        title=head.title,
        summary=head.summary,
        makes=head.makes,
        start_to_finish=head.times.start_to_finish,
        tags=head.tags,
        photo=head.photo,
        path=addresses.recipe_page(head.slug),
        published=head.published,
        modified=head.modified,
        marks=marks_of(head),
        labels_of=head.facets.labels_of,
        revised=news[0] if news else "",
    )


def marks_of(head: Head) -> tuple[Facet, ...]:
    """Everything by which a reader may choose the recipe: its tags, by their address, and its facets."""
    kinds = {tag_slug(tag): Facet(0, KIND, tag_slug(tag), tag) for tag in head.tags}
    return (*kinds.values(), *head.facets.marks)


def tag_slug(tag: str) -> str:
    """The tag in an address: 'Soft fruit' -> 'soft-fruit', 'Crème' -> 'creme'."""
    plain = normalize("NFKD", tag).encode("ascii", "ignore").decode()
    return _NOT_IN_SLUG.sub("-", plain.lower()).strip("-")


def tag_link(tag: str) -> TagLink:
    return TagLink(tag, addresses.tag_page(tag_slug(tag)))
