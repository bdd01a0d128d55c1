"""The desk and its what-if page in a real browser: by keyboard, by pointer, and renewed by themselves."""

import time
from collections.abc import Callable, Iterator
from io import BytesIO
from pathlib import Path
from urllib.parse import urljoin

import httpx
import pikepdf
import pytest
from playwright.sync_api import Browser, Page, expect

from tests.desk.running_desk import Running
from tests.outside.axe import SETTINGS, faults, with_axe

FAULTY = "#row-coming-biscuits"
ROUGHLY_PX = 40
LEAST_TARGET = 44
"""In CSS pixels. Source: WCAG 2.2, 2.5.5, target size (enhanced)."""
CARD = "#paper iframe:not(.coming)"
A4_HEIGHT = 297 / 25.4 * 96
"""In CSS pixels. Source: ISO 216; CSS Values and Units, 96 pixels an inch."""
TARGETS = """least => [...document.querySelectorAll("a, button, input, select, summary")]
  .filter(one => one.checkVisibility())
  .filter(one => one.getBoundingClientRect().height < least)
  .map(one => one.outerHTML)"""


@pytest.fixture(scope="module")
def tab(browser: Browser, checkers: Path) -> Iterator[Page]:
    context = browser.new_context(viewport={"width": 1280, "height": 900})
    tab = with_axe(context.new_page(), checkers)
    tab.set_default_timeout(10_000)
    yield tab
    context.close()


@pytest.fixture
def desk(tab: Page, served_desk: Running) -> Page:
    tab.set_viewport_size({"width": 1280, "height": 900})
    tab.goto(served_desk.address)
    return tab


@pytest.fixture
def what_if(tab: Page, served_desk: Running) -> Page:
    tab.set_viewport_size({"width": 1280, "height": 900})
    tab.goto(f"{served_desk.address}what-if/open-biscuits")
    return tab


def until(holds: Callable[[], bool]) -> None:
    """Waits for what a strict policy lets no script of a test wait for."""
    ends = time.monotonic() + 10
    while not holds():
        assert time.monotonic() < ends
        time.sleep(0.02)


def focused(tab: Page) -> str:
    return str(tab.evaluate("document.activeElement.id || document.activeElement.textContent.trim()"))


def test_the_fault_of_a_recipe_stands_first_with_its_line(desk: Page) -> None:
    expect(desk.locator(".recipe").first).to_have_id("row-coming-biscuits")
    expect(desk.locator(f"{FAULTY} .written code")).to_have_text("      - 10 g moonflower dust")
    expect(desk.locator(f"{FAULTY} mark")).to_have_text("moonflower dust")


def test_a_search_renews_the_list_as_it_is_typed_and_keeps_the_focus(desk: Page) -> None:
    desk.locator("#find").press_sequentially("teaser")
    expect(desk.locator("#said")).to_have_text("1 of 5 recipes have ‘teaser’.")
    expect(desk.locator(".recipe")).to_have_count(1)
    assert focused(desk) == "find"
    assert desk.url.endswith("?find=teaser")
    desk.go_back()


def test_without_a_script_the_form_asks_for_the_same(tab: Page, served_desk: Running) -> None:
    switch = tab.context.new_cdp_session(tab)
    switch.send("Emulation.setScriptExecutionDisabled", {"value": True})
    tab.goto(served_desk.address)
    tab.fill("#find", "teaser")
    tab.get_by_role("button", name="Find").click()
    expect(tab.locator(".recipe")).to_have_count(1)
    tab.goto(f"{served_desk.address}what-if/open-biscuits")
    tab.fill("#tin", "23 cm square")
    tab.get_by_role("button", name="Work it out").click()
    expect(tab.locator("#part-sheet")).to_contain_text("a 23 cm square tin")
    switch.send("Emulation.setScriptExecutionDisabled", {"value": False})
    switch.detach()


