"""Pages walked through without a pointer: every control is reached in order, seen, and worked by its keys.

Source: WCAG 2.2: 2.1.1 keyboard, 2.1.2 no trap, 2.4.3 focus order, 2.4.7 focus visible, 2.4.11 focus not
obscured, 1.4.11 contrast of what shows the focus.
"""

from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from tests.outside.contrast import contrast
from tests.outside.demo import Demo

KINDS = ["index", "recipe for subscribers", "recipe with its ingredients", "recipe as a teaser", "tutorial"]
LEAST_CONTRAST = 3
"""WCAG 2.2, 1.4.11."""

CONTROLS = """() => {
  const named = "a[href], button, input, select, textarea, summary, [tabindex='0']";
  const shown = element => element.checkVisibility({visibilityProperty: true, opacityProperty: false});
  const others = radio => [...document.querySelectorAll(`input[type=radio][name="${radio.name}"]`)];
  const isStop = element => !element.disabled && !element.closest("[inert]") && shown(element)
    && (element.type !== "radio" || element.checked || !others(element).some(each => each.checked));
  window.controls = [...document.querySelectorAll(named)].filter(isStop);
  return controls.map(element => element.outerHTML.slice(0, 90));
}"""
"""The controls that the Tab key should reach, in the order of the document. Of radios, one a group."""

AT = """() => {
  const element = document.activeElement;
  if (element === document.body) return null;
  const style = getComputedStyle(element);
  let ground = parseFloat(style.outlineOffset) < 0 ? element : element.parentElement;
  while (ground && /, 0\\)$/.test(getComputedStyle(ground).backgroundColor)) ground = ground.parentElement;
  const uncovered = ({left, top, right, bottom}) => {
    const [west, north] = [Math.max(left, 0), Math.max(top, 0)];
    const [east, south] = [Math.min(right, innerWidth), Math.min(bottom, innerHeight)];
    return [0.1, 0.5, 0.9].some(down => {
      const at = document.elementFromPoint((west + east) / 2, north + down * (south - north));
      return Boolean(at) && element.contains(at);
    });
  };
  return {
    place: window.controls.indexOf(element),
    html: element.outerHTML.slice(0, 90),
    scrolls: element.scrollHeight > element.clientHeight || element.scrollWidth > element.clientWidth,
    line: style.outlineStyle === "none" ? 0 : parseFloat(style.outlineWidth),
    colours: [style.outlineColor, ground ? getComputedStyle(ground).backgroundColor : "rgb(255, 255, 255)"],
    free: [...element.getClientRects()].some(uncovered),
  };
}"""
"""Where the focus is: its outline and what that is drawn on, and whether any of it can be seen."""


@pytest.fixture
def opened(browser: Browser, themed: Demo, themed_served: str) -> Iterator[Any]:
    """Opens a page of a kind: opened(kind, width, scheme)."""
    contexts = []

    def open_page(kind: str, width: int = 390, scheme: Any = "light") -> Page:
        context = browser.new_context(
            viewport={"width": width, "height": 844}, color_scheme=scheme, reduced_motion="reduce"
        )
        contexts.append(context)
        tab = context.new_page()
        tab.goto(themed_served + themed.kinds()[kind].relative_to(themed.output).as_posix())
        return tab

    yield open_page
    for context in contexts:
        context.close()


def walked(tab: Page) -> list[dict[str, Any]]:
    """Every stop of the Tab key, from the top of the page to its end."""
    stops: list[dict[str, Any]] = []
    most = len(tab.evaluate(CONTROLS)) + 20
    for _ in range(most):
        tab.keyboard.press("Tab")
        stop = tab.evaluate(AT)
        if stop is None:
            return stops
        stops.append(stop)
    raise AssertionError(f"the Tab key never leaves the page; it stands at {stops[-1]['html']}")


