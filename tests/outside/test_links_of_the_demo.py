"""Every address that the demo publishes leads somewhere, from a disk as from a host."""

from pathlib import Path
from urllib.parse import unquote, urldefrag, urljoin, urlsplit

import pytest

from tests.outside.addresses import PageAddresses, named_in, read_page
from tests.outside.demo import Demo

SCHOOL = "https://tansyrow.example/"
TABLE = "https://tansyrow.example/table/"
FILMS = "https://video.example/"


def trees(demo: Demo) -> dict[Path, str]:
    """Each tree and the address at which the school serves it."""
    return {demo.public: SCHOOL, demo.subscribers: TABLE}


def file_at(demo: Demo, address: str) -> Path:
    """The file that a host answers an address of the school with."""
    tree, start = (demo.subscribers, TABLE) if address.startswith(TABLE) else (demo.public, SCHOOL)
    path = unquote(urlsplit(address).path.removeprefix(urlsplit(start).path))
    return tree / (path or "index.html")


def reaches(demo: Demo, address: str, pages: dict[Path, PageAddresses]) -> bool:
    """Whether an address of the school is a file, and its fragment a place on that page."""
    whole, fragment = urldefrag(address)
    file = file_at(demo, whole)
    if not file.is_file():
        return False
    if fragment and file.suffix == ".html":
        if file not in pages:
            pages[file] = read_page(file)
        return fragment in pages[file].ids
    return True


@pytest.mark.parametrize("suffix", [".html", ".css", ".webmanifest", ".xml", ".pdf"])
def test_every_address_of_the_school_leads_to_a_file_and_its_place(suffix: str, demo: Demo) -> None:
    """Pages with pictures, data and shared pictures; styles; manifests; feed and map; printed cards."""
    pages: dict[Path, PageAddresses] = {}
    followed, dead = 0, []
    for tree, start in trees(demo).items():
        for file in tree.rglob(f"*{suffix}"):
            own = start + file.relative_to(tree).as_posix()
            for link in named_in(file):
                address = urljoin(own, link)
                if address.startswith(SCHOOL):
                    followed += 1
                    if not reaches(demo, address, pages):
                        dead.append(f"{file.name}: {link}")
    assert dead == []
    assert followed >= len(trees(demo))


def test_every_relative_address_stays_within_its_tree(demo: Demo) -> None:
    """So that a tree works from a disk, or below any path."""
    for tree in trees(demo):
        for page in tree.rglob("*.html"):
            for link in read_page(page).links:
                path, _ = urldefrag(link)
                if path and not urlsplit(link).scheme:
                    target = (page.parent / unquote(path)).resolve()
                    assert target.is_relative_to(tree.resolve()), f"{page.name}: {link} leaves the tree"
                    assert target.is_file(), f"{page.name}: {link} is not there"


def test_every_other_address_is_a_film_on_a_safe_host(demo: Demo) -> None:
    for tree in trees(demo):
        for file in tree.rglob("*.*"):
            for link in named_in(file):
                if urlsplit(link).scheme and not link.startswith(SCHOOL):
                    assert link.startswith(FILMS), f"{file.name}: {link}"


def test_no_public_page_leads_to_a_file_of_the_subscribers_but_the_recipe_itself(demo: Demo) -> None:
    """The way in is the page, behind the log-in; no card, picture or list is named."""
    for file in demo.public.rglob("*.*"):
        for link in named_in(file):
            if link.startswith(TABLE):
                assert link.startswith(f"{TABLE}recipes/"), f"{file.name}: {link}"


def test_no_page_loads_anything_from_another_host(demo: Demo) -> None:
    for page in demo.pages():
        text = page.read_text(encoding="utf-8")
        assert "Content-Security-Policy" in text


def test_every_card_leads_to_its_page_by_its_full_address(demo: Demo) -> None:
    cards = demo.cards()
    assert cards
    for card in cards:
        assert any(link.startswith(f"{TABLE}recipes/") for link in named_in(card)), card.name


def test_every_file_of_a_tree_is_reached_from_its_pages(demo: Demo) -> None:
    """Nothing lies in a tree that no page, style or feed names: a stray file is a leak waiting."""
    for tree in trees(demo):
        texts = [path for path in tree.rglob("*") if path.suffix in (".html", ".css", ".xml", ".json", ".js")]
        named = "\n".join(path.read_text(encoding="utf-8") for path in texts)
        for path in tree.rglob("*"):
            if path.is_file() and path.suffix in (".webp", ".jpg", ".pdf", ".woff2"):
                assert path.name in named, f"{path.relative_to(tree)} is named nowhere"
