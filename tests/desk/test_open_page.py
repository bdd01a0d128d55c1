"""An open page in a real browser: a save appears on it, where the reader stands in it."""

from pathlib import Path

from playwright.sync_api import Browser, Page, expect

from tests.desk.running_desk import put_faces, running
from tests.release.small_school import NOON, SUMMER, write_recipe, write_school

PATIENCE_MS = 20_000
ROUGHLY_PX = 40
LOOKS_EVERY_MS = 50


def comes_to(page: Page, height_px: int) -> bool:
    """Whether the page is scrolled so far, or soon will be.

    Asked from here again and again: the page's policy forbids a browser test's own script to wait in it.
    """
    for _ in range(PATIENCE_MS // LOOKS_EVERY_MS):
        if abs(page.evaluate("scrollY") - height_px) < ROUGHLY_PX:
            return True
        page.wait_for_timeout(LOOKS_EVERY_MS)
    return False


def test_a_save_appears_on_the_open_page_where_one_stands(browser: Browser, tmp_path: Path) -> None:
    from sitegen.desk.reading import Reading

    root = write_school(tmp_path / "school")
    put_faces(Reading(root, lambda: NOON, SUMMER).bench)
    with running(root) as desk:
        context = browser.new_context(viewport={"width": 390, "height": 700})
        page = context.new_page()
        page.goto(f"{desk.address}subscribers/recipes/draft-biscuits.html")
        expect(page.locator(".preview-band")).to_contain_text(
            "Draft: no day publishes it", timeout=PATIENCE_MS
        )
        page.evaluate("scrollTo(0, 900)")
        assert comes_to(page, 900)
        write_recipe(root, "draft-biscuits", notes="and say that they were saved")
        expect(page.get_by_text("and say that they were saved")).to_have_count(1, timeout=PATIENCE_MS)
        assert comes_to(page, 900)
        write_recipe(root, "draft-biscuits", preparation="soft\n      - 10 g moonflower dust")
        expect(page.get_by_text("moonflower dust").first).to_be_visible(timeout=PATIENCE_MS)
        write_recipe(root, "draft-biscuits")
        expect(page.locator(".preview-band")).to_be_visible(timeout=PATIENCE_MS)
        context.close()
