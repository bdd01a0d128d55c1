"""The printed card: a Sheet as a tagged PDF (ISO 14289-1, PDF/UA-1)."""

# mypy: disable-error-code="no-untyped-call"
# WeasyPrint carries no types of its own.

from collections.abc import Iterator, Mapping
from hashlib import sha256
from typing import TYPE_CHECKING

from sitegen.press.card_page import card_html
from sitegen.press.card_photos import PhotoMissing, boxes_of
from sitegen.press.fonts import FontFile, subset
from sitegen.press.imprint import Imprint
from sitegen.press.theme import Theme
from sitegen.sheet.values import Sheet

if TYPE_CHECKING:
    from sitegen.press.card_fetcher import CardFile

PAPERS: Mapping[str, str] = {"a4": "A4", "letter": "letter"}
"""Paper -> its name in CSS Paged Media."""


class CardPress:
    """Prints cards in one theme. Made once a worker: fonts and styles are read here, and kept.

    The printing engine is imported here and not above, because it takes longer than a proof of all
    recipes, which never prints.
    """

    def __init__(self, theme: Theme) -> None:
        import weasyprint
        from weasyprint.text.fonts import FontConfiguration

        from sitegen.press.card_fetcher import CardFetcher, card_file

        self._theme = theme
        self._fonts = FontConfiguration()
        files = {font: card_file("fonts", subset(font), "font/ttf") for font in theme.fonts}
        faces = "".join(_face(font, file) for font, file in files.items())
        self._style_text = faces + _colours(theme) + theme.styles["card.css"]
        self._style = weasyprint.CSS(
            string=self._style_text,
            url_fetcher=CardFetcher(files.values()),
            font_config=self._fonts,
        )
        self._papers = {
            paper: weasyprint.CSS(string=f"@page{{size:{name}}}", font_config=self._fonts)
            for paper, name in PAPERS.items()
        }

    def print_card(
        self, sheet: Sheet, imprint: Imprint, paper: str, photos: Mapping[str, bytes], page_address: str
    ) -> bytes:
        """One card. The same arguments give the same bytes, on any day and in any folder.

        paper: a key of PAPERS. photos: by file, cut by `cut_for_card` to `boxes_of(sheet)`.
        page_address: full address of the recipe's page, printed in words and as a QR code.
        Raises PhotoMissing where the sheet shows a photo that is not given.
        """
        from weasyprint import HTML

        from sitegen.press.card_fetcher import CardFetcher, card_file
        from sitegen.press.card_tags import mend_tags

        files = {file: card_file("photos", photo, "image/jpeg") for file, photo in _shown(sheet, photos)}
        addresses = {file: photo.address for file, photo in files.items()}
        html = card_html(self._theme, sheet, imprint, addresses, page_address)
        card = HTML(string=html, base_url=page_address, url_fetcher=CardFetcher(files.values()))
        pdf: bytes = card.write_pdf(
            stylesheets=[self._style, self._papers[paper]],
            font_config=self._fonts,
            pdf_variant="pdf/ua-1",
            pdf_identifier=self._identifier(html, paper),
            finisher=mend_tags,
        )
        return pdf

    def _identifier(self, html: str, paper: str) -> bytes:
        """The first half of the file's /ID (ISO 32000-1, 14.4): a hash of all that made the card.

        Fonts and photos are in it by their addresses, which their bytes decide.
        """
        return sha256("\n".join((paper, self._style_text, html)).encode()).hexdigest()[:32].encode()


def _shown(sheet: Sheet, photos: Mapping[str, bytes]) -> Iterator[tuple[str, bytes]]:
    for file in boxes_of(sheet):
        if file not in photos:
            raise PhotoMissing(file)
        yield file, photos[file]


def _colours(theme: Theme) -> str:
    """Paper has one scheme, the light one."""
    colours = theme.tokens.light.model_dump(by_alias=True).items()
    return ":root{" + "".join(f"--colour-{name}:{colour};" for name, colour in colours) + "}\n"


def _face(font: FontFile, file: "CardFile") -> str:
    slope = "italic" if font.italic else "normal"
    return (
        f'@font-face{{font-family:"{font.family}";font-weight:{font.weight};font-style:{slope};'
        f'src:url("{file.address}") format("truetype")}}\n'
    )
