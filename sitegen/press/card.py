"""The printed card: a Sheet as a tagged PDF (PDF/UA-1)."""

# mypy: disable-error-code="no-untyped-call"
# WeasyPrint and segno carry no types of their own.

from collections.abc import Iterator, Mapping
from hashlib import sha256
from typing import TYPE_CHECKING

import segno
from markupsafe import Markup

from sitegen.press.addresses import recipe_page, tutorial_page
from sitegen.press.card_columns import ingredient_columns
from sitegen.press.card_photos import PhotoMissing, boxes_of
from sitegen.press.card_text import card_prose
from sitegen.press.fonts import FontFile, subset
from sitegen.press.imprint import Imprint
from sitegen.press.theme import Theme
from sitegen.sheet.values import Sheet, SheetRevision

if TYPE_CHECKING:
    from sitegen.press.card_fetcher import CardFile

PAPERS: Mapping[str, str] = {"a4": "A4", "letter": "letter"}
"""Paper -> its name in CSS Paged Media."""


class CardPress:
    """Prints cards in one theme. Made once a worker: fonts and styles are read here, and kept.

    The printing engine is loaded here as well, because a proof or a page never needs it (0.8 s).
    """

    def __init__(self, theme: Theme) -> None:
        import weasyprint
        from weasyprint.text.fonts import FontConfiguration

        from sitegen.press.card_fetcher import CardFetcher, card_file

        self._weasyprint = weasyprint
        self._theme = theme
        self._template = theme.environment.get_template("card.html")
        self._fonts = FontConfiguration()
        files = {font: card_file("fonts", subset(font), "font/ttf") for font in theme.fonts}
        fetcher = CardFetcher({file.address: file for file in files.values()})
        styles = _colours(theme) + theme.styles["card.css"]
        faces = "".join(_face(font, file) for font, file in files.items())
        self._styles = weasyprint.CSS(string=faces + styles, url_fetcher=fetcher, font_config=self._fonts)
        self._papers = {
            paper: weasyprint.CSS(string=f"@page{{size:{name}}}", font_config=self._fonts)
            for paper, name in PAPERS.items()
        }

    def print_card(
        self, sheet: Sheet, imprint: Imprint, paper: str, photos: Mapping[str, bytes], page_address: str
    ) -> bytes:
        """One card. The same arguments give the same bytes, on any day and in any folder.

        paper: a key of PAPERS. photos: the sheet's photos cut by `cut_for_card` to `boxes_of(sheet)`, by file.
        page_address: full address of the recipe's page, printed in words and as a QR code.
        Raises PhotoMissing where the sheet shows a photo that is not given.
        """
        from sitegen.press.card_fetcher import CardFetcher, card_file
        from sitegen.press.card_tags import mend_tags

        files = {file: card_file("photos", photo, "image/jpeg") for file, photo in _shown(sheet, photos)}
        html = self._html(sheet, imprint, {file: shown.address for file, shown in files.items()}, page_address)
        card = self._weasyprint.HTML(
            string=html,
            base_url=page_address,
            url_fetcher=CardFetcher({shown.address: shown for shown in files.values()}),
        )
        pdf: bytes = card.write_pdf(
            stylesheets=[self._styles, self._papers[paper]],
            font_config=self._fonts,
            pdf_variant="pdf/ua-1",
            pdf_identifier=self._identifier(html, paper),
            finisher=mend_tags,
        )
        return pdf

    def _html(self, sheet: Sheet, imprint: Imprint, photos: Mapping[str, str], page_address: str) -> str:
        return self._template.render(
            sheet=sheet,
            head=sheet.head,
            imprint=imprint,
            photos=photos,
            page_address=page_address,
            revised=_latest(sheet),
            columns=ingredient_columns(sheet.components),
            has_beside=_mostly_beside(sheet),
            caution_titles={caution.key: caution.title for caution in sheet.cautions},
            prose=card_prose,
            qr=_qr,
            recipe_page=recipe_page,
            tutorial_page=tutorial_page,
        )

    def _identifier(self, html: str, paper: str) -> bytes:
        """The first half of the file's /ID (ISO 32000-1, 14.4): a hash of all that made the card."""
        return sha256(f"{self._theme.digest}{paper}{html}".encode()).hexdigest()[:32].encode()


def _shown(sheet: Sheet, photos: Mapping[str, bytes]) -> Iterator[tuple[str, bytes]]:
    for file in boxes_of(sheet):
        if file not in photos:
            raise PhotoMissing(file)
        yield file, photos[file]


def _mostly_beside(sheet: Sheet) -> bool:
    """Whether second measures are so many that they deserve a column."""
    second = [bool(line.beside) for part in sheet.components for line in part.lines]
    return second.count(True) > second.count(False)


def _latest(sheet: Sheet) -> SheetRevision | None:
    return max(sheet.revisions, key=lambda revision: revision.iso, default=None)


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


def _qr(address: str, title: str) -> Markup:
    """A QR code (ISO/IEC 18004) as SVG, medium correction. title: its alternative text."""
    code = segno.make(address, error="m", micro=False, boost_error=False)
    return Markup(code.svg_inline(border=2, omitsize=True, svgclass="qr", lineclass=None, title=title))
