"""The page that a device shows for one that it has not kept, while there is no signal."""

from sitegen.press.addresses import NOT_KEPT
from sitegen.press.imprint import Imprint
from sitegen.press.page import Page, page_bytes
from sitegen.press.theme import Theme


def not_kept_page(theme: Theme, imprint: Imprint) -> bytes:
    """It answers at an address of any depth: so its links carry the full address, which the worker adapts."""
    page = Page(
        here=NOT_KEPT,
        title="Not kept on this device",
        description="This page was not opened on this device before.",
        language=imprint.language,
        is_absolute=True,
        is_listed=False,
    )
    return page_bytes(theme, imprint, "not-kept.html", page, {})
