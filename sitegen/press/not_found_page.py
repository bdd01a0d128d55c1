"""The page that a host shows where there is none."""

from sitegen.press.addresses import NOT_FOUND
from sitegen.press.imprint import Imprint
from sitegen.press.page import Page, page_bytes
from sitegen.press.theme import Theme


def not_found_page(theme: Theme, imprint: Imprint) -> bytes:
    """A host serves it for an address of any depth: so all its links carry the full address."""
    page = Page(
        here=NOT_FOUND,
        title="No such page",
        description="There is no page at this address.",
        language=imprint.language,
        is_absolute=True,
        is_listed=False,
    )
    return page_bytes(theme, imprint, "not-found.html", page, {})
