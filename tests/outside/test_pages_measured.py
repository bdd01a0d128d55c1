"""Pages measured in a real browser: text at twice its size, targets for a finger, pictures, shifts, weight.

Sources: WCAG 2.2, 1.4.4 (text to 200 %), 1.4.10 (no scrolling sideways); 44 CSS pixels for a target, WCAG
2.2, 2.5.5, which is more than AA asks; the layout instability of W3C's Layout Instability draft.
"""

import gzip
from collections.abc import Iterator
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, Request

from tests.outside.demo import KINDS_TO_READ, Demo

MOST_SHIFT = 0.01
MOST_BYTES = 160_000
"""Of a page with its style, script and type, as it is sent (gzip), photos not counted."""
PARTS_OF_A_PAGE = {"document", "stylesheet", "script", "font", "image", "manifest"}
"""What a browser asks for to show a page; what a script fetches beforehand is another matter."""

OVERLAPS = """() => {
  const texts = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const floats = element => element && element !== document.body
    && (["fixed", "sticky"].includes(getComputedStyle(element).position) || floats(element.parentElement));
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const element = node.parentElement;
    const hidden = !element.checkVisibility({visibilityProperty: true, opacityProperty: true});
    if (!node.data.trim() || hidden || element.closest("svg, .skip, script") || floats(element)) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    for (const box of range.getClientRects()) texts.push({node, box, text: node.data.trim().slice(0, 40)});
  }
  texts.sort((one, other) => one.box.top - other.box.top);
  const found = [];
  texts.forEach((one, place) => {
    for (const other of texts.slice(place + 1)) {
      if (other.box.top >= one.box.bottom) break;
      const across = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
      const down = Math.min(one.box.bottom, other.box.bottom) - other.box.top;
      const low = Math.min(one.box.height, other.box.height);
      const clash = one.node !== other.node && across > 2 && down > 0.5 * low;
      if (clash) found.push(`${one.text} | ${other.text}`);
    }
  });
  return found;
}"""
"""Texts printed one over the other: by more than half a line, for boxes are taller than letters."""

SMALL_TARGETS = """least => {
  const controls = "button, summary, input, select, textarea, nav a, a.skip";
  const found = [];
  for (const element of document.querySelectorAll(controls)) {
    if (!element.checkVisibility({visibilityProperty: true}) || element.disabled) continue;
    element.scrollIntoView({block: "center", behavior: "instant"});
    if (element.matches(".skip")) element.focus();
    const own = element.getBoundingClientRect();
    const hits = (x, y) => {
      const at = document.elementFromPoint(x, y);
      if (!at) return false;
      const label = at.closest("label");
      return element.contains(at) || (label && (label.contains(element) || label.control === element))
        || Boolean(element.closest("[data-tick]")?.contains(at) && !at.closest("a, button"));
    };
    const reach = (across, down) => {
      let steps = 0;
      const [x, y] = [own.left + own.width / 2, own.top + own.height / 2];
      while (steps <= least && hits(x + across * steps, y + down * steps)) steps += 1;
      return steps;
    };
    const wide = reach(1, 0) + reach(-1, 0) - 1, high = reach(0, 1) + reach(0, -1) - 1;
    if (Math.min(wide, high) < least - 1) found.push(`${wide} x ${high}: ${element.outerHTML.slice(0, 90)}`);
  }
  return found;
}"""
"""Controls that a finger may miss: how far from the middle a touch still works them, their label's too."""

WATCH = """
  window.shifts = [];
  new PerformanceObserver(list => {
    for (const one of list.getEntries()) if (!one.hadRecentInput) {
      window.shifts.push([one.value, one.sources.map(source => source.node?.outerHTML?.slice(0, 80))]);
    }
  }).observe({type: "layout-shift", buffered: true});
"""

PICTURES = """() => [...document.images].map(image => ({
  file: image.getAttribute("src"),
  sized: image.hasAttribute("width") && image.hasAttribute("height"),
  lazy: image.loading === "lazy",
  photo: Boolean(image.closest("picture")),
  screens: image.getBoundingClientRect().top / innerHeight,
}))"""


@pytest.fixture
def phone(browser: Browser) -> Iterator[BrowserContext]:
    context = browser.new_context(
        viewport={"width": 390, "height": 844}, reduced_motion="reduce", is_mobile=True, has_touch=True
    )
    yield context
    context.close()


