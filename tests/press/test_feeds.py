"""The feed (RFC 4287) and the map of the site."""

from dataclasses import replace
from xml.etree.ElementTree import Element, fromstring

import pytest

from sitegen.press.entries import IndexEntry, entry_of
from sitegen.press.feeds import ATOM, MAP, atom_feed, sitemap
from sitegen.press.picture import Cut, Picture
from tests.press.sample_parts import IMPRINT
from tests.press.sample_sheets import HEAD

ENTRY = entry_of(HEAD)
OLDER = replace(ENTRY, slug="old", title="Old", path="recipes/old.html", published="2026-01-02", modified="")
NAMES = {"a": ATOM, "m": MAP}
assert ENTRY.photo
CUTS = (Cut("pictures/small.jpg", 480, 360), Cut("pictures/large.jpg", 960, 720))
SLICES = Picture(ENTRY.photo.file, (), CUTS)


def feed(*entries: IndexEntry) -> Element:
    return fromstring(atom_feed(IMPRINT, entries, {SLICES.file: SLICES}))


def text(element: Element, path: str) -> str | None:
    return element.findtext(path, namespaces=NAMES)


@pytest.mark.parametrize("must", ["a:id", "a:title", "a:updated"])
def test_feed_and_entry_have_exactly_one_of_each_must(must: str) -> None:
    """RFC 4287, 4.1.1 and 4.1.2."""
    root = feed(ENTRY, OLDER)
    assert len(root.findall(must, NAMES)) == 1
    assert [len(entry.findall(must, NAMES)) for entry in root.findall("a:entry", NAMES)] == [1, 1]


def test_the_feed_names_its_author_and_itself() -> None:
    """RFC 4287, 4.1.1: an author, and a link to itself."""
    root = feed(ENTRY)
    assert text(root, "a:author/a:name") == "Tansy Row"
    links = {link.get("rel"): link.get("href") for link in root.findall("a:link", NAMES)}
    assert links == {"self": "https://tansyrow.example/feed.xml", "alternate": "https://tansyrow.example/"}


def test_the_feed_changed_when_its_latest_entry_did() -> None:
    root = feed(OLDER, ENTRY)
    assert text(root, "a:updated") == "2026-10-20T00:00:00Z"
    assert [entry.findtext("a:updated", namespaces=NAMES) for entry in root.findall("a:entry", NAMES)] == [
        "2026-01-02T00:00:00Z",
        "2026-10-20T00:00:00Z",
    ]


def test_an_entry_leads_to_its_page_and_its_id_stays() -> None:
    entry = feed(ENTRY).find("a:entry", NAMES)
    assert entry is not None
    address = "https://tansyrow.example/recipes/quince-and-hazelnut-slices.html"
    assert text(entry, "a:id") == address
    link = entry.find("a:link", NAMES)
    assert link is not None
    assert link.get("href") == address
    assert text(entry, "a:published") == "2026-10-09T00:00:00Z"
    assert [tag.get("term") for tag in entry.findall("a:category", NAMES)] == ["tray bakes", "autumn fruit"]


def test_a_recipe_without_a_day_is_left_out_since_an_entry_must_say_when_it_changed() -> None:
    assert feed(replace(ENTRY, published="", modified="")).findall("a:entry", NAMES) == []


def test_an_entry_shows_its_picture_and_summary_as_html() -> None:
    """RFC 4287, 4.1.3.3: HTML is escaped into the element."""
    content = feed(ENTRY).find("a:entry/a:content", NAMES)
    assert content is not None
    assert content.get("type") == "html"
    assert ENTRY.photo
    assert content.text == (
        f'<div><p><img src="{IMPRINT.address}pictures/large.jpg" alt="{ENTRY.photo.alt}" width="960" '
        f'height="720"></p><p>{ENTRY.summary}</p></div>'
    )


def test_an_entry_without_a_picture_has_its_summary_alone() -> None:
    entry = feed(replace(ENTRY, photo=None)).find("a:entry", NAMES)
    assert entry is not None
    assert entry.find("a:content", NAMES) is None
    assert text(entry, "a:summary") == ENTRY.summary


def test_titles_are_escaped() -> None:
    entry = feed(replace(ENTRY, title="Salt & <pepper>")).find("a:entry", NAMES)
    assert entry is not None
    assert text(entry, "a:title") == "Salt & <pepper>"


def test_the_map_lists_addresses_and_last_changes() -> None:
    root = fromstring(sitemap(IMPRINT, [("index.html", ""), ("recipes/x.html", "2026-10-20")]))
    rows = [(text(page, "m:loc"), text(page, "m:lastmod")) for page in root.findall("m:url", NAMES)]
    assert rows == [
        ("https://tansyrow.example/", None),
        ("https://tansyrow.example/recipes/x.html", "2026-10-20"),
    ]


def test_both_are_utf8_xml_with_a_declaration_and_the_plain_namespace() -> None:
    for body, root in ((atom_feed(IMPRINT, [ENTRY], {}), b"<feed "), (sitemap(IMPRINT, []), b"<urlset ")):
        assert body.startswith(b"<?xml version='1.0' encoding='utf-8'?>")
        assert root in body
