"""The card as one HTML page, before it is printed."""

# mypy: disable-error-code="no-untyped-call"
# segno carries no types of its own.

from collections.abc import Mapping

import segno
from markupsafe import Markup

from sitegen.press.addresses import recipe_page, tutorial_page
from sitegen.press.card_columns import ingredient_columns
from sitegen.press.card_text import card_prose
from sitegen.press.imprint import Imprint
from sitegen.press.theme import Theme
from sitegen.sheet.values import Sheet, SheetRevision


def card_html(
    theme: Theme, sheet: Sheet, imprint: Imprint, photos: Mapping[str, str], page_address: str
) -> str:
    """The page of a card. photos: file -> its address; page_address: of the recipe's page, in full."""
    return theme.environment.get_template("card.html").render(
        sheet=sheet,
        head=sheet.head,
        imprint=imprint,
        photos=photos,
        page_address=page_address,
        columns=ingredient_columns(sheet.components),
        has_beside=_mostly_beside(sheet),
        caution_titles={caution.key: caution.title for caution in sheet.cautions},
        revised=_latest(sheet),
        prose=card_prose,
        qr=_qr,
        recipe_page=recipe_page,
        tutorial_page=tutorial_page,
    )


def _mostly_beside(sheet: Sheet) -> bool:
    """Whether second measures are so many that they deserve a column."""
    second = [bool(line.beside) for part in sheet.components for line in part.lines]
    return second.count(True) > second.count(False)


def _latest(sheet: Sheet) -> SheetRevision | None:
    return max(sheet.revisions, key=lambda revision: revision.iso, default=None)


def _qr(address: str, title: str) -> Markup:
    """A QR code (ISO/IEC 18004) as SVG, with medium correction. title: its alternative text."""
    code = segno.make(address, error="m", micro=False, boost_error=False)
    return Markup(code.svg_inline(border=2, omitsize=True, svgclass="qr", lineclass=None, title=title))
