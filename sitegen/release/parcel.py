"""What a build keeps in hand of a recipe: all that lists, cards and other recipes' pages need, and no sheet.

A sheet in every batch and edition is half a megabyte. A school of a thousand recipes is built recipe by
recipe, each worked off by itself, and what stays of it is a few kilobytes, which are kept between builds.
"""

from dataclasses import dataclass

from pydantic import TypeAdapter

from sitegen.faults import Fault
from sitegen.press.entries import IndexEntry
from sitegen.press.find_index import Sought
from sitegen.press.leaf import Tree
from sitegen.release.photo_work import Box
from sitegen.sheet.values import SheetRevision


@dataclass(frozen=True)
class Listed:
    """A recipe as the lists of one tree show it.

    mapped: (path, day of the last change) of each page for search engines. photos: files that its pages show.
    """

    entry: IndexEntry
    sought: Sought
    mapped: tuple[tuple[str, str], ...]
    photos: tuple[str, ...]


@dataclass(frozen=True)
class CardRow:
    """One card to print. path: in the subscribers' tree. page: path of the recipe's page in that edition.

    made_of: hash of all that it shows, but for the theme and the pixels of its photos.
    """

    edition: str
    edition_title: str
    paper: str
    path: str
    page: str
    steps: int
    photos: tuple[tuple[str, Box], ...]
    made_of: str


@dataclass(frozen=True)
class Parcel:
    """about: slugs of the recipes that it is made of, its own first. public, subscribers: None where the
    audience has nothing of it on the day. revisions: the latest first. idle: see `Settled`. secrets: key of
    its `RecipeSecrets` in the cache, '' for a recipe at fault.
    """

    slug: str
    title: str
    faults: tuple[Fault, ...]
    idle: tuple[Fault, ...] = ()
    about: tuple[str, ...] = ()
    public: Listed | None = None
    subscribers: Listed | None = None
    cards: tuple[CardRow, ...] = ()
    revisions: tuple[SheetRevision, ...] = ()
    secrets: str = ""

    def listed(self, tree: Tree) -> Listed | None:
        return self.public if tree is Tree.PUBLIC else self.subscribers


@dataclass(frozen=True)
class PageRow:
    """A page or a text that was made of a recipe. path: in its tree. key: of its bytes in the cache."""

    tree: Tree
    path: str
    key: str


_PARCEL = TypeAdapter(Parcel)
_PAGES = TypeAdapter(tuple[PageRow, ...])


def parcel_json(parcel: Parcel) -> bytes:
    return _PARCEL.dump_json(parcel)


def parcel_from(body: bytes) -> Parcel:
    """What `parcel_json` wrote."""
    return _PARCEL.validate_json(body)


def pages_json(pages: tuple[PageRow, ...]) -> bytes:
    return _PAGES.dump_json(pages)


def pages_from(body: bytes) -> tuple[PageRow, ...]:
    """What `pages_json` wrote."""
    return _PAGES.validate_json(body)
