"""The version by which a device knows that its kept pages are old."""

from pathlib import Path

from tests.release.small_school import publish_school, tree_hashes, write_recipe

WORKERS = ("public/offline.js", "subscribers/offline.js")


def workers_that_changed(root: Path) -> list[str]:
    before = tree_hashes(root / "output")
    publish_school(root)
    after = tree_hashes(root / "output")
    return [path for path in WORKERS if before[path] != after[path]]


def test_a_build_that_changes_nothing_asks_no_device_to_fetch_anything(again: Path) -> None:
    assert workers_that_changed(again) == []


def test_what_only_subscribers_may_see_is_no_news_to_everyone(again: Path) -> None:
    write_recipe(again, "teaser-biscuits", step="slowly")
    assert workers_that_changed(again) == ["subscribers/offline.js"]


def test_what_everyone_sees_is_news_to_both(again: Path) -> None:
    write_recipe(again, "open-biscuits", summary="Crisp at last.")
    assert workers_that_changed(again) == [*WORKERS]


def test_another_look_of_the_pages_is_news_to_both(again: Path) -> None:
    site = again / "content" / "site.yaml"
    site.write_text(site.read_text().replace("tagline: One long table", "tagline: Two short tables"))
    assert workers_that_changed(again) == [*WORKERS]
