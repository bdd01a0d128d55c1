"""Ingredients and steps are ticked off, remembered on the device, and cleared by one control."""

import re

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

from tests.outside.demo import Demo
from tests.outside.readers import CUPCAKES, reading

TOUCH_PX = 44
"""The least height of what a floury thumb touches. Source: WCAG 2.2, success criterion 2.5.5."""


@pytest.fixture
def address(served: str) -> str:
    return f"{served}subscribers/{CUPCAKES}"


def step(page: Page, number: int) -> Locator:
    return page.get_by_role("checkbox", name=f"Step {number} done")


def line(page: Page, name: str) -> Locator:
    return page.locator("main").get_by_role("checkbox", name=re.compile(name))


def test_ticks_are_there_after_a_reload(address: str, browser: Browser) -> None:
    with reading(browser, address) as page:
        step(page, 2).check()
        line(page, "buttermilk").check()
        page.reload()
        expect(step(page, 2)).to_be_checked()
        expect(line(page, "buttermilk")).to_be_checked()
        expect(step(page, 1)).not_to_be_checked()


def test_ticks_are_carried_to_another_batch_and_edition(address: str, browser: Browser) -> None:
    with reading(browser, address) as page:
        step(page, 2).check()
        line(page, "plain flour").check()
        page.get_by_role("link", name="US cups").click()
        page.wait_for_url("**/us-cups-12-cupcakes.html")
        expect(line(page, "all-purpose flour")).to_be_checked()
        expect(step(page, 2)).to_be_checked()
        page.get_by_role("link", name="24 cupcakes").click()
        page.wait_for_url("**/us-cups-24-cupcakes.html")
        expect(line(page, "all-purpose flour")).to_be_checked()


def test_ticks_are_carried_on_a_disk(demo: Demo, browser: Browser) -> None:
    with reading(browser, (demo.subscribers / CUPCAKES).as_uri()) as page:
        step(page, 2).check()
        page.get_by_role("link", name="24 cupcakes").click()
        page.wait_for_url("**-24-cupcakes.html#choices")
        expect(step(page, 2)).to_be_checked()


def test_the_list_at_hand_and_the_list_of_the_part_share_their_ticks(address: str, browser: Browser) -> None:
    with reading(browser, address) as page:
        page.locator("summary", has_text="Ingredients").click()
        page.locator(".bar").get_by_role("checkbox", name=re.compile("buttermilk")).check()
        expect(line(page, "buttermilk")).to_be_checked()


def test_a_touch_anywhere_on_an_ingredient_ticks_it(address: str, browser: Browser) -> None:
    with reading(browser, address, has_touch=True) as page:
        page.locator("main .ingredients li", has_text="buttermilk").locator(".what").tap()
        expect(line(page, "buttermilk")).to_be_checked()


def test_one_control_clears_them_and_puts_them_back(address: str, browser: Browser) -> None:
    with reading(browser, address) as page:
        expect(page.get_by_role("button", name="Clear the ticks")).to_be_hidden()
        step(page, 2).check()
        line(page, "buttermilk").check()
        page.get_by_role("button", name="Clear the ticks").press("Enter")
        expect(page.locator(".ticked")).to_have_count(0)
        expect(page.get_by_role("status")).to_have_text("All ticks are cleared")
        page.get_by_role("button", name="Put the ticks back").press("Enter")
        expect(step(page, 2)).to_be_checked()
        page.get_by_role("button", name="Clear the ticks").click()
        page.reload()
        expect(step(page, 2)).not_to_be_checked()


def test_where_storage_is_forbidden_a_tick_lasts_as_long_as_the_page(address: str, browser: Browser) -> None:
    with reading(browser, "about:blank") as page:
        page.add_init_script(
            "Object.defineProperty(window, 'localStorage', { get() { throw new Error('forbidden'); } })"
        )
        page.goto(address)
        step(page, 2).check()
        expect(page.locator("#step-2")).to_have_class(re.compile("ticked"))


def test_targets_are_as_large_as_a_thumb_needs(address: str, browser: Browser) -> None:
    with reading(browser, address, has_touch=True, is_mobile=True) as page:
        step(page, 2).check()
        for name in (
            ".step .tick-place",
            "main .ingredients li",
            ".aids :is(label, button):visible",
            "#choices a",
            "button.start",
            ".bar summary",
        ):
            heights = [box.bounding_box() for box in page.locator(name).all()]
            assert heights, name
            assert min(box["height"] for box in heights if box) >= TOUCH_PX, name
