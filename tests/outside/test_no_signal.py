"""What a reader has opened opens again with no signal, in a real browser on a real host.

Source: W3C Service Workers: scope, install and activate, the Cache interface.
"""

import os
import re
import shutil
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect

from tests.outside.demo import Demo
from tests.outside.host import Host, hosted

SLUG = "blackcurrant-and-bay-cupcakes"
RECIPE = f"recipes/{SLUG}.html"
OTHER = "recipes/caramel-choux-buns.html"
PATIENCE_S = 30
KEPT = """async (addresses) => {
  const found = await Promise.all(addresses.map((address) => caches.match(address)));
  return found.every(Boolean) && navigator.serviceWorker.controller !== null;
}"""
IN_CACHES = """async () => {
  const names = await caches.keys();
  const urls = async (name) => (await (await caches.open(name)).keys()).map((each) => each.url);
  return Object.fromEntries(await Promise.all(names.map(async (name) => [name, await urls(name)])));
}"""

# The worker of a slow line: it begins when the test says so.
LATE_WORKER = """const begin = ServiceWorkerContainer.prototype.register;
const told = new Promise((tell) => addEventListener("worker-may-begin", tell));
ServiceWorkerContainer.prototype.register = async function (...whole) {
  await told;
  return begin.apply(this, whole);
};"""


@pytest.fixture
def trees(demo: Demo, tmp_path: Path) -> Path:
    """Both trees of the demo, to be changed at will: a file is replaced, never written into."""
    for name in ("public", "subscribers"):
        shutil.copytree(demo.output / name, tmp_path / name, copy_function=os.link)
    return tmp_path


@pytest.fixture
def host(trees: Path) -> Iterator[Host]:
    """Everyone's tree below a path, the subscribers' below that, as in the demo's own addresses."""
    served = {"/school/": trees / "public", "/school/table/": trees / "subscribers"}
    with hosted(served) as started:
        yield started


@pytest.fixture
def context(browser: Browser) -> Iterator[BrowserContext]:
    made = browser.new_context(viewport={"width": 390, "height": 844}, reduced_motion="reduce")
    yield made
    made.close()


def choices_of(tree: Path) -> list[str]:
    """The paths of a recipe's pages in every batch and edition."""
    others = sorted((tree / "recipes" / SLUG).glob("*.html"))
    assert len(others) > 3
    return [RECIPE, *(path.relative_to(tree).as_posix() for path in others)]


def kept_cards(page: Page) -> list[str]:
    return [url for urls in page.evaluate(IN_CACHES).values() for url in urls if url.endswith(".pdf")]


def wait_until_kept(page: Page, addresses: list[str]) -> None:
    until = time.monotonic() + PATIENCE_S
    while not page.evaluate(KEPT, addresses):
        assert time.monotonic() < until, page.evaluate(IN_CACHES)
        page.wait_for_timeout(100)


def opened_and_kept(context: BrowserContext, root: str, tree: Path) -> Page:
    """The recipe, opened once and left open until all of it is kept."""
    page = context.new_page()
    page.goto(root + RECIPE)
    wait_until_kept(page, [root + path for path in choices_of(tree)])
    page.wait_for_load_state("networkidle")
    return page


def assert_shown(page: Page, tree: Path, path: str) -> None:
    """The page in the window is the one that was published there: its batch and its edition."""
    written = re.search(r'data-choices="([^"]+)"', (tree / path).read_text(encoding="utf-8"))
    assert written
    expect(page.locator("[data-choices]")).to_have_attribute("data-choices", written.group(1))


def assert_whole(page: Page) -> None:
    """Pictures, fonts and styles are there."""
    page.evaluate("for (const image of document.images) image.loading = 'eager'")
    page.evaluate("Promise.all([...document.images].map((image) => image.decode()))")
    assert page.evaluate("[...document.images].every((image) => image.naturalWidth > 0)")
    page.evaluate("document.fonts.ready")
    assert page.evaluate("[...document.fonts].filter((face) => face.status === 'loaded').length") >= 2
    assert page.evaluate("getComputedStyle(document.body).getPropertyValue('--colour-paper')")


def replace_text(file: Path, old: str, new: str) -> None:
    text = file.read_text(encoding="utf-8")
    assert old in text
    file.unlink()
    file.write_text(text.replace(old, new), encoding="utf-8")


