"""Every address that a published file names, whichever way it names it."""

import json
import re
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path
from xml.etree.ElementTree import fromstring

import pikepdf

from tests.outside.demo import read_json_ld

CSS_ADDRESS = re.compile(r"url\(\s*[\"']?([^\"')]+)")
META = ("og:image", "og:url")


class PageAddresses(HTMLParser):
    """links: as written, relative ones and full ones. ids: the places within the page."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.links: list[str] = []
        self.ids: set[str] = set()
        self.feed(text)

    def handle_starttag(self, _tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {key: value or "" for key, value in attrs}
        self.ids.add(given.get("id", ""))
        self.links += [given[key] for key in ("href", "src") if given.get(key)]
        self.links += [part.split()[0] for part in given.get("srcset", "").split(",") if part.strip()]
        if given.get("property") in META:
            self.links.append(given["content"])


def read_page(page: Path) -> PageAddresses:
    return PageAddresses(page.read_text(encoding="utf-8"))


def named_in(file: Path) -> list[str]:
    """The addresses that a file names, by its kind; nothing for pictures and fonts."""
    match file.suffix:
        case ".html":
            return [
                *read_page(file).links,
                *(link for block in read_json_ld(file) for link in _in_data(block)),
            ]
        case ".css":
            return CSS_ADDRESS.findall(file.read_text(encoding="utf-8"))
        case ".webmanifest":
            manifest = json.loads(file.read_text(encoding="utf-8"))
            return [manifest["start_url"], *(icon["src"] for icon in manifest["icons"])]
        case ".xml":
            return [*_in_xml(file)]
        case ".pdf":
            return [*_in_card(file)]
        case _:
            return []


def _in_data(value: object) -> Iterator[str]:
    """Every text of a JSON-LD block that is an address."""
    if isinstance(value, dict):
        for key, inner in value.items():
            if key != "@context":
                yield from _in_data(inner)
    elif isinstance(value, list):
        for inner in value:
            yield from _in_data(inner)
    elif isinstance(value, str) and re.match(r"https?://", value):
        yield value


def _in_xml(file: Path) -> Iterator[str]:
    for element in fromstring(file.read_bytes()).iter():
        name = element.tag.rpartition("}")[2]
        if name in ("loc", "id"):
            yield element.text or ""
        elif name == "link":
            yield element.attrib["href"]
        elif name == "content":
            yield from PageAddresses(element.text or "").links


def _in_card(file: Path) -> Iterator[str]:
    """The links of a card; those within it have none."""
    with pikepdf.open(file) as card:
        for page in card.pages:
            for annotation in page.get("/Annots", []):
                action = annotation.get("/A", {})
                if "/URI" in action:
                    yield str(action["/URI"])
