"""A save is told to the pages that it touches, and to no other; half a file ends nothing."""

from collections.abc import Iterator
from pathlib import Path
from shutil import move

import httpx
import pytest

from tests.desk.running_desk import PATIENCE_S, Running, running
from tests.release.small_school import write_recipe, write_school

PAGE = "subscribers/recipes/open-biscuits.html"
OTHER = "subscribers/recipes/teaser-biscuits.html"


@pytest.fixture
def desk(tmp_path: Path) -> Iterator[Running]:
    """A desk of the test's own, which nobody has heard anything of."""
    with running(write_school(tmp_path / "school")) as served:
        yield served


def mark(page: str) -> str:
    """What a page tells the news of itself."""
    return page.partition("&amp;mark=")[2].partition('"')[0]


def news_of(page: str, mark: str) -> str:
    return f"?page={page}&mark={mark}"


def test_a_save_is_told_to_the_desk_and_to_the_page_that_it_touches_and_to_no_other(desk: Running) -> None:
    before, other = desk.get(PAGE).text, desk.get(OTHER).text
    with (
        desk.news(news_of(OTHER, mark(other))) as quiet,
        desk.news(news_of(PAGE, mark(before))) as news,
        desk.news() as of_all,
    ):
        write_recipe(desk.root, "open-biscuits", summary="Quite another summary.")
        assert news.next()
        assert of_all.next()
        after = desk.get(PAGE).text
        assert "Quite another summary." in after
        assert mark(after) != mark(before)
        with desk.news(news_of(PAGE, mark(after))) as again:
            write_recipe(desk.root, "open-biscuits", preparation="soft\n      - 10 g moonflower dust")
            assert again.next()
            assert "moonflower dust" in desk.get().text
        assert quiet.is_quiet()


def test_a_page_at_fault_is_back_once_it_is_mended(desk: Running) -> None:
    recipe = desk.recipe("open-biscuits")
    whole = recipe.read_text()
    sound = desk.get(PAGE).text
    with desk.news(news_of(PAGE, mark(sound))) as news:
        recipe.write_text("title: [")
        assert news.next()
    faulty = desk.get(PAGE).text
    assert "mended" in faulty
    with desk.news(news_of(PAGE, mark(faulty))) as news:
        spare = recipe.with_name(".recipe.yaml.part")
        spare.write_text(whole)
        move(spare, recipe)  # as editors save
        assert news.next()
    assert desk.get(PAGE).text == sound
    with desk.news(news_of(PAGE, mark(faulty))) as news:
        assert news.next(), "a page that was fetched before a save hears of it when it begins to listen"


def test_a_folder_that_is_put_in_the_place_of_another_is_watched(desk: Running) -> None:
    content = desk.root / "content"
    with desk.news() as news:
        move(content, desk.root / "old")
        assert news.next()
        move(desk.root / "old", content)
        assert news.next()
    with desk.news(news_of(PAGE, mark(desk.get(PAGE).text))) as news:
        write_recipe(desk.root, "open-biscuits", summary="Saved afterwards.")
        assert news.next()
    assert "Saved afterwards." in desk.get(PAGE).text


@pytest.mark.parametrize(
    "path", ["..%2f..%2fcontent%2fsite.yaml", "%2e%2e/content/site.yaml", "..\\content\\site.yaml"]
)
def test_no_address_leads_to_a_file(served_desk: Running, path: str) -> None:
    for tree in ("public", "subscribers", "texts", "looks", "what-if"):
        answer = served_desk.get(f"{tree}/{path}")
        assert answer.status_code == 404
        assert "tansyrow" not in answer.text


def test_files_are_served_as_what_they_are(served_desk: Running) -> None:
    page = served_desk.get("public/recipes/open-biscuits.html")
    assert page.headers["content-type"] == "text/html; charset=utf-8"
    assert "script-src 'self'" in page.headers["content-security-policy"]
    assert "<script>" not in page.text
    assert served_desk.get("public/feed.xml").headers["content-type"].startswith("application/xml")
    text = served_desk.get("texts/open-biscuits/subscriber-post.txt")
    assert text.headers["content-type"].startswith("text/plain")
    assert httpx.head(f"{served_desk.address}public/index.html", timeout=PATIENCE_S).status_code == 200
    assert not (served_desk.root / "output").exists()


def test_a_card_is_printed_when_it_is_asked_for(served_desk: Running) -> None:
    card = served_desk.get("subscribers/cards/draft-biscuits-british-metric-a4.pdf")
    assert card.content.startswith(b"%PDF-")
    assert served_desk.get("public/cards/draft-biscuits-british-metric-a4.pdf").status_code == 404