def test_a_worker_that_begins_late_keeps_what_the_opened_page_led_to(
    host: Host, trees: Path, context: BrowserContext
) -> None:
    root = f"{host.address}/school/table/"
    page = context.new_page()
    missing: list[str] = []
    page.on("response", lambda answer: answer.status >= 400 and missing.append(answer.url))
    page.add_init_script(LATE_WORKER)
    page.goto(root + RECIPE)
    page.locator("#choices").get_by_role("link", name="24 cupcakes").click()
    expect(page.locator("[data-choices]")).to_have_attribute("data-choices", re.compile("24"))
    # As for a moment when one goes back: the window is at the first page again, another still stands in it.
    page.evaluate("address => history.replaceState(null, '', address)", root + RECIPE)
    page.evaluate("dispatchEvent(new Event('worker-may-begin'))")
    wait_until_kept(page, [root + path for path in choices_of(trees / "subscribers")])
    assert not missing


@pytest.mark.parametrize(("path", "tree"), [("/school/", "public"), ("/school/table/", "subscribers")])
def test_a_page_opened_once_opens_whole_with_no_signal(
    path: str, tree: str, themed: Demo, context: BrowserContext
) -> None:
    with hosted({"/school/": themed.public, "/school/table/": themed.subscribers}) as host:
        page = opened_and_kept(context, host.address + path, themed.output / tree)
        before = page.locator("main").inner_text()
        context.set_offline(True)
        host.asked.clear()
        page.reload()
        assert_whole(page)
    assert page.locator("main").inner_text() == before
    assert host.asked == []


def test_every_batch_and_edition_is_kept_with_the_page(
    host: Host, trees: Path, context: BrowserContext
) -> None:
    root = f"{host.address}/school/table/"
    page = opened_and_kept(context, root, trees / "subscribers")
    context.set_offline(True)
    for path in choices_of(trees / "subscribers"):
        page.goto(root + path)
        assert_shown(page, trees / "subscribers", path)
        assert page.evaluate("document.images[1].complete && document.images[1].naturalWidth > 0")


def test_a_phone_that_was_turned_shows_the_pictures_that_it_has(
    host: Host, trees: Path, context: BrowserContext
) -> None:
    """In another width the browser asks for other cuts, which were never fetched."""
    page = opened_and_kept(context, f"{host.address}/school/table/", trees / "subscribers")
    context.set_offline(True)
    page.set_viewport_size({"width": 1900, "height": 900})
    page.reload()
    assert_whole(page)


def test_another_choice_is_set_in_place_with_no_signal(
    host: Host, trees: Path, context: BrowserContext
) -> None:
    page = opened_and_kept(context, f"{host.address}/school/table/", trees / "subscribers")
    context.set_offline(True)
    page.reload()
    page.locator("[data-choices] a", has_text="US cups").click()
    page.wait_for_url("**/us-cups-*.html*")
    assert "all-purpose flour" in page.locator("main").inner_text()


def test_a_page_that_was_never_opened_says_so_and_lists_those_that_were(
    host: Host, trees: Path, context: BrowserContext
) -> None:
    root = f"{host.address}/school/"
    page = opened_and_kept(context, root, trees / "public")
    context.set_offline(True)
    page.goto(root + OTHER)
    assert page.locator("h1").inner_text() == "Not kept on this device"
    assert page.evaluate("getComputedStyle(document.body).getPropertyValue('--colour-paper')")
    assert page.locator("main li").count() == 2
    page.get_by_role("link", name="Blackcurrant and bay cupcakes").click()
    page.wait_for_url(root + RECIPE)
    assert_shown(page, trees / "public", RECIPE)


def test_the_front_page_is_kept_unopened(host: Host, trees: Path, context: BrowserContext) -> None:
    root = f"{host.address}/school/"
    page = opened_and_kept(context, root, trees / "public")
    context.set_offline(True)
    page.goto(f"{root}index.html")
    assert page.locator(f"a[href*='{SLUG}']").count() > 0


def test_a_page_that_was_withdrawn_is_not_kept(host: Host, trees: Path, context: BrowserContext) -> None:
    root = f"{host.address}/school/"
    page = opened_and_kept(context, root, trees / "public")
    (trees / "public" / RECIPE).unlink()
    page.reload()
    context.set_offline(True)
    page.goto(root + RECIPE)
    assert page.locator("h1").inner_text() == "Not kept on this device"


def test_a_new_version_brings_corrections_to_kept_pages_and_takes_the_old_away(
    host: Host, trees: Path, context: BrowserContext
) -> None:
    root, tree = f"{host.address}/school/", trees / "public"
    page = opened_and_kept(context, root, tree)
    old = [name for name in page.evaluate(IN_CACHES) if " pages " in name]
    corrected = choices_of(tree)[-1]
    replace_text(tree / corrected, "<h1>", "<h1>Corrected: ")
    replace_text(tree / "offline.js", '"version": "', '"version": "new')
    page.goto(root + "tutorials/index.html")
    until = time.monotonic() + PATIENCE_S
    while set(old) & set(page.evaluate(IN_CACHES)):
        assert time.monotonic() < until
        page.wait_for_timeout(100)
    kept = page.evaluate(IN_CACHES)
    assert len(old) == len([name for name in kept if " pages " in name]) == 1
    context.set_offline(True)
    page.goto(root + corrected)
    assert page.locator("h1").inner_text().startswith("Corrected: ")
    page.goto(root + RECIPE)
    assert_shown(page, tree, RECIPE)


