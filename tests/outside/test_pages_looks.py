"""What a reader meets first, and what the pictures cost: measured in a real browser."""

from typing import Any

import pytest
from playwright.sync_api import Browser

from tests.outside.demo import Demo

SCREENS = [(390, 844, 2), (768, 1024, 1), (768, 1024, 2), (1280, 900, 1), (1280, 900, 2)]
SHOWN = ["recipe for subscribers", "recipe with its ingredients", "tutorial", "tutorials", "index", "tag"]

PICTURES = """async () => {
  const pictures = [...document.querySelectorAll("img[srcset]")];
  for (const picture of pictures) {
    picture.scrollIntoView();
    await picture.decode();
  }
  return pictures.map((picture) => ({
    file: picture.currentSrc,
    cut: Number(picture.currentSrc.match(/-(\\d+)\\.\\w+$/)[1]),
    cuts: [...picture.srcset.matchAll(/ (\\d+)w/g)].map((found) => Number(found[1])),
    shown: Math.max(picture.width, (picture.height * picture.naturalWidth) / picture.naturalHeight),
    declared: picture.hasAttribute("width") && picture.hasAttribute("height"),
    lazy: picture.loading === "lazy",
    first: picture.getAttribute("fetchpriority") === "high",
  }));
}"""
SHIFTS = """() => new Promise((told) => {
  let sum = 0;
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) sum += entry.value;
  }).observe({ type: "layout-shift", buffered: true });
  setTimeout(() => told(sum), 500);
})"""


def pictures_of(browser: Browser, address: str, screen: tuple[int, int, int]) -> list[dict[str, Any]]:
    width, height, density = screen
    context = browser.new_context(viewport={"width": width, "height": height}, device_scale_factor=density)
    page = context.new_page()
    page.goto(address)
    found: list[dict[str, Any]] = page.evaluate(PICTURES)
    context.close()
    return found


@pytest.mark.parametrize("screen", SCREENS, ids=str)
@pytest.mark.parametrize("kind", SHOWN)
def test_a_picture_is_as_large_as_it_is_shown_and_not_twice_as_large(
    kind: str, screen: tuple[int, int, int], demo: Demo, browser: Browser
) -> None:
    """The attribute `sizes` of HTML, held against the styles: no blur, and no bytes for nothing."""
    found = pictures_of(browser, demo.kinds()[kind].as_uri(), screen)
    assert found
    needed = [(each, each["shown"] * screen[2]) for each in found]
    blurred = [each for each, need in needed if each["cut"] < 0.97 * need and each["cut"] < max(each["cuts"])]
    wasted = [each for each, need in needed if each["cut"] > 2.05 * need and each["cut"] > min(each["cuts"])]
    assert (blurred, wasted) == ([], [])


@pytest.mark.parametrize("kind", SHOWN)
def test_only_the_first_picture_is_fetched_at_once(kind: str, demo: Demo, browser: Browser) -> None:
    found = pictures_of(browser, demo.kinds()[kind].as_uri(), SCREENS[0])
    assert all(each["declared"] for each in found)
    assert [each["file"] for each in found[1:] if each["first"] or not each["lazy"]] == []
    assert found[0]["first"] != found[0]["lazy"]


@pytest.mark.parametrize("kind", ["recipe for subscribers", "recipe as a teaser", "tutorial"])
def test_title_summary_and_picture_share_the_first_screen(kind: str, demo: Demo, browser: Browser) -> None:
    for width, height, _ in SCREENS:
        page = browser.new_page(viewport={"width": width, "height": height})
        page.goto(demo.kinds()[kind].as_uri())
        feet = {
            name: page.evaluate("name => document.querySelector(name).getBoundingClientRect().bottom", name)
            for name in ("h1", ".summary", ".opening-picture")
        }
        page.close()
        assert [name for name, foot in feet.items() if not 0 < foot < 0.8 * height] == [], width


@pytest.mark.parametrize("width", [390, 1280])
def test_nothing_moves_while_a_recipe_loads(width: int, served: str, demo: Demo, browser: Browser) -> None:
    """Cumulative Layout Shift, W3C Layout Instability: under 0.1 is good."""
    page = browser.new_page(viewport={"width": width, "height": 900})
    page.goto(f"{served}subscribers/recipes/{demo.kinds()['recipe for subscribers'].name}")
    assert page.evaluate(SHIFTS) < 0.1
    page.close()
