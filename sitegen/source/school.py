"""The school and the whole of what was read from a `content/` folder, as frozen values."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from sitegen.faults import Fault, Place
from sitegen.kitchen.amounts import NOWHERE
from sitegen.kitchen.method import Photo
from sitegen.kitchen.prices import PriceList
from sitegen.kitchen.recipe import Recipe
from sitegen.kitchen.tables import Tables
from sitegen.source.headings import Heading
from sitegen.source.orders import Order

HALF_PAPERS = frozenset({"a5", "half-letter"})
"""Of kitchen cards."""


@dataclass(frozen=True)
class School:
    """`content/site.yaml`: who publishes, in which editions, on which paper.

    address: where the public site lives, ending in '/'; subscribers_address: the same for the
    subscribers' site. written_in: key of the edition whose spoons and cups the recipes are written in.
    egg_size: what '2 eggs' means without a size. editions: keys, the first is the site's own.
    papers: 'a4', 'letter', 'a5', 'half-letter', the first is the usual one. time_zone: IANA name.
    about: Markdown.
    """

    name: str
    tagline: str
    address: str
    subscribers_address: str
    language: str
    written_in: str
    egg_size: str
    editions: tuple[str, ...]
    papers: tuple[str, ...]
    theme: str
    time_zone: str
    about: str = ""
    copyright: str = ""

    @property
    def whole_paper(self) -> str:
        """What plans and orders are printed on: the first paper that is no half one; A4 where all are."""
        return next((paper for paper in self.papers if paper not in HALF_PAPERS), "a4")


@dataclass(frozen=True)
class Tutorial:
    """A technique page, `content/tutorials/<slug>.md`: YAML front matter, then Markdown.

    photos: those shown in the text (`![alt](file)`), checked to exist.
    """

    slug: str
    title: str
    summary: str
    markdown: str
    photo: Photo | None = None
    photos: tuple[Photo, ...] = ()
    at: Place = field(default=NOWHERE, compare=False, repr=False)


@dataclass(frozen=True)
class Content:
    """Everything read from a folder. `root` is the folder that holds `content/`.

    recipes and tutorials that could not be read at all are missing here and stand in `faults`.
    texts: file -> its lines, to show the line of a fault. headings: of every recipe that has one.
    prices: what the school pays, for the kitchen's own commands; None where it has no `prices.yaml`, or one
    at fault. orders: of `content/orders/`, likewise.
    """

    root: str
    school: School | None
    recipes: tuple[Recipe, ...]
    tutorials: tuple[Tutorial, ...]
    tables: Tables
    faults: tuple[Fault, ...]
    texts: Mapping[str, tuple[str, ...]] = field(hash=False, compare=False, repr=False)
    prices: PriceList | None = None
    orders: tuple[Order, ...] = ()
    headings: tuple[Heading, ...] = ()