def opened(context: BrowserContext, themed: Demo, served: str, kind: str) -> Page:
    tab = context.new_page()
    tab.goto(served + themed.kinds()[kind].relative_to(themed.output).as_posix())
    return tab


@pytest.mark.parametrize("kind", KINDS_TO_READ)
def test_text_at_twice_its_size_neither_overlaps_nor_scrolls_sideways(
    kind: str, themed: Demo, themed_served: str, phone: BrowserContext
) -> None:
    tab = opened(phone, themed, themed_served, kind)
    for size in ("100%", "200%"):
        tab.evaluate("size => document.documentElement.style.setProperty('font-size', size)", size)
        assert tab.evaluate(OVERLAPS) == []
        assert not tab.evaluate("document.documentElement.scrollWidth > document.documentElement.clientWidth")


def test_an_overlap_and_a_small_target_are_seen(phone: BrowserContext) -> None:
    tab = phone.new_page()
    tab.set_content(
        "<p style='margin: 99px 0'>one</p><p style='margin: -117px 0 99px'>other</p><button>x</button>"
        "<label style='display: block; padding: 20px'><input type=checkbox> far</label>"
    )
    assert tab.evaluate(OVERLAPS) == ["one | other"]
    small = tab.evaluate(SMALL_TARGETS, 44)
    assert len(small) == 1
    assert "<button>" in small[0]


@pytest.mark.parametrize("kind", KINDS_TO_READ)
def test_every_control_is_large_enough_for_a_finger(
    kind: str, themed: Demo, themed_served: str, phone: BrowserContext
) -> None:
    tab = opened(phone, themed, themed_served, kind)
    found = tab.evaluate(SMALL_TARGETS, 44)
    assert not found, "\n".join(found)


@pytest.mark.parametrize("width", [390, 1280])
@pytest.mark.parametrize("kind", ["index", "recipe for subscribers", "recipe with its ingredients"])
def test_nothing_shifts_while_a_page_loads_and_is_read(
    kind: str, width: int, themed: Demo, themed_served: str, phone: BrowserContext
) -> None:
    phone.add_init_script(WATCH)
    tab = opened(phone, themed, themed_served, kind)
    tab.set_viewport_size({"width": width, "height": 844})
    tab.reload()
    for _ in range(10):
        tab.mouse.wheel(0, 800)
        tab.wait_for_timeout(30)
    shifts: list[Any] = tab.evaluate("window.shifts")
    assert sum(value for value, _ in shifts) < MOST_SHIFT, shifts


@pytest.mark.parametrize("kind", KINDS_TO_READ)
def test_pictures_keep_their_room_and_wait_below_the_fold(
    kind: str, themed: Demo, themed_served: str, phone: BrowserContext
) -> None:
    tab = opened(phone, themed, themed_served, kind)
    pictures = tab.evaluate(PICTURES)
    assert pictures
    for picture in pictures:
        assert picture["sized"], picture
        assert picture["lazy"] == (picture["screens"] > 1) or picture["screens"] < 2, picture
    photos = [picture for picture in pictures if picture["photo"]]
    if photos and photos[0]["screens"] < 0.9:
        assert not photos[0]["lazy"], f"the first thing to be seen waits: {photos[0]}"


@pytest.mark.parametrize("kind", KINDS_TO_READ)
def test_a_page_is_light_without_its_photos(
    kind: str, themed: Demo, themed_served: str, phone: BrowserContext, record_property: Any
) -> None:
    asked: list[str] = []
    tab = phone.new_page()

    def note(request: Request) -> None:
        if request.resource_type in PARTS_OF_A_PAGE:
            asked.append(request.url)

    tab.on("request", note)
    tab.goto(themed_served + themed.kinds()[kind].relative_to(themed.output).as_posix())
    tab.wait_for_load_state("networkidle")
    home = urlsplit(themed_served).path
    files = [themed.output / urlsplit(address).path.removeprefix(home) for address in dict.fromkeys(asked)]
    sent = {file.name: as_sent(file) for file in files if file.suffix not in (".jpg", ".webp", ".avif")}
    print(f"{themed.theme}, {kind}: {sum(sent.values())} bytes without photos: {sent}")
    record_property("bytes", sum(sent.values()))
    assert 0 < sum(sent.values()) < MOST_BYTES


def as_sent(file: Path) -> int:
    """Bytes over the wire: text is compressed, type (WOFF2) already is."""
    body = file.read_bytes()
    return len(body if file.suffix == ".woff2" else gzip.compress(body, mtime=0))
