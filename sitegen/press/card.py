"""The printed card: a Sheet as a tagged PDF (ISO 14289-1, PDF/UA-1)."""

from collections.abc import Iterator, Mapping

from sitegen.press.card_page import card_html
from sitegen.press.card_photos import PhotoMissing, boxes_of
from sitegen.press.fonts import FontFile
from sitegen.press.imprint import Imprint
from sitegen.press.paper_press import PAPERS, PaperPress
from sitegen.press.theme import Theme
from sitegen.sheet.values import Sheet

__all__ = ["PAPERS", "CardPress"]


class CardPress:
    """Prints cards in one theme. Made once a worker. subsets: of its fonts, where they are cut."""

    def __init__(self, theme: Theme, subsets: Mapping[FontFile, bytes] | None = None) -> None:
        self._theme = theme
        self._press = PaperPress(theme, "card.css", subsets)

    def print_card(
        self, sheet: Sheet, imprint: Imprint, paper: str, photos: Mapping[str, bytes], page_address: str
    ) -> bytes:
        """One card. The same arguments give the same bytes, on any day and in any folder.

        paper: a key of PAPERS. photos: by file, cut by `cut_for_card` to `boxes_of(sheet)`.
        page_address: full address of the recipe's page, printed in words and as a QR code.
        Raises PhotoMissing where the sheet shows a photo that is not given.
        """
        from sitegen.press.card_fetcher import card_file

        files = {file: card_file("photos", photo, "image/jpeg") for file, photo in _shown(sheet, photos)}
        addresses = {file: photo.address for file, photo in files.items()}
        html = card_html(self._theme, sheet, imprint, addresses, page_address)
        return self._press.pdf(html, paper, page_address, files.values())


def _shown(sheet: Sheet, photos: Mapping[str, bytes]) -> Iterator[tuple[str, bytes]]:
    for file in boxes_of(sheet):
        if file not in photos:
            raise PhotoMissing(file)
        yield file, photos[file]
