"""Ingredients at the foot of a phone, and beside the steps on a desktop; the screen that stays lit."""

import re

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.outside.readers import CUPCAKES, DESKTOP, reading

WAKE_LOCK = """
window.locks = { asked: 0, held: 0 };
Object.defineProperty(navigator, 'wakeLock', { value: { async request() {
  window.locks.asked += 1;
  window.locks.held += 1;
  return { released: false, async release() { this.released = true; window.locks.held -= 1; } };
} } });
"""
NO_WAKE_LOCK = "delete Navigator.prototype.wakeLock;"
REFUSED = """
const request = () => Promise.reject(new Error('battery'));
Object.defineProperty(navigator, 'wakeLock', { value: { request } });
"""


@pytest.fixture
def address(served: str) -> str:
    return f"{served}subscribers/{CUPCAKES}"


def at_step(page: Page, number: int) -> float:
    """The page moved to a step; how far it is scrolled then."""
    page.locator(f"#step-{number}").evaluate(
        "step => scrollTo(0, step.getBoundingClientRect().top + scrollY - 99)"
    )
    return float(page.evaluate("scrollY"))


def scrolled(page: Page) -> float:
    return float(page.evaluate("scrollY"))


def test_one_touch_opens_the_ingredients_of_the_part_that_is_read(address: str, browser: Browser) -> None:
    with reading(browser, address, has_touch=True) as page:
        read = at_step(page, 6)
        page.locator(".bar summary").tap()
        listed = page.locator(".bar-list")
        expect(listed.locator("p", has_text="Bay custard")).to_be_in_viewport()
        expect(listed.get_by_text("bruised")).to_be_in_viewport()
        page.locator(".bar summary").tap()
        expect(listed).to_be_hidden()
        assert scrolled(page) == read


def test_the_list_scrolls_inside_and_the_page_stays(address: str, browser: Browser) -> None:
    with reading(browser, address) as page:
        read = at_step(page, 2)
        page.locator(".bar summary").click()
        page.locator(".bar-list").hover()
        page.mouse.wheel(0, 5000)
        page.wait_for_timeout(300)
        assert page.locator(".bar-list").evaluate("list => list.scrollTop") > 0
        assert scrolled(page) == read


def test_escape_shuts_the_list_and_gives_the_focus_back(address: str, browser: Browser) -> None:
    with reading(browser, address) as page:
        page.locator(".bar summary").focus()
        page.keyboard.press("Enter")
        page.keyboard.press("Tab")
        expect(page.locator(".bar-list")).to_be_focused()
        page.keyboard.press("Tab")
        page.keyboard.press("Space")
        expect(page.locator(".bar-list input").first).to_be_checked()
        page.keyboard.press("Escape")
        expect(page.locator(".bar-list")).to_be_hidden()
        expect(page.locator(".bar summary")).to_be_focused()


def test_a_touch_beside_the_list_shuts_it(address: str, browser: Browser) -> None:
    with reading(browser, address, has_touch=True) as page:
        at_step(page, 2)
        page.locator(".bar summary").tap()
        page.touchscreen.tap(200, 60)
        expect(page.locator(".bar-list")).to_be_hidden()


@pytest.mark.parametrize("script", [True, False])
def test_what_lies_at_hand_covers_neither_the_end_of_the_page_nor_what_has_the_focus(
    script: bool, themed_served: str, browser: Browser
) -> None:
    """WCAG 2.2, success criterion 2.4.11."""
    with reading(browser, f"{themed_served}subscribers/{CUPCAKES}", script=script) as page:
        page.evaluate("scrollTo(0, document.documentElement.scrollHeight)")
        last = page.locator("footer p").last.bounding_box()
        bar = page.locator(".bar").bounding_box()
        assert last
        assert bar
        assert last["y"] + last["height"] <= bar["y"]
        page.evaluate("scrollTo(0, 0)")
        for _ in range(40):
            page.keyboard.press("Tab")
            hidden = page.evaluate(
                "() => { const box = document.activeElement.getBoundingClientRect();"
                "const bar = document.querySelector('.at-hand');"
                "return !bar.contains(document.activeElement)"
                " && box.top >= bar.getBoundingClientRect().top; }"
            )
            assert not hidden, page.evaluate("document.activeElement.outerHTML")


def test_without_script_the_list_opens_all_the_same(address: str, browser: Browser) -> None:
    with reading(browser, address, script=False) as page:
        page.locator(".bar summary").click()
        expect(page.locator(".bar-list").get_by_text("buttermilk")).to_be_visible()


def test_on_a_desktop_the_list_of_a_part_stays_beside_its_steps(address: str, browser: Browser) -> None:
    with reading(browser, address, viewport=DESKTOP) as page:
        expect(page.locator(".bar")).to_be_hidden()
        at_step(page, 4)
        expect(page.locator(".component .side").first.get_by_text("buttermilk")).to_be_in_viewport()


def test_the_screen_is_kept_lit_until_it_is_no_longer_asked_for(address: str, browser: Browser) -> None:
    with reading(browser, "about:blank") as page:
        page.add_init_script(WAKE_LOCK)
        page.goto(address)
        assert page.evaluate("window.locks.asked") == 0
        box = page.get_by_role("checkbox", name="Keep the screen lit")
        box.focus()
        page.keyboard.press("Space")
        page.wait_for_function("window.locks.held === 1")
        box.uncheck()
        page.wait_for_function("window.locks.held === 0")


def test_the_screen_stays_lit_through_a_reload_and_another_batch(address: str, browser: Browser) -> None:
    with reading(browser, "about:blank") as page:
        page.add_init_script(WAKE_LOCK)
        page.goto(address)
        page.get_by_role("checkbox", name="Keep the screen lit").check()
        page.reload()
        page.wait_for_function("window.locks.held === 1")
        page.get_by_role("link", name="24 cupcakes").click()
        page.wait_for_url("**-24-cupcakes.html")
        expect(page.get_by_role("checkbox", name="Keep the screen lit")).to_be_checked()
        assert page.evaluate("window.locks") == {"asked": 1, "held": 1}


def test_the_screen_is_taken_again_when_the_page_comes_back_into_sight(
    address: str, browser: Browser
) -> None:
    """Screen Wake Lock API: a page that is hidden loses its lock."""
    with reading(browser, "about:blank") as page:
        page.add_init_script(WAKE_LOCK.replace("return {", "return window.lock = {"))
        page.goto(address)
        page.get_by_role("checkbox", name="Keep the screen lit").check()
        page.wait_for_function("window.locks.held === 1")
        page.evaluate("window.lock.release()")
        page.evaluate("document.dispatchEvent(new Event('visibilitychange', { bubbles: true }))")
        page.wait_for_function("window.locks.asked === 2")


def test_what_the_browser_cannot_do_is_not_offered(address: str, browser: Browser) -> None:
    with reading(browser, "about:blank") as page:
        page.add_init_script(NO_WAKE_LOCK)
        page.goto(address)
        expect(page.get_by_text("Keep the screen lit")).to_be_hidden()


def test_a_refusal_is_told(address: str, browser: Browser) -> None:
    with reading(browser, "about:blank") as page:
        page.add_init_script(REFUSED)
        page.goto(address)
        box = page.get_by_role("checkbox", name="Keep the screen lit")
        box.click()
        expect(page.get_by_role("status")).to_have_text(re.compile("cannot be kept lit"))
        expect(box).not_to_be_checked()
