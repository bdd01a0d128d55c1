"""The pages as a reader uses them, in a real browser: from a disk, without script, with floury hands."""

from playwright.sync_api import Browser, Page

from tests.outside.demo import Demo

RECIPE = "recipes/blackcurrant-and-bay-cupcakes.html"


def opened(browser: Browser, address: str, *, script: bool = True, width: int = 390) -> Page:
    context = browser.new_context(viewport={"width": width, "height": 844}, java_script_enabled=script)
    page = context.new_page()
    page.goto(address)
    return page


def test_a_page_opened_from_a_disk_is_styled_and_says_nothing_wrong(demo: Demo, browser: Browser) -> None:
    context = browser.new_context(viewport={"width": 1280, "height": 900})
    page = context.new_page()
    complaints: list[str] = []
    page.on("console", lambda message: complaints.append(message.text))
    page.on("requestfailed", lambda request: complaints.append(request.url))
    page.goto((demo.subscribers / RECIPE).as_uri())
    assert complaints == []
    family = page.evaluate("getComputedStyle(document.body).fontFamily")
    assert "Oatcloth" in family
    assert page.evaluate("document.fonts.size") > 0
    broken = page.evaluate("[...document.images].filter(i => i.loading !== 'lazy' && !i.naturalWidth).length")
    assert broken == 0
    context.close()


def test_no_request_leaves_the_host(served: str, browser: Browser) -> None:
    context = browser.new_context()
    page = context.new_page()
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(f"{served}subscribers/{RECIPE}")
    page.mouse.wheel(0, 20_000)
    page.wait_for_load_state("networkidle")
    assert asked
    assert all(address.startswith(served) for address in asked)
    context.close()


def test_the_page_is_whole_without_script(served: str, browser: Browser) -> None:
    page = opened(browser, f"{served}subscribers/{RECIPE}", script=False)
    text = page.locator("main").inner_text()
    for words in ("Bay sponge", "spring back when pressed", "Keep", "150"):
        assert words in text
    assert page.locator(":is(input, button):visible").count() == 0
    page.context.close()


def test_text_at_twice_the_size_does_not_scroll_sideways(served: str, browser: Browser) -> None:
    page = opened(browser, f"{served}subscribers/{RECIPE}")
    page.evaluate("document.documentElement.style.setProperty('font-size', '200%')")
    wide = page.evaluate("document.documentElement.scrollWidth > document.documentElement.clientWidth")
    assert not wide
    page.context.close()


def test_the_public_page_holds_no_step(served: str, browser: Browser) -> None:
    page = opened(browser, f"{served}public/{RECIPE}")
    text = page.locator("body").inner_text()
    assert "caster sugar" in text
    assert "spring back when pressed" not in text
    page.context.close()