def faults(stops: list[dict[str, Any]], controls: list[str]) -> Iterator[str]:
    """What is wrong with a walk. A part that scrolls and holds no control is a stop that browsers add."""
    places = [stop["place"] for stop in stops if stop["place"] >= 0]
    yield from (f"not reached: {html}" for place, html in enumerate(controls) if place not in places)
    if places != sorted(places):
        yield f"out of order: {places}"
    for stop in stops:
        if stop["place"] < 0 and not stop["scrolls"]:
            yield f"a stop that is no control: {stop['html']}"
        if stop["line"] < 2:
            yield f"focus is not shown: {stop['html']}"
        elif contrast(*stop["colours"]) < LEAST_CONTRAST:
            yield f"focus is faint, {stop['colours']}: {stop['html']}"


@pytest.mark.parametrize(("width", "scheme"), [(390, "light"), (1280, "dark")])
@pytest.mark.parametrize("kind", KINDS)
def test_tab_reaches_every_control_in_order_and_is_seen_there(
    kind: str, width: int, scheme: str, opened: Any
) -> None:
    tab = opened(kind, width, scheme)
    controls = tab.evaluate(CONTROLS)
    assert len(controls) >= 5
    stops = walked(tab)
    found = [*faults(stops, controls), *(f"hidden: {stop['html']}" for stop in stops if not stop["free"])]
    assert not found, "\n".join(found)


@pytest.mark.parametrize("kind", ["index", "recipe for subscribers"])
def test_tab_reaches_what_is_folded_away(kind: str, opened: Any) -> None:
    """With everything open at once that is opened one by one."""
    tab = opened(kind)
    tab.evaluate("""() => document.querySelectorAll("details").forEach(each => {
        each.removeAttribute("name");
        each.open = true;
    })""")
    before = tab.evaluate("document.querySelectorAll('details').length")
    assert before >= 1
    controls = tab.evaluate(CONTROLS)
    found = list(faults(walked(tab), controls))
    assert not found, "\n".join(found)


@pytest.mark.parametrize("kind", KINDS)
def test_enter_and_space_open_and_shut_what_is_folded(kind: str, opened: Any) -> None:
    tab = opened(kind)
    for summary in tab.locator("summary:visible").all():
        is_open = "element => element.parentElement.open"
        before = summary.evaluate(is_open)
        for key in ("Enter", "Space"):
            before = not before
            summary.press(key)
            assert summary.evaluate(is_open) == before, f"{key}: {summary.evaluate('e => e.outerHTML')}"


def test_space_ticks_and_enter_follows(opened: Any) -> None:
    tab = opened("recipe for subscribers")
    box = tab.locator("main [data-tick] input[type=checkbox]:visible").first
    before = box.is_checked()
    box.press("Space")
    assert box.is_checked() != before
    tab.keyboard.press("Home")
    tab.locator("a.skip").press("Enter")
    assert tab.evaluate("document.activeElement.id") == "main"


def test_escape_shuts_the_bar_and_goes_back_to_it(opened: Any) -> None:
    tab = opened("recipe for subscribers")
    summary = tab.locator("aside summary, [data-bar] summary").first
    summary.press("Enter")
    assert summary.evaluate("element => element.parentElement.open")
    tab.keyboard.press("Tab")
    tab.keyboard.press("Escape")
    assert not summary.evaluate("element => element.parentElement.open")
    assert summary.evaluate("element => element === document.activeElement")


def test_a_planted_fault_is_seen(browser: Browser) -> None:
    tab = browser.new_page()
    tab.set_content(
        "<style>a {outline: none} button:focus {outline: 2px solid #eee}</style><a href=x>unseen</a>"
        "<button>faint</button><button tabindex=-1>never</button><input aria-label=y>"
        "<input tabindex=1 aria-label=x><p tabindex=2>no control"
    )
    controls = tab.evaluate(CONTROLS)
    assert {fault.split(":")[0].split(",")[0] for fault in faults(walked(tab), controls)} == {
        "not reached",
        "out of order",
        "a stop that is no control",
        "focus is not shown",
        "focus is faint",
    }
    tab.close()
