"""Timers of steps: several at once, through reloads and other pages, until somebody says that it is done.

The browser's clock is moved on by the test; what sounds is counted where Web Audio is asked for it.
"""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

from tests.outside.axe import SETTINGS, with_axe
from tests.outside.demo import Demo
from tests.outside.readers import CUPCAKES, DESKTOP, reading

COUNT_SOUNDS = """
window.sounds = 0;
window.shakes = 0;
navigator.vibrate = () => ++window.shakes;
const start = OscillatorNode.prototype.start;
OscillatorNode.prototype.start = function (when) { window.sounds += 1; return start.call(this, when); };
"""
AXE_AT_HAND = """async () => {
  const found = await axe.run(".at-hand");
  return found.violations.flatMap(rule => rule.nodes.map(node => rule.id + node.html));
}"""
BAKE, COOL = 4, 5
"""Steps with a wait: 22–24 min until the tops spring back, and 1 h until no warmth is left."""


@pytest.fixture
def address(served: str) -> str:
    return f"{served}subscribers/{CUPCAKES}"


def begun(page: Page, address: str) -> Page:
    """The page at two o'clock, with a clock that stands still until the test moves it on."""
    page.add_init_script(COUNT_SOUNDS)
    page.clock.install(time="2026-11-25T13:59:00")
    page.goto(address)
    page.clock.pause_at("2026-11-25T14:00:00")
    return page


def start(page: Page, step: int) -> Locator:
    return page.get_by_role("button", name=re.compile(f"^Start .*, step {step}$"))


def running(page: Page) -> Locator:
    return page.get_by_role("complementary", name="Timers").get_by_role("listitem")


def pass_time(page: Page, time: str) -> None:
    page.clock.fast_forward(time)
    page.clock.run_for(1000)


def test_two_timers_run_at_once_and_the_title_shows_the_shorter(address: str, browser: Browser) -> None:
    with reading(browser, "about:blank") as page:
        begun(page, address)
        start(page, COOL).click()
        start(page, BAKE).click()
        pass_time(page, "01:59")
        expect(running(page)).to_have_count(2)
        expect(running(page).filter(has_text="until the tops spring back")).to_contain_text("20:00 left")
        expect(running(page).filter(has_text="until no warmth is left")).to_contain_text("58:00 left")
        expect(page.locator("#step-4 .start")).to_have_text(re.compile("^20:00 left"))
        assert page.title().startswith("20:00 left · Blackcurrant")


def test_timers_survive_a_reload_and_go_on_over_other_pages_of_the_site(
    address: str, served: str, browser: Browser
) -> None:
    with reading(browser, "about:blank") as page:
        begun(page, address)
        start(page, BAKE).click()
        start(page, COOL).click()
        pass_time(page, "00:59")
        page.reload()
        expect(running(page)).to_have_count(2)
        page.goto(f"{served}subscribers/index.html")
        pass_time(page, "00:59")
        expect(running(page).first).to_contain_text("20:00 left")
        running(page).first.get_by_role("link", name="Step 4, Bay sponge").click()
        page.wait_for_url(f"**/{CUPCAKES}#step-4")


def test_timers_go_on_while_another_batch_is_chosen(address: str, browser: Browser) -> None:
    with reading(browser, "about:blank") as page:
        begun(page, address)
        start(page, BAKE).click()
        page.locator("#choices").get_by_role("link", name="US cups").click()
        page.wait_for_url("**/us-cups-12-cupcakes.html")
        pass_time(page, "01:59")
        expect(running(page)).to_contain_text("20:00 left")
        expect(page.locator("#step-4 .start")).to_have_text(re.compile("^20:00 left"))
        start(page, COOL).click()
        expect(running(page)).to_have_count(2)


def test_it_rings_at_the_lower_figure_to_look_and_again_at_the_upper(address: str, browser: Browser) -> None:
    with reading(browser, "about:blank") as page:
        begun(page, address)
        start(page, BAKE).click()
        pass_time(page, "21:58")
        assert page.evaluate("window.sounds") == 0
        pass_time(page, "00:01")
        alert = page.get_by_role("alert")
        expect(alert).to_contain_text("Time to look")
        expect(alert).to_contain_text("Step 4, Bay sponge until the tops spring back when pressed")
        assert page.title().startswith("Time to look · ")
        assert page.evaluate("window.sounds") == 3
        assert page.evaluate("window.shakes") == 1
        page.clock.run_for(3000)
        assert page.evaluate("window.sounds") == 6
        alert.get_by_role("button", name="A little longer").click()
        expect(running(page)).to_have_count(1)
        pass_time(page, "00:30")
        assert page.evaluate("window.sounds") == 6
        pass_time(page, "01:30")
        expect(alert).to_contain_text("Time is up")
        expect(alert.get_by_role("button", name="A little longer")).to_have_count(0)
        alert.get_by_role("button", name="Done").click()
        expect(alert.get_by_role("listitem")).to_have_count(0)
        assert page.title().startswith("Blackcurrant")
        sounds = page.evaluate("window.sounds")
        pass_time(page, "05:00")
        assert page.evaluate("window.sounds") == sounds


