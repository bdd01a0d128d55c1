"""Pages in a browser that runs no script: whole, and with no control that does nothing."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, BrowserContext

from tests.outside.demo import KINDS_TO_READ, Demo

WORDS = """() => {
  const shown = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const element = node.parentElement;
    const own = element.closest("button, label, [role=status], form, svg, script");
    if (!own && element.checkVisibility({visibilityProperty: true})) shown.push(node.data);
  }
  return shown.join(" ").split(/\\s+/).filter(Boolean);
}"""
"""The words that a reader sees, those of controls apart."""

DEAD = "button, input, select, textarea, [role=button], [role=tab], [aria-pressed], dialog[open]"


@pytest.fixture
def quiet(browser: Browser) -> Iterator[BrowserContext]:
    context = browser.new_context(viewport={"width": 390, "height": 844}, java_script_enabled=False)
    yield context
    context.close()


@pytest.mark.parametrize("kind", KINDS_TO_READ)
def test_nothing_is_lost_and_nothing_is_dead(
    kind: str, themed: Demo, themed_served: str, browser: Browser, quiet: BrowserContext
) -> None:
    address = themed_served + themed.kinds()[kind].relative_to(themed.output).as_posix()
    scripted = browser.new_page(viewport={"width": 390, "height": 844})
    scripted.goto(address)
    with_script = set(scripted.evaluate(WORDS))
    scripted.close()
    tab = quiet.new_page()
    tab.goto(address)
    without = set(tab.evaluate(WORDS))
    assert len(without) > 25
    assert with_script - without == set()
    assert [
        control.evaluate("element => element.outerHTML")
        for control in tab.locator(f"{DEAD} >> visible=true").all()
    ] == []
    for link in tab.locator("a[href^='#']:visible").all():
        target = tab.locator(f"id={(link.get_attribute('href') or '')[1:]}")
        assert target.count() == 1
