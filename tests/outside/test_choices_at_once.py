"""Batch, tin and measures: chosen at once on a host, by links from a disk and without script."""

import re

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.outside.demo import Demo
from tests.outside.readers import CUPCAKES, LAYER_CAKE, chosen, reading


def choose(page: Page, name: str) -> None:
    page.locator("#choices").get_by_role("link", name=name).click()


def body(page: Page) -> str:
    return " ".join(page.locator("main").inner_text().split())


@pytest.fixture
def address(served: str) -> str:
    return f"{served}subscribers/{CUPCAKES}"


def test_amounts_oven_tin_timings_and_address_follow_at_once(address: str, browser: Browser) -> None:
    with reading(browser, address) as page:
        page.evaluate("window.stays = true")
        before = body(page)
        choose(page, "24 cupcakes")
        page.wait_for_url("**/british-metric-24-cupcakes.html")
        choose(page, "US cups")
        page.wait_for_url("**/us-cups-24-cupcakes.html")
        expect(page.locator("main")).to_contain_text("all-purpose flour")
        after = body(page)
        for was, now in (
            ("150 °C fan", "300 °F convection"),
            ("a 12-hole muffin tin", "two 12-cup muffin pans"),
            ("22–24 min", "2 loads of 22–24 min"),
            ("165 g plain flour", "2⅔ cups"),
            ("1 h 25 min", "1 h 55 min"),
        ):
            assert was in before
            assert now in after
            assert now not in before
        assert page.evaluate("window.stays"), "the page was not loaded anew"
        assert chosen(page) == ["24 cupcakes", "US cups"]
        assert page.locator("html").get_attribute("lang") == "en-US"
        assert '"24 cupcakes"' in page.locator("script[type$=json]").first.text_content().replace("\xa0", " ")
        assert str(page.locator("link[rel=canonical]").get_attribute("href")).endswith(
            "us-cups-12-cupcakes.html"
        )
        expect(page.locator(".bar-makes")).to_have_text(re.compile("24.cupcakes"))


def test_the_address_that_is_left_shows_the_same_to_whoever_opens_it(address: str, browser: Browser) -> None:
    with reading(browser, address) as page:
        choose(page, "24 cupcakes")
        page.wait_for_url("**-24-cupcakes.html")
        expect(page.locator("[aria-current]").first).to_have_text(re.compile("24"))
        here, link = body(page), page.url
    with reading(browser, link) as other:
        assert body(other) == here


def test_back_and_forward_go_through_what_was_chosen(address: str, browser: Browser) -> None:
    with reading(browser, address) as page:
        choose(page, "24 cupcakes")
        page.wait_for_url("**-24-cupcakes.html")
        choose(page, "6 cupcakes")
        page.wait_for_url("**-6-cupcakes.html")
        page.go_back()
        expect(page.locator("#choices [aria-current]").first).to_have_text(re.compile("24.cupcakes"))
        page.go_back()
        expect(page.locator("#choices [aria-current]").first).to_have_text(re.compile("12.cupcakes"))
        assert page.url == address
        page.go_forward()
        expect(page.locator("#choices [aria-current]").first).to_have_text(re.compile("24.cupcakes"))


def test_links_and_pictures_of_the_chosen_page_are_found(address: str, browser: Browser) -> None:
    with reading(browser, address) as page:
        choose(page, "US cups")
        page.wait_for_url("**/us-cups-12-cupcakes.html")
        expect(page.locator("main")).to_contain_text("all-purpose flour")
        page.wait_for_function("document.querySelector('.opening-picture img').naturalWidth > 0")
        page.locator("header a.school").first.click()
        page.wait_for_url("**/subscribers/index.html")


def test_focus_stays_in_its_list_and_a_listener_hears_what_changed(address: str, browser: Browser) -> None:
    with reading(browser, address) as page:
        page.locator("#choices").get_by_role("link", name="24 cupcakes").focus()
        page.keyboard.press("Enter")
        page.wait_for_url("**-24-cupcakes.html")
        expect(page.get_by_role("status")).to_have_text(re.compile("Now set for 24.cupcakes, British metric"))
        expect(page.locator("#choices [aria-current]").first).to_be_focused()
        page.keyboard.press("Tab")
        expect(page.locator("#choices a").nth(3)).to_be_focused()


def test_the_step_that_one_reads_stays_where_it_is(address: str, browser: Browser) -> None:
    with reading(browser, address) as page:
        choose(page, "US cups")
        page.wait_for_url("**/us-cups-12-cupcakes.html")
        expect(page.locator("main")).to_contain_text("all-purpose flour")
        page.locator("#step-6").evaluate(
            "step => scrollTo(0, step.getBoundingClientRect().top + scrollY - 200)"
        )
        page.go_back()
        expect(page.locator("main")).to_contain_text("plain flour")
        top = page.locator("#step-6").evaluate("step => step.getBoundingClientRect().top")
        assert 0 < top < 844


def test_tins_are_a_list_of_their_own_beginning_with_the_tested_one(served: str, browser: Browser) -> None:
    with reading(browser, f"{served}subscribers/{LAYER_CAKE}") as page:
        lists = page.locator("#choices ul")
        assert lists.count() == 2
        expect(lists.first).to_contain_text(re.compile(r"two 20.cm round .*\(as tested\)"))
        choose(page, "18")
        page.wait_for_url("**-2x18cm-round.html")
        expect(page.locator(".facts")).to_contain_text("18")


def test_from_a_disk_a_choice_is_a_link_that_keeps_the_list_in_sight(demo: Demo, browser: Browser) -> None:
    with reading(browser, (demo.subscribers / CUPCAKES).as_uri()) as page:
        choose(page, "24 cupcakes")
        page.wait_for_url("file:**/british-metric-24-cupcakes.html#choices")
        assert chosen(page) == ["24 cupcakes", "British metric"]
        expect(page.locator("#choices")).to_be_in_viewport()


@pytest.mark.parametrize("tree", ["public", "subscribers"])
def test_without_script_a_choice_is_a_link(tree: str, served: str, browser: Browser) -> None:
    with reading(browser, f"{served}{tree}/{CUPCAKES}", script=False) as page:
        choose(page, "US cups")
        page.wait_for_url("**/us-cups-12-cupcakes.html#choices")
        assert "all-purpose flour" in body(page)
        assert chosen(page)[-1] == "US cups"


@pytest.mark.parametrize(
    "answer",
    ["Promise.reject(new TypeError('no signal'))", "Promise.resolve(new Response('<h1>Log in</h1>'))"],
    ids=["no signal", "a log-in page"],
)
def test_where_the_page_is_not_what_comes_the_browser_opens_it(
    answer: str, address: str, browser: Browser
) -> None:
    with reading(browser, address) as page:
        page.evaluate(f"() => {{ window.stays = true; window.fetch = () => {answer}; }}")
        choose(page, "24 cupcakes")
        page.wait_for_url("**-24-cupcakes.html#choices")
        assert chosen(page)[0] == "24 cupcakes"
        assert not page.evaluate("window.stays")


def test_it_prints_as_chosen(address: str, browser: Browser) -> None:
    with reading(browser, address) as page:
        choose(page, "24 cupcakes")
        page.wait_for_url("**-24-cupcakes.html")
        choose(page, "US cups")
        page.wait_for_url("**/us-cups-24-cupcakes.html")
        page.emulate_media(media="print")
        expect(page.locator("#choices")).to_be_hidden()
        text = body(page)
        for words in ("24 cupcakes", "US cups", "2⅔ cups", "325 °F"):
            assert words in text