def test_the_worker_of_everyones_tree_keeps_nothing_of_the_subscribers(
    host: Host, trees: Path, context: BrowserContext
) -> None:
    """The tree below the same folder, opened first through the worker of the upper one."""
    page = opened_and_kept(context, f"{host.address}/school/", trees / "public")
    page.goto(f"{host.address}/school/table/{OTHER}")
    page.wait_for_load_state("networkidle")
    for name, urls in page.evaluate(IN_CACHES).items():
        if name.startswith(f"{host.address}/school/ "):
            assert not [url for url in urls if "/table/" in url]
    written = (trees / "public" / "offline.js").read_text(encoding="utf-8")
    assert "table" not in written
    assert "cards/" not in (trees / "public" / "site.webmanifest").read_text(encoding="utf-8")


def test_a_refusal_by_the_host_clears_what_was_kept(host: Host, trees: Path, context: BrowserContext) -> None:
    root = f"{host.address}/school/table/"
    page = opened_and_kept(context, root, trees / "subscribers")
    host.status = 401
    page.goto(root + RECIPE)
    context.set_offline(True)
    assert page.evaluate(IN_CACHES) == {}


def test_a_host_out_of_order_is_no_reason_to_show_nothing(
    host: Host, trees: Path, context: BrowserContext
) -> None:
    page = opened_and_kept(context, f"{host.address}/school/", trees / "public")
    host.status = 503
    page.reload()
    assert_shown(page, trees / "public", RECIPE)


def test_a_card_is_kept_once_it_was_opened(host: Host, trees: Path, context: BrowserContext) -> None:
    root = f"{host.address}/school/table/"
    page = opened_and_kept(context, root, trees / "subscribers")
    assert kept_cards(page) == []
    card = next((trees / "subscribers" / "cards").glob(f"{SLUG}-*.pdf")).name
    size = page.evaluate("async (card) => (await (await fetch(card)).blob()).size", f"{root}cards/{card}")
    wait_until_kept(page, [f"{root}cards/{card}"])
    context.set_offline(True)
    assert kept_cards(page) == [f"{root}cards/{card}"]
    again = page.evaluate("async (card) => (await (await fetch(card)).blob()).size", f"{root}cards/{card}")
    assert again == size > 10_000


def test_only_the_newest_pages_are_kept(host: Host, trees: Path, context: BrowserContext) -> None:
    root, tree = f"{host.address}/school/", trees / "public"
    page = opened_and_kept(context, root, tree)
    for number in range(130):
        (tree / "recipes" / f"bun-{number}.html").write_text("<!doctype html>", encoding="utf-8")
    every = [f"{root}recipes/bun-{number}.html" for number in range(130)]
    page.evaluate("async (every) => { for (const one of every) await (await fetch(one)).text(); }", every)
    wait_until_kept(page, every[-1:])
    kept = [urls for name, urls in page.evaluate(IN_CACHES).items() if " pages " in name]
    assert [len(urls) for urls in kept] == [120]
    assert kept[0][-1] == every[-1]
    assert root + RECIPE not in kept[0]


def test_nothing_is_registered_from_a_disk_and_nothing_complained_of(
    demo: Demo, context: BrowserContext
) -> None:
    page = context.new_page()
    complaints: list[str] = []
    page.on("console", lambda message: complaints.append(message.text))
    page.on("pageerror", lambda error: complaints.append(str(error)))
    page.goto((demo.public / RECIPE).as_uri())
    page.wait_for_timeout(500)
    assert complaints == []
    assert context.service_workers == []


def test_every_page_picture_and_file_of_the_theme_is_of_a_kind_that_is_kept(demo: Demo) -> None:
    """The worker knows what is ours by its path: this holds its patterns against all that is published."""
    code = (demo.subscribers / "offline.js").read_text(encoding="utf-8")
    patterns = [re.compile(text.replace("\\/", "/")) for text in re.findall(r'\["\w+", /(.+)/\]', code)]
    assert len(patterns) == 4
    unkept = {".xml", ".txt", ".json", ".webmanifest", ".zip"}
    for tree in (demo.public, demo.subscribers):
        for file in tree.rglob("*"):
            path = file.relative_to(tree).as_posix()
            if file.is_file() and file.suffix not in unkept and path not in ("404.html", "offline.js"):
                named = "" if path == "index.html" else path
                assert any(pattern.search(named) for pattern in patterns), path
