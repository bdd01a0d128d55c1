"""The printed card: a Sheet as a tagged PDF (ISO 14289-1, PDF/UA-1)."""

from collections.abc import Iterator, Mapping
from functools import cached_property

from sitegen.press.card_page import CARD_STYLE, card_html
from sitegen.press.card_photos import PhotoMissing, boxes_of
from sitegen.press.fonts import FontFile
from sitegen.press.imprint import Imprint
from sitegen.press.kitchen_card_page import KITCHEN_STYLE, kitchen_card_html
from sitegen.press.paper_press import HALF_PAPERS, PAPERS, PaperPress
from sitegen.press.theme import Theme
from sitegen.sheet.values import Sheet

CARD_PAPERS = (*PAPERS, *HALF_PAPERS)
"""The whole ones for recipe cards, the half ones for kitchen cards."""


class CardPress:
    """Prints cards in one theme. Made once a worker. subsets: of its fonts, where they are cut."""

    def __init__(self, theme: Theme, subsets: Mapping[FontFile, bytes] | None = None) -> None:
        self._theme = theme
        self._subsets = subsets
        self._press = PaperPress(theme, CARD_STYLE, subsets)

    def print_card(
        self, sheet: Sheet, imprint: Imprint, paper: str, photos: Mapping[str, bytes], page_address: str
    ) -> bytes:
        """One card. The same arguments give the same bytes, on any day and in any folder.

        paper: one of CARD_PAPERS. photos: by file, cut by `cut_for_card` to `photos_on(sheet, paper)`.
        page_address: full address of the recipe's page, printed in words and as a QR code.
        Raises PhotoMissing where the card shows a photo that is not given.
        """
        if paper in HALF_PAPERS:
            html = kitchen_card_html(self._theme, sheet, imprint, page_address)
            return self._kitchen_press.pdf(html, paper, page_address)
        from sitegen.press.card_fetcher import card_file

        files = {file: card_file("photos", photo, "image/jpeg") for file, photo in _shown(sheet, photos)}
        addresses = {file: photo.address for file, photo in files.items()}
        html = card_html(self._theme, sheet, imprint, addresses, page_address)
        return self._press.pdf(html, paper, page_address, files.values())

    @cached_property
    def _kitchen_press(self) -> PaperPress:
        """Made when the first kitchen card is asked for: a school may print none."""
        return PaperPress(self._theme, KITCHEN_STYLE, self._subsets)


def style_on(paper: str) -> str:
    """The style of the theme that cards on this paper are set in."""
    return KITCHEN_STYLE if paper in HALF_PAPERS else CARD_STYLE


def photos_on(sheet: Sheet, paper: str) -> Mapping[str, tuple[float, float]]:
    """The photos that a card on this paper shows: file -> box in mm. A kitchen card shows none."""
    return {} if paper in HALF_PAPERS else boxes_of(sheet)


def _shown(sheet: Sheet, photos: Mapping[str, bytes]) -> Iterator[tuple[str, bytes]]:
    for file in boxes_of(sheet):
        if file not in photos:
            raise PhotoMissing(file)
        yield file, photos[file]
