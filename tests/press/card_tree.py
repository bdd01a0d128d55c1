"""What a printed card is tagged as, and on which page each piece of it stands."""

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pikepdf


@dataclass(frozen=True)
class Tagged:
    """An element of the structure tree (ISO 32000-1, 14.7). tag: 'H2', 'Sect', 'L'.

    pages: of each piece of marked content below it, from 1, in reading order. A line of text is a piece.
    """

    tag: str
    kids: tuple["Tagged", ...]
    pages: tuple[int, ...]

    def all(self, *tags: str) -> Iterator["Tagged"]:
        """The element and those below it that are tagged so, in reading order."""
        if self.tag in tags:
            yield self
        for kid in self.kids:
            yield from kid.all(*tags)

    def leaves(self) -> Iterator["Tagged"]:
        if not self.kids and self.pages:
            yield self
        for kid in self.kids:
            yield from kid.leaves()


def card_tree(card: Path) -> Tagged:
    with pikepdf.open(card) as pdf:
        numbers = {page.objgen: number for number, page in enumerate(pdf.pages, 1)}
        return _tagged(pdf.Root.StructTreeRoot, numbers, 0)


def _tagged(element: pikepdf.Object, numbers: dict[tuple[int, int], int], page: int) -> Tagged:
    if "/Pg" in element:
        page = numbers[element.Pg.objgen]
    kids, pages = [], []
    for kid in _kids(element):
        if isinstance(kid, pikepdf.Dictionary) and "/S" in kid:
            kids.append(_tagged(kid, numbers, page))
            pages += kids[-1].pages
        elif isinstance(kid, pikepdf.Dictionary):
            pages.append(numbers[kid.Pg.objgen] if "/Pg" in kid else page)
        else:
            pages.append(page)
    return Tagged(str(element.get("/S", "/Root")).lstrip("/"), tuple(kids), tuple(pages))


def _kids(element: pikepdf.Object) -> Iterator[pikepdf.Object]:
    kids = element.get("/K", [])
    yield from kids if isinstance(kids, pikepdf.Array) else [kids]
