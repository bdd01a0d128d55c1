"""What both kinds of card are made of beside the sheet itself: codes, addresses, the latest revision."""

# mypy: disable-error-code="no-untyped-call"
# segno carries no types of its own.

from functools import lru_cache

import segno
from markupsafe import Markup

from sitegen.sheet.values import Sheet, SheetRevision


def latest_revision(sheet: Sheet) -> SheetRevision | None:
    return max(sheet.revisions, key=lambda revision: revision.iso, default=None)


@lru_cache(maxsize=256)
def qr_code(address: str, title: str) -> Markup:
    """A QR code (ISO/IEC 18004) as SVG, with medium correction. title: its alternative text.

    Kept, since all papers bear the same codes.
    """
    code = segno.make(address, error="m", micro=False, boost_error=False)
    return Markup(code.svg_inline(border=2, omitsize=True, svgclass="qr", lineclass=None, title=title))


def typed(address: str) -> str:
    """An address as one types it."""
    return address.removeprefix("https://")
