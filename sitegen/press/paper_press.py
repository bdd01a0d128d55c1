"""What prints on paper: HTML in a theme's faces and colours as a tagged PDF (ISO 14289-1, PDF/UA-1)."""

# mypy: disable-error-code="no-untyped-call"
# WeasyPrint carries no types of its own.

from collections.abc import Collection, Mapping
from hashlib import sha256
from pathlib import Path
from typing import TYPE_CHECKING

from sitegen.press.fonts import FontFile, subset
from sitegen.press.no_locale import forget_locale
from sitegen.press.theme import Theme
from sitegen.press.tokens import ThemeUnusable

if TYPE_CHECKING:
    from pydyf import PDF  # type: ignore[import-untyped]

    from sitegen.press.card_fetcher import CardFile

PAPERS: Mapping[str, str] = {"a4": "A4", "letter": "letter"}
HALF_PAPERS: Mapping[str, str] = {"a5": "A5", "half-letter": "5.5in 8.5in"}
"""Paper -> its size in CSS Paged Media. A half paper is one of the others, folded."""


class PaperPress:
    """Prints with one style sheet of a theme. Made once a worker: fonts and styles are read here, and kept.

    The printing engine is imported here and not above, because it takes longer than a proof of all
    recipes, which never prints.

    style_text: all that its pages are styled with. faces: the fonts that are named there.
    """

    def __init__(self, theme: Theme, style: str, subsets: Mapping[FontFile, bytes] | None = None) -> None:
        """style: file name of the style sheet among the theme's. subsets: of its fonts, if cut already."""
        forget_locale()
        import weasyprint
        from weasyprint.text.fonts import FontConfiguration

        from sitegen.press.card_fetcher import CardFetcher, card_file

        self._fonts = FontConfiguration()
        cut = subsets or {font: subset(font) for font in theme.fonts}
        files = {font: card_file("fonts", cut[font], "font/ttf") for font in theme.fonts}
        rules = "".join(_face(font, file) for font, file in files.items())
        self.faces = tuple(files.values())
        self.style_text = rules + paper_tokens(theme) + theme.styles[style]
        self._style = weasyprint.CSS(
            string=self.style_text,
            url_fetcher=CardFetcher(self.faces),
            font_config=self._fonts,
        )
        self._papers = {
            paper: weasyprint.CSS(string=f"@page{{size:{name}}}", font_config=self._fonts)
            for paper, name in {**PAPERS, **HALF_PAPERS}.items()
        }

    def pdf(self, html: str, paper: str, base_url: str, files: "Collection[CardFile]" = ()) -> bytes:
        """The page on paper. The same arguments give the same bytes, on any day and in any folder.

        paper: a key of PAPERS or HALF_PAPERS. base_url: what addresses are relative to. files: all that
        the page shows. Raises ThemeUnusable where a template asks for anything else.
        """
        from weasyprint import HTML
        from weasyprint.urls import FatalURLFetchingError

        from sitegen.press.card_fetcher import CardFetcher

        page = HTML(string=html, base_url=base_url, url_fetcher=CardFetcher(files))
        try:
            pdf: bytes = page.write_pdf(
                stylesheets=[self._style, self._papers[paper]],
                font_config=self._fonts,
                pdf_variant="pdf/ua-1",
                pdf_identifier=self._identifier(html, paper),
                finisher=_finished,
            )
        except FatalURLFetchingError as problem:  # it is no Exception, so nothing passes it by
            raise ThemeUnusable(Path("themes"), (str(problem),)) from problem
        return pdf

    def _identifier(self, html: str, paper: str) -> bytes:
        """The first half of the file's /ID (ISO 32000-1, 14.4): a hash of all that made the page.

        Fonts and photos are in it by their addresses, which their bytes decide.
        """
        return sha256("\n".join((paper, self.style_text, html)).encode()).hexdigest()[:32].encode()


def _finished(document: object, pdf: "PDF") -> None:
    """What WeasyPrint calls before it writes the file."""
    from sitegen.press.card_tags import mend_tags
    from sitegen.press.written_once import write_out

    mend_tags(document, pdf)
    write_out(pdf)


def paper_tokens(theme: Theme) -> str:
    """The theme's type and colours; paper has one scheme, the light one."""
    colours = theme.tokens.light.model_dump(by_alias=True).items()
    families = {"serif": theme.tokens.type.serif, "sans": theme.tokens.type.sans}.items()
    named = [f"--colour-{name}:{colour};" for name, colour in colours]
    named += [f"--type-{name}:{family};" for name, family in families]
    return f":root{{{''.join(named)}}}\n"


def _face(font: FontFile, file: "CardFile") -> str:
    slope = "italic" if font.italic else "normal"
    return (
        f'@font-face{{font-family:"{font.family}";font-weight:{font.weight};font-style:{slope};'
        f'src:url("{file.address}") format("truetype")}}\n'
    )