def test_every_link_and_field_is_reached_by_keyboard_in_the_order_of_the_page(desk: Page) -> None:
    wanted = desk.evaluate(
        """() => [...document.querySelectorAll("a, input, summary")].filter(one => one.checkVisibility())
          .map(one => one.id || one.textContent.trim())"""
    )
    reached = []
    for _ in wanted:
        desk.keyboard.press("Tab")
        reached.append(focused(desk))
        width = desk.evaluate("parseFloat(getComputedStyle(document.activeElement).outlineWidth)")
        assert width >= 2, reached[-1]
    assert reached == wanted


def test_what_was_saved_is_shown_and_what_was_open_stays_open(desk: Page, served_desk: Running) -> None:
    recipe = served_desk.recipe("teaser-biscuits")
    text = recipe.read_text()
    hot = text.replace("oven: 150 C fan", "oven: 350 C fan")
    recipe.write_text(hot)
    advice = desk.locator("#advice-teaser-biscuits summary")
    try:
        expect(advice).to_contain_text("1 piece of advice")
        advice.focus()
        desk.keyboard.press("Enter")
        expect(desk.locator("#advice-teaser-biscuits .faults")).to_be_visible()
        recipe.write_text(hot.replace("title: Teaser biscuits", "title: Teaser squares"))
        expect(desk.locator("#row-teaser-biscuits h3")).to_have_text("Teaser squares")
        expect(desk.locator("#advice-teaser-biscuits .faults")).to_be_visible()
        assert focused(desk).startswith("1 piece of advice")
    finally:
        recipe.write_text(text)
    expect(desk.locator("#advice-teaser-biscuits")).to_have_count(0)


def test_a_save_appears_on_an_open_page_of_the_live_site_where_one_stands(
    tab: Page, served_desk: Running
) -> None:
    recipe = served_desk.recipe("draft-biscuits")
    text = recipe.read_text()
    tab.set_viewport_size({"width": 390, "height": 700})
    tab.goto(f"{served_desk.address}subscribers/recipes/draft-biscuits.html")
    expect(tab.locator(".preview-band")).to_contain_text("Draft: no day publishes it")

    def stands_at(height_px: int) -> bool:
        return abs(int(tab.evaluate("scrollY")) - height_px) < ROUGHLY_PX

    tab.evaluate("scrollTo(0, 900)")
    until(lambda: stands_at(900))
    try:
        recipe.write_text(text.replace("notes: Bake", "notes: Say that it was saved, and bake"))
        expect(tab.get_by_text("Say that it was saved")).to_have_count(1)
        until(lambda: stands_at(900))
        recipe.write_text(text.replace("180 g plain flour", "180 g moon flour"))
        expect(tab.get_by_text("moon flour").first).to_be_visible()
    finally:
        recipe.write_text(text)
    expect(tab.locator(".preview-band")).to_be_visible()


def test_all_four_answers_follow_the_form(what_if: Page) -> None:
    field = what_if.locator("#batch")
    field.press_sequentially("24")
    expect(what_if.locator("#part-sheet")).to_contain_text("tested: 120\N{NO-BREAK SPACE}g")
    expect(what_if.locator("#said")).to_contain_text("24\N{NO-BREAK SPACE}squares")
    expect(what_if.frame_locator(CARD).locator(".issue")).to_contain_text("24\N{NO-BREAK SPACE}squares")
    expect(what_if.locator("#part-drift")).to_contain_text("360.0 g")
    assert focused(what_if) == "batch"
    what_if.locator("#edition").select_option("us-cups")
    expect(what_if.locator("#part-sheet")).to_contain_text("all-purpose flour")
    before = what_if.locator("#part-plan").inner_html()
    what_if.fill("#ready-by", "2026-07-18T16:00")
    expect(what_if.locator("#part-plan caption").first).to_contain_text("Saturday")
    assert what_if.locator("#part-plan").inner_html() != before
    assert "ready-by=2026-07-18T16%3A00" in what_if.url
    card = what_if.get_by_role("link", name="PDF, US Letter").get_attribute("href")
    assert {"batch=24", "paper=letter"} <= set((card or "").partition("?")[2].split("&"))