def test_the_bell_gives_up_after_a_minute_and_the_message_does_not(address: str, browser: Browser) -> None:
    with reading(browser, "about:blank") as page:
        begun(page, address)
        start(page, COOL).click()
        pass_time(page, "59:59")
        page.clock.run_for(90_000)
        sounds = page.evaluate("window.sounds")
        assert 3 < sounds <= 63
        page.clock.run_for(30_000)
        assert page.evaluate("window.sounds") == sounds
        expect(page.get_by_role("alert")).to_contain_text(re.compile("Time is up, since 3:00"))


def test_a_timer_that_ended_while_the_page_was_closed_says_so_at_once(address: str, browser: Browser) -> None:
    with reading(browser, "about:blank") as page:
        begun(page, address)
        start(page, BAKE).click()
        page.goto("about:blank")
        page.clock.fast_forward("02:00:00")
        page.goto(address)
        expect(page.get_by_role("alert")).to_contain_text(re.compile("Time is up, since 2:24"))


def test_a_timer_is_stopped_and_can_be_started_anew(address: str, browser: Browser) -> None:
    with reading(browser, "about:blank") as page:
        begun(page, address)
        start(page, BAKE).click()
        start(page, COOL).click()
        running(page).first.get_by_role("button", name="Stop").click()
        expect(running(page)).to_have_count(1)
        expect(running(page)).to_contain_text("Step 5")
        expect(start(page, BAKE)).to_be_visible()
        page.reload()
        expect(running(page)).to_have_count(1)


def test_a_second_touch_starts_no_second_timer(address: str, browser: Browser) -> None:
    with reading(browser, "about:blank") as page:
        begun(page, address)
        start(page, BAKE).click()
        page.locator("#step-4 .start").click()
        expect(running(page)).to_have_count(1)


def test_what_another_tab_has_stopped_rings_in_none(address: str, browser: Browser) -> None:
    with reading(browser, address) as page:
        start(page, BAKE).click()
        other = page.context.new_page()
        other.goto(address)
        running(other).get_by_role("button", name="Stop").click()
        expect(running(page)).to_have_count(0)


def test_timers_work_from_a_disk(demo: Demo, browser: Browser) -> None:
    with reading(browser, "about:blank") as page:
        begun(page, (demo.subscribers / CUPCAKES).as_uri())
        start(page, BAKE).click()
        page.reload()
        pass_time(page, "22:00")
        expect(page.get_by_role("alert")).to_contain_text("Time to look")


def test_an_overnight_wait_has_no_timer(served: str, browser: Browser) -> None:
    loaf = f"{served}subscribers/recipes/overnight-honey-and-sesame-loaf.html"
    with reading(browser, loaf) as page:
        expect(page.locator("main")).to_contain_text("12–14 h")
        names = page.locator(".start").all_inner_texts()
        assert names
        assert not [name for name in names if "12–14" in name]


def test_by_the_keyboard_alone(address: str, browser: Browser) -> None:
    with reading(browser, "about:blank", viewport=DESKTOP) as page:
        begun(page, address)
        start(page, COOL).focus()
        page.keyboard.press("Enter")
        start(page, BAKE).focus()
        page.keyboard.press("Space")
        expect(page.locator("#step-4 .start")).to_be_focused()
        expect(page.get_by_role("status")).to_have_text("Timer started, Step 4, Bay sponge")
        pass_time(page, "21:59")
        for name in ("A little longer", "Stop", "Stop"):
            page.locator("footer").evaluate("foot => getSelection().collapse(foot)")
            while page.evaluate("document.activeElement.textContent.split(',')[0]") != name:
                page.keyboard.press("Tab")
            page.keyboard.press("Enter")
        expect(running(page)).to_have_count(0)
        expect(page.locator("main")).to_be_focused()


def test_nothing_moves_for_a_reader_who_wants_it_still(address: str, browser: Browser) -> None:
    with reading(browser, "about:blank", reduced_motion="reduce") as page:
        begun(page, address)
        start(page, BAKE).click()
        pass_time(page, "22:00")
        assert (
            page.get_by_role("alert").evaluate("alert => alert.getAnimations({ subtree: true }).length") == 0
        )


def test_timers_that_run_and_ring_keep_the_rules_of_accessibility(
    themed_served: str, browser: Browser, checkers: Path
) -> None:
    """axe-core, the rules of WCAG 2.2 AA, in every theme."""
    with reading(browser, "about:blank") as page:
        begun(with_axe(page, checkers), f"{themed_served}subscribers/{CUPCAKES}")
        start(page, BAKE).click()
        start(page, COOL).click()
        pass_time(page, "21:59")
        expect(page.get_by_role("alert").get_by_role("listitem")).to_have_count(1)
        expect(running(page)).to_have_count(1)
        page.clock.resume()
        for setting in SETTINGS:
            page.set_viewport_size({"width": setting.width, "height": 844})
            page.emulate_media(color_scheme=setting.scheme)
            assert page.evaluate(AXE_AT_HAND) == [], str(setting)


def test_without_script_there_is_no_button_that_does_nothing(address: str, browser: Browser) -> None:
    with reading(browser, address, script=False) as page:
        assert page.locator("button:visible").count() == 0
        assert page.locator("input:visible").count() == 0
        expect(page.locator("main")).to_contain_text("22–24")
