"""The feed and the map of the demo, against their schemas and read by independent readers.

Sources: RFC 4287 (the grammar of its Appendix B stands in `atom.rng`); sitemaps.org's schema of protocol 0.9,
as the npm package `sitemap` carries it; RFC 9309.
"""

from pathlib import Path
from urllib.parse import urlsplit

import feedparser
import pytest
from lxml import etree
from protego import Protego

from tests.outside.demo import Demo

ATOM = {"a": "http://www.w3.org/2005/Atom"}
MAP = {"m": "http://www.sitemaps.org/schemas/sitemap/0.9"}
SCHOOL = "https://tansyrow.example/"
NO_LISTING = '<meta name="robots" content="noindex">'


@pytest.fixture(scope="module")
def grammar() -> etree.RelaxNG:
    return etree.RelaxNG(etree.parse(Path(__file__).with_name("atom.rng")))


@pytest.fixture(scope="module")
def feed(demo: Demo) -> bytes:
    return (demo.public / "feed.xml").read_bytes()


def file_of(tree: Path, address: str) -> Path:
    path = urlsplit(address).path.removeprefix("/")
    return tree / (path or "index.html")


def test_the_feed_is_valid_atom(feed: bytes, grammar: etree.RelaxNG) -> None:
    assert grammar.validate(etree.fromstring(feed)), grammar.error_log


@pytest.mark.parametrize(
    ("written", "instead"),
    [
        ("<updated>", "<updated>about "),
        ("<id>", "<name>x</name><id>"),
        ('rel="self"', 'relation="self"'),
        ("T00:00:00Z", " 00:00"),
        ('<content type="html">', '<content type="pdf">'),
    ],
)
def test_a_planted_fault_is_found(written: str, instead: str, feed: bytes, grammar: etree.RelaxNG) -> None:
    text = feed.decode()
    assert written in text
    assert not grammar.validate(etree.fromstring(text.replace(written, instead, 1).encode()))


def test_ids_are_unique_and_no_entry_is_newer_than_the_feed(feed: bytes) -> None:
    """RFC 4287, 4.1.1, 4.1.2, 4.2.6."""
    root = etree.fromstring(feed)
    ids = root.xpath("//a:id/text()", namespaces=ATOM)
    assert len(ids) == len(set(ids)) > 5
    changed = root.xpath("a:entry/a:updated/text()", namespaces=ATOM)
    assert root.findtext("a:updated", namespaces=ATOM) == max(changed)


def test_a_reader_reads_it_whole(demo: Demo, feed: bytes) -> None:
    read = feedparser.parse(feed)
    assert not read.bozo
    assert (read.version, read.feed.title, read.feed.author) == ("atom10", "Tansy Row", "Tansy Row")
    for entry in read.entries:
        assert file_of(demo.public, entry.link).is_file()
        assert entry.summary
        assert entry.published_parsed <= entry.updated_parsed
        picture = etree.HTML(entry.content[0].value).find(".//img")
        assert file_of(demo.public, picture.get("src")).is_file()
        assert picture.get("alt")


def test_every_public_recipe_is_in_the_feed_and_no_other(demo: Demo, feed: bytes) -> None:
    pages = {path.name for path in (demo.public / "recipes").glob("*.html")}
    assert {entry.link.rsplit("/")[-1] for entry in feedparser.parse(feed).entries} == pages


def test_the_map_is_valid(demo: Demo, checkers: Path) -> None:
    schema = etree.XMLSchema(etree.parse(checkers / "sitemap" / "schema" / "sitemap.xsd"))
    found = etree.parse(demo.public / "sitemap.xml")
    assert schema.validate(found), schema.error_log
    found.find(".//m:lastmod", MAP).text = "last Tuesday"
    assert not schema.validate(found)


def test_the_map_lists_every_page_that_says_it_is_to_be_listed(demo: Demo) -> None:
    """Those that another page stands for, and those for no address, are left out."""
    listed = etree.parse(demo.public / "sitemap.xml").xpath("//m:loc/text()", namespaces=MAP)
    assert len(listed) == len(set(listed))
    canonical = []
    for page in demo.public.rglob("*.html"):
        text = page.read_text(encoding="utf-8")
        path = page.relative_to(demo.public).as_posix()
        address = SCHOOL + ("" if path == "index.html" else path)
        if NO_LISTING not in text and f'rel="canonical" href="{address}"' in text:
            canonical.append(address)
    assert sorted(listed) == sorted(canonical)


def test_no_page_of_the_subscribers_is_listed_anywhere(demo: Demo) -> None:
    assert not (demo.subscribers / "sitemap.xml").exists()
    assert not (demo.subscribers / "feed.xml").exists()
    for page in demo.subscribers.rglob("*.html"):
        assert NO_LISTING in page.read_text(encoding="utf-8"), page
    rules = Protego.parse((demo.subscribers / "robots.txt").read_text(encoding="utf-8"))
    assert not rules.can_fetch(f"{SCHOOL}recipes/blackcurrant-and-bay-cupcakes.html", "any")


def test_the_public_rules_let_every_listed_page_be_read_and_name_the_map(demo: Demo) -> None:
    rules = Protego.parse((demo.public / "robots.txt").read_text(encoding="utf-8"))
    assert list(rules.sitemaps) == [f"{SCHOOL}sitemap.xml"]
    listed = etree.parse(demo.public / "sitemap.xml").xpath("//m:loc/text()", namespaces=MAP)
    assert all(rules.can_fetch(address, "any") for address in listed)