def test_what_cannot_be_is_told_beside_its_field(what_if: Page) -> None:
    tin = what_if.locator("#tin")
    tin.press_sequentially("a shoe box")
    refusal = what_if.locator("#fault-tin")
    expect(refusal).to_contain_text("‘a shoe box’ is no tin that we know")
    expect(tin).to_have_attribute("aria-invalid", "true")
    assert "fault-tin" in (tin.get_attribute("aria-describedby") or "")
    expect(what_if.locator("#said")).to_contain_text("1 field cannot be followed.")
    expect(what_if.locator("#part-card")).to_contain_text("there is none of what was asked for")
    tin.fill("23 cm square")
    expect(refusal).to_be_empty()
    assert tin.get_attribute("aria-invalid") is None


def test_an_error_takes_the_place_of_the_answers_until_it_is_mended(
    what_if: Page, served_desk: Running
) -> None:
    recipe = served_desk.recipe("open-biscuits")
    text = recipe.read_text()
    try:
        recipe.write_text(text.replace("180 g plain flour", "180 g moon flour"))
        expect(what_if.locator("main")).to_contain_text("What-if works again once they are mended.")
        expect(what_if.locator("main mark")).to_have_text("moon flour")
        recipe.write_text(text.replace("180 g plain flour", "180 g star flour"))
        expect(what_if.locator("main mark")).to_have_text("star flour")
    finally:
        recipe.write_text(text)
    expect(what_if.locator("#part-sheet")).to_contain_text("180\N{NO-BREAK SPACE}g")


def test_the_card_fits_has_as_many_pages_as_the_printed_one_and_asks_nothing_of_another_host(
    tab: Page, served_desk: Running
) -> None:
    fits = """card => {
      const box = one => document.querySelector(one)?.getBoundingClientRect();
      const [paper, frame] = [box("#paper"), box(card)];
      const near = side => Math.abs(paper[side] - frame[side]) < 2;
      return Boolean(frame) && ["left", "top", "width", "height"].every(near);
    }"""
    asked: list[str] = []
    tab.on("request", lambda request: asked.append(request.url))
    tab.goto(f"{served_desk.address}what-if/open-biscuits")
    for width in (390, 1280):
        tab.set_viewport_size({"width": width, "height": 900})
        until(lambda: bool(tab.evaluate(fits, CARD)))
    href = tab.get_by_role("link", name="PDF, A4").get_attribute("href")
    printed = httpx.get(urljoin(tab.url, href), timeout=30).content
    with pikepdf.open(BytesIO(printed)) as pdf:
        pages = len(pdf.pages)
    tab.goto(f"{served_desk.address}what-if/open-biscuits/card.html")
    tab.evaluate("document.fonts.ready.then(() => true)")
    height = tab.evaluate("document.documentElement.getBoundingClientRect().height")
    assert height == pytest.approx(pages * A4_HEIGHT, abs=2)
    assert any(url.endswith(".jpg") for url in asked)
    assert [url for url in asked if not url.startswith(served_desk.address)] == []


@pytest.mark.parametrize(
    "path",
    [
        "",
        "what-if/open-biscuits?batch=24&edition=us-cups&cooks=0&ready-by=2020-01-01T10:00",
        "what-if/coming-biscuits",
    ],
)
def test_axe_finds_nothing_and_a_thumb_hits_everything(tab: Page, served_desk: Running, path: str) -> None:
    """axe-core, the rules of WCAG 2.2 AA and its best practice, on a phone and a desktop, light and dark."""
    tab.goto(f"{served_desk.address}{path}")
    for details in tab.locator("details:not([open]) > summary").all():
        details.click()
    found = [fault for setting in SETTINGS for fault in faults(tab, setting)]
    assert found == []
    assert tab.evaluate(TARGETS, LEAST_TARGET) == []
