"""Bundles as they are published: whole ZIP files of just the cards of their months, with a list in each."""

from datetime import date
from hashlib import sha256
from io import BytesIO
from pathlib import Path
from zipfile import ZipFile

import pikepdf
import pytest

from sitegen.press.bundles import page_count
from sitegen.release.bundle_work import ReadyBundle
from sitegen.release.bundles import Bundle, BundledCard, BundledRecipe, Item, Why
from sitegen.release.cache import Cache
from tests.release.conftest import Done

DAY = date(2026, 7, 3)
FOLDER = "subscribers/bundles"
RELEASED = ("coming-biscuits", "ingredient-biscuits", "open-biscuits", "teaser-biscuits")


@pytest.mark.parametrize("name", ["2026-07", "changed-since-2026-07-01"])
def test_a_bundle_holds_the_very_cards_of_its_recipes(done: Done, name: str) -> None:
    file = ZipFile(done.output / FOLDER / f"{name}.zip")
    assert file.testzip() is None
    cards = {f"{slug}-{edition}-a4.pdf" for slug in RELEASED for edition in ("british-metric", "us-cups")}
    assert set(file.namelist()) == {f"{name}/contents.pdf", *(f"{name}/cards/{card}" for card in cards)}
    for card in cards:
        assert file.read(f"{name}/cards/{card}") == (done.output / "subscribers/cards" / card).read_bytes()


def test_the_contents_are_a_tagged_pdf_that_names_its_bundle(done: Done) -> None:
    """ISO 14289-1, 7.1: a tagged file says so in its catalogue, and shows its title."""
    body = ZipFile(done.output / FOLDER / "2026-07.zip").read("2026-07/contents.pdf")
    with pikepdf.open(BytesIO(body)) as file:
        assert file.Root.MarkInfo.Marked
        assert str(file.docinfo["/Title"]) == "July 2026"
    assert page_count(body) >= 1


def test_the_page_of_bundles_leads_to_each(done: Done) -> None:
    page = (done.output / FOLDER / "index.html").read_text()
    files = sorted(path.name for path in (done.output / FOLDER).glob("*.zip"))
    assert files[:1] == ["2026-07.zip"]
    assert [name for name in files if f'href="{name}"' not in page] == []


def test_no_bundle_is_for_everyone(done: Done) -> None:
    assert not (done.output / "public/bundles").exists()
    assert "bundles" not in (done.output / "public/index.html").read_text()


def test_the_hash_of_a_bundle_is_known_once_it_was_made_of_the_same_parts(tmp_path: Path) -> None:
    cache = Cache(tmp_path / "cache", "makers")
    for key, body in (("card", b"%PDF card"), ("contents", b"%PDF contents")):
        cache.put(key, body)
    recipe = BundledRecipe("bay", "Bay", DAY, (), (BundledCard("cards/bay.pdf", "card", "A4"),))
    ready = ReadyBundle(Bundle("2026-07", DAY, False, (Item(recipe, Why.NEW),)), "contents", 20)
    assert ready.digest(cache) == ""
    file = b"".join(ready.pieces(cache))
    assert ready.digest(cache) == sha256(file).hexdigest()
    cache.put("card", b"%PDF another card")
    assert ready.digest(cache) == ""
