"""What prints on paper: HTML in a theme's faces and colours as a tagged PDF (ISO 14289-1, PDF/UA-1)."""

# mypy: disable-error-code="no-untyped-call"
# WeasyPrint carries no types of its own.

from collections.abc import Collection, Mapping
from hashlib import sha256
from typing import TYPE_CHECKING

from sitegen.press.fonts import FontFile, subset
from sitegen.press.theme import Theme

if TYPE_CHECKING:
    from sitegen.press.card_fetcher import CardFile

PAPERS: Mapping[str, str] = {"a4": "A4", "letter": "letter"}
"""Paper -> its name in CSS Paged Media."""


class PaperPress:
    """Prints with one style sheet of a theme. Made once a worker: fonts and styles are read here, and kept.

    The printing engine is imported here and not above, because it takes longer than a proof of all
    recipes, which never prints.
    """

    def __init__(self, theme: Theme, style: str, subsets: Mapping[FontFile, bytes] | None = None) -> None:
        """style: file name of the style sheet among the theme's. subsets: of its fonts, if cut already."""
        import weasyprint
        from weasyprint.text.fonts import FontConfiguration

        from sitegen.press.card_fetcher import CardFetcher, card_file

        self._fonts = FontConfiguration()
        cut = subsets or {font: subset(font) for font in theme.fonts}
        files = {font: card_file("fonts", cut[font], "font/ttf") for font in theme.fonts}
        faces = "".join(_face(font, file) for font, file in files.items())
        self._style_text = faces + _colours(theme) + theme.styles[style]
        self._style = weasyprint.CSS(
            string=self._style_text,
            url_fetcher=CardFetcher(files.values()),
            font_config=self._fonts,
        )
        self._papers = {
            paper: weasyprint.CSS(string=f"@page{{size:{name}}}", font_config=self._fonts)
            for paper, name in PAPERS.items()
        }

    def pdf(self, html: str, paper: str, base_url: str, files: "Collection[CardFile]" = ()) -> bytes:
        """The page on paper. The same arguments give the same bytes, on any day and in any folder.

        paper: a key of PAPERS. base_url: what addresses are relative to. files: all that the page shows.
        """
        from weasyprint import HTML

        from sitegen.press.card_fetcher import CardFetcher
        from sitegen.press.card_tags import mend_tags

        page = HTML(string=html, base_url=base_url, url_fetcher=CardFetcher(files))
        pdf: bytes = page.write_pdf(
            stylesheets=[self._style, self._papers[paper]],
            font_config=self._fonts,
            pdf_variant="pdf/ua-1",
            pdf_identifier=self._identifier(html, paper),
            finisher=mend_tags,
        )
        return pdf

    def _identifier(self, html: str, paper: str) -> bytes:
        """The first half of the file's /ID (ISO 32000-1, 14.4): a hash of all that made the page.

        Fonts and photos are in it by their addresses, which their bytes decide.
        """
        return sha256("\n".join((paper, self._style_text, html)).encode()).hexdigest()[:32].encode()


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
