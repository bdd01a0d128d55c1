"""A reader at a page of the demo, for the tests of what scripts do there."""

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from playwright.sync_api import Browser, Page

PHONE = {"width": 390, "height": 844}
DESKTOP = {"width": 1280, "height": 900}
CUPCAKES = "recipes/blackcurrant-and-bay-cupcakes.html"
LAYER_CAKE = "recipes/plum-and-cardamom-layer-cake.html"


@contextmanager
def reading(browser: Browser, address: str, *, script: bool = True, **more: Any) -> Iterator[Page]:
    """A page in a visit of its own, which must not complain; more: of the visit, as Playwright names it."""
    context = browser.new_context(**{"viewport": PHONE, "java_script_enabled": script, **more})
    page = context.new_page()
    complaints: list[str] = []
    page.on("pageerror", lambda error: complaints.append(str(error)))
    page.on("response", lambda answer: answer.status >= 400 and complaints.append(answer.url))
    page.on("console", lambda line: line.type in ("error", "warning") and complaints.append(line.text))
    page.goto(address)
    yield page
    context.close()
    assert not complaints, "\n".join(complaints)


def chosen(page: Page) -> list[str]:
    """What the lists of choices mark as the page's own, in words."""
    marked = page.locator("#choices [aria-current]").all_inner_texts()
    return [" ".join(text.split()) for text in marked]
