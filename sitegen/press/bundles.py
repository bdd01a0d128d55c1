"""Bundles of cards: the page that lists them, and the contents that lie in each."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from io import BytesIO

from sitegen.press import addresses
from sitegen.press.fonts import FontFile
from sitegen.press.imprint import Imprint
from sitegen.press.json_ld_pages import collection, trail
from sitegen.press.page import Page, page_bytes
from sitegen.press.paper_press import PaperPress
from sitegen.press.theme import Theme

TITLE = "Cards in bundles"
TEMPLATE, CONTENTS_TEMPLATE, STYLE = "bundles.html", "bundle-contents.html", "order.css"


@dataclass(frozen=True)
class ListedBundle:
    """A bundle on the page. path: in the tree. size: '4.2 MB'. told: the recipes in it, by title."""

    title: str
    path: str
    size: str
    told: tuple[str, ...]


@dataclass(frozen=True)
class ContentsCard:
    """title: 'British metric, A4'. file: its name inside the bundle. pages: '3 pages'."""

    title: str
    file: str
    pages: str


@dataclass(frozen=True)
class ContentsRecipe:
    """news: (day, what happened on it), in order."""

    title: str
    news: tuple[tuple[str, str], ...]
    cards: tuple[ContentsCard, ...]


@dataclass(frozen=True)
class BundleContents:
    """What lies in a bundle. told: in a sentence, what all of it is."""

    title: str
    told: str
    recipes: tuple[ContentsRecipe, ...]


def bundles_page(
    theme: Theme, imprint: Imprint, changed: Sequence[ListedBundle], months: Sequence[ListedBundle]
) -> bytes:
    """The page for subscribers. changed, months: the newest first; () for none."""
    here = addresses.BUNDLES
    page = Page(
        here=here,
        title=TITLE,
        description=f"Cards of {imprint.name} to print, month by month, and what to print again",
        language=imprint.language,
        data=(collection(imprint, here, TITLE, (*changed, *months)), trail(imprint, (TITLE, here))),
    )
    return page_bytes(theme, imprint, TEMPLATE, page, {"changed": tuple(changed), "months": tuple(months)})


class ContentsPress:
    """Prints contents. Made once a worker: fonts and styles are read here."""

    def __init__(self, theme: Theme, subsets: Mapping[FontFile, bytes]) -> None:
        self._theme = theme
        self._press = PaperPress(theme, STYLE, subsets)

    def pdf(self, contents: BundleContents, imprint: Imprint, paper: str) -> bytes:
        """The contents on paper, tagged. The same arguments give the same bytes."""
        html = self._theme.environment.printed(CONTENTS_TEMPLATE, contents=contents, imprint=imprint)
        return self._press.pdf(html, paper, imprint.address)


def page_count(pdf: bytes) -> int:
    """How many pages a card has."""
    from pikepdf import open as open_pdf

    with open_pdf(BytesIO(pdf)) as file:
        return len(file.pages)
