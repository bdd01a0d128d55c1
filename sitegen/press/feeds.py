"""What programs read: the feed of new recipes and the map of the site."""

from collections.abc import Iterable, Mapping, Sequence
from xml.etree.ElementTree import Element, SubElement, indent, register_namespace, tostring

from sitegen.press.addresses import FEED
from sitegen.press.entries import IndexEntry
from sitegen.press.imprint import Imprint
from sitegen.press.picture import Picture
from sitegen.press.shared import SharedPicture, shared_picture

ATOM = "http://www.w3.org/2005/Atom"
MAP = "http://www.sitemaps.org/schemas/sitemap/0.9"
_BEFORE_ALL = "1970-01-01"


def atom_feed(imprint: Imprint, entries: Sequence[IndexEntry], pictures: Mapping[str, Picture]) -> bytes:
    """The feed (RFC 4287), entries in the order given. An id is the address of the page and never changes.

    Dates are days: each is set at the day's beginning, UTC, as RFC 3339 wants an hour. A recipe whose
    day is unknown is left out, since an entry must say when it changed. pictures: by their source's path.
    """
    dated = [entry for entry in entries if _changed(entry)]
    feed = Element(f"{{{ATOM}}}feed", {"{http://www.w3.org/XML/1998/namespace}lang": imprint.language})
    _text(feed, "id", imprint.address)
    _text(feed, "title", imprint.name)
    _text(feed, "subtitle", imprint.tagline)
    _text(feed, "updated", _moment(max((_changed(entry) for entry in dated), default=_BEFORE_ALL)))
    SubElement(feed, f"{{{ATOM}}}link", rel="self", type="application/atom+xml", href=imprint.address + FEED)
    SubElement(feed, f"{{{ATOM}}}link", rel="alternate", type="text/html", href=imprint.address)
    _text(SubElement(feed, f"{{{ATOM}}}author"), "name", imprint.name)
    if imprint.copyright:
        _text(feed, "rights", imprint.copyright)
    for entry in dated:
        feed.append(_entry(imprint, entry, shared_picture(imprint, entry.photo, pictures)))
    return _bytes(feed, ATOM)


def sitemap(imprint: Imprint, pages: Iterable[tuple[str, str]]) -> bytes:
    """The map of the site (sitemaps.org, protocol 0.9). pages: path and ISO date of the last change or ''."""
    root = Element(f"{{{MAP}}}urlset")
    for path, changed in pages:
        page = SubElement(root, f"{{{MAP}}}url")
        SubElement(page, f"{{{MAP}}}loc").text = imprint.address_of(path)
        if changed:
            SubElement(page, f"{{{MAP}}}lastmod").text = changed
    return _bytes(root, MAP)


def _entry(imprint: Imprint, entry: IndexEntry, picture: SharedPicture | None) -> Element:
    address = imprint.address + entry.path
    element = Element(f"{{{ATOM}}}entry")
    _text(element, "id", address)
    _text(element, "title", entry.title)
    _text(element, "updated", _moment(_changed(entry)))
    if entry.published:
        _text(element, "published", _moment(entry.published))
    SubElement(element, f"{{{ATOM}}}link", rel="alternate", type="text/html", href=address)
    _text(element, "summary", entry.summary)
    for tag in entry.tags:
        SubElement(element, f"{{{ATOM}}}category", term=tag)
    if picture:
        content = SubElement(element, f"{{{ATOM}}}content", type="html")
        content.text = _content(picture, entry.summary)
    return element


def _content(picture: SharedPicture, summary: str) -> str:
    """The picture above the summary, as HTML."""
    block = Element("div")
    image = SubElement(SubElement(block, "p"), "img", src=picture.address, alt=picture.alt)
    image.set("width", str(picture.width))
    image.set("height", str(picture.height))
    SubElement(block, "p").text = summary
    return tostring(block, encoding="unicode", method="html")


def _changed(entry: IndexEntry) -> str:
    """ISO dates sort as texts: the later of the two days."""
    return max(entry.published, entry.modified)


def _moment(day: str) -> str:
    return f"{day}T00:00:00Z"


def _text(parent: Element, name: str, text: str) -> None:
    SubElement(parent, f"{{{ATOM}}}{name}").text = text


def _bytes(root: Element, namespace: str) -> bytes:
    register_namespace("", namespace)
    indent(root)
    return bytes(tostring(root, encoding="utf-8", xml_declaration=True)) + b"\n"
