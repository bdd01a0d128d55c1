"""Style sheets lose comments and space, and nothing that Chromium reads (CSSOM, W3C working draft)."""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from sitegen.press.theme import load_theme

THEMES = Path(__file__).parents[2] / "themes"
SHEETS = [
    (theme, path.name) for theme in ("oatcloth", "enamel") for path in THEMES.glob(f"{theme}/styles/*.css")
]
RULES = """text => {
  const sheet = new CSSStyleSheet()
  sheet.replaceSync(text)
  return [...sheet.cssRules].map(rule => rule.cssText.replaceAll(/\\s+/g, ""))
}"""


@pytest.fixture(scope="module")
def rules(browser: Browser) -> Iterator[Callable[[str], list[str]]]:
    page = browser.new_page()
    yield lambda text: page.evaluate(RULES, text)
    page.close()


@pytest.mark.parametrize(("theme", "name"), sorted(SHEETS))
def test_the_browser_reads_the_same_rules(theme: str, name: str, rules: Callable[[str], list[str]]) -> None:
    written = (THEMES / theme / "styles" / name).read_text(encoding="utf-8")
    published = load_theme(THEMES / theme).styles[name]
    assert len(published) < len(written)
    assert rules(published) == rules(written)
