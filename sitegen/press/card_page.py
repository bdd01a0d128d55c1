"""The recipe card as one HTML page, before it is printed."""

from collections.abc import Mapping

from sitegen.press.addresses import recipe_page, tutorial_page
from sitegen.press.card_columns import ColumnWidth, card_columns
from sitegen.press.card_notes import notes_before
from sitegen.press.card_parts import latest_revision, qr_code, typed
from sitegen.press.card_rows import step_rows
from sitegen.press.card_text import card_prose
from sitegen.press.imprint import Imprint
from sitegen.press.theme import Theme
from sitegen.sheet.values import Sheet

CARD_TEMPLATE, CARD_STYLE = "card.html", "card.css"
_BY_WEIGHT = ColumnWidth(columns=3, line=26, run_on=38, note=44)
_IN_CUPS = ColumnWidth(columns=2, line=30, run_on=58, note=68)
"""A cup with its weight beside it needs a wide column."""


def card_html(
    theme: Theme, sheet: Sheet, imprint: Imprint, photos: Mapping[str, str], page_address: str
) -> str:
    """The page of a card. photos: file -> its address; page_address: of the recipe's page, in full."""
    has_beside = _mostly_beside(sheet)
    return theme.environment.printed(
        CARD_TEMPLATE,
        sheet=sheet,
        head=sheet.head,
        imprint=imprint,
        photos=photos,
        page_address=page_address,
        columns=card_columns(sheet.components, notes_before(sheet), _IN_CUPS if has_beside else _BY_WEIGHT),
        has_beside=has_beside,
        rows=step_rows(sheet.components, sheet.plan),
        by_the_clock=sheet.plan if _leaves_the_order(sheet) or not sheet.timeline else (),
        caution_titles={caution.key: caution.title for caution in sheet.cautions},
        revised=latest_revision(sheet),
        prose=card_prose,
        qr=qr_code,
        typed=typed,
        recipe_page=recipe_page,
        tutorial_page=tutorial_page,
    )


def _leaves_the_order(sheet: Sheet) -> bool:
    """Whether the clock takes the steps in another order than they are written in."""
    steps = [row.step for row in sheet.plan]
    return steps != sorted(steps)


def _mostly_beside(sheet: Sheet) -> bool:
    """Whether second measures are so many that they deserve a column."""
    second = [bool(line.beside) for part in sheet.components for line in part.lines]
    return second.count(True) > second.count(False)
