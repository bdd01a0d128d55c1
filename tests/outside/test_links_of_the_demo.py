"""Every address on every page of the demo leads somewhere, from a disk as from a host."""

from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urldefrag, urlsplit

from tests.outside.demo import Demo


class Addresses(HTMLParser):
    """The addresses and ids of one page."""

    def __init__(self) -> None:
        super().__init__()
        self.links: list[str] = []
        self.ids: set[str] = set()

    def handle_starttag(self, _tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {key: value or "" for key, value in attrs}
        self.ids.add(given.get("id", ""))
        if given.get("rel") == "canonical":
            return
        self.links += [given[key] for key in ("href", "src") if given.get(key)]
        self.links += [part.split()[0] for part in given.get("srcset", "").split(",") if part.strip()]


def read(page: Path) -> Addresses:
    found = Addresses()
    found.feed(page.read_text(encoding="utf-8"))
    return found


def test_every_relative_address_is_a_file_of_the_same_tree(demo: Demo) -> None:
    followed = 0
    for tree in (demo.public, demo.subscribers):
        for page in tree.rglob("*.html"):
            for link in read(page).links:
                path, fragment = urldefrag(link)
                if urlsplit(link).scheme:
                    continue
                target = (page.parent / unquote(path)).resolve() if path else page
                followed += 1
                assert target.is_relative_to(tree.resolve()), f"{page.name}: {link} leaves the tree"
                assert target.is_file(), f"{page.name}: {link} is not there"
                if fragment and target.suffix == ".html":
                    assert fragment in read(target).ids, f"{page.name}: {link} has no such place"
    assert followed > 1000


def test_no_page_loads_anything_from_another_host(demo: Demo) -> None:
    for page in demo.pages():
        text = page.read_text(encoding="utf-8")
        assert "Content-Security-Policy" in text
        for link in read(page).links:
            parts = urlsplit(link)
            if parts.scheme:
                assert parts.scheme == "https", f"{page.name}: {link}"


def test_every_file_of_a_tree_is_reached_from_its_pages(demo: Demo) -> None:
    """Nothing lies in a tree that no page, style or feed names: a stray file is a leak waiting."""
    for tree in (demo.public, demo.subscribers):
        texts = [path for path in tree.rglob("*") if path.suffix in (".html", ".css", ".xml", ".json", ".js")]
        named = "\n".join(path.read_text(encoding="utf-8") for path in texts)
        for path in tree.rglob("*"):
            if path.is_file() and path.suffix in (".webp", ".jpg", ".pdf", ".woff2"):
                assert path.name in named, f"{path.relative_to(tree)} is named nowhere"
