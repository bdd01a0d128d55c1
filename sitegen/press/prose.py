"""Markdown that bakers write, as safe HTML and as plain text."""

import re
from dataclasses import dataclass
from functools import lru_cache
from html import unescape

import nh3
from markdown import Markdown
from markupsafe import Markup

_EXTENSIONS = ("tables", "sane_lists", "smarty")
_INLINE_TAGS = frozenset({"a", "br", "em", "strong", "sub", "sup"})
_BLOCK_TAGS = {"blockquote", "h2", "h3", "h4", "hr", "li", "ol", "p", "ul"}
_TABLE_TAGS = {"table", "tbody", "td", "th", "thead", "tr"}
_PICTURE_TAGS = {"img"}
_ATTRIBUTES = {"a": {"href"}, "img": {"alt", "src"}, "ol": {"start"}}
_SCHEMES = {"https"}
_LONE_PICTURE = re.compile(r"<p>\s*<img([^>]*)>\s*</p>")
_ATTRIBUTE = re.compile(r'(\w+)="([^"]*)"')
_SPACES = re.compile(r"[ \t\r\n\f]+")
_APOSTROPHE = re.compile(r"(?<=\w)'|'(?=\d0s)")
_INCHES = re.compile(r'(?<=\d)"')
_OPENING = re.compile(r"(?<![^\s(\[–—‘“])(['\"])(?=\S)")
_OPENED = {"'": "‘", '"': "“"}
_UNIT = r"[°%×]|(?:g|kg|ml|l|mm|cm|oz|lb|tsp|tbsp|h|min|kJ|kcal|degrees)\b"
_TIES = re.compile(rf"(?<=\d) (?={_UNIT})|(?<=\d) to (?=\d)")


@dataclass(frozen=True)
class ProsePicture:
    """A picture that stands alone in a paragraph. file: as written in the Markdown."""

    file: str
    alt: str


def to_html(markdown: str) -> Markup:
    """Blocks of prose: paragraphs, lists, tables, headings from the second level; links by https or relative.

    Whatever else the author wrote, scripts and styles above all, is taken out; so is a picture, which only
    the prose of a technique page may have (`prose_parts`): no browser asks another host for one.
    """
    return _cleaned(markdown, _INLINE_TAGS | _BLOCK_TAGS | _TABLE_TAGS)


def to_inline_html(markdown: str) -> Markup:
    """Running text for one line or one step: emphasis and links, no blocks."""
    return Markup(_SPACES.sub(" ", _cleaned(markdown, _INLINE_TAGS)).strip())


def to_plain(markdown: str) -> str:
    """The words alone, on one line."""
    return _SPACES.sub(" ", unescape(_cleaned(markdown, frozenset()))).strip()


def prose_parts(markdown: str) -> tuple[Markup | ProsePicture, ...]:
    """The prose of a page, cut at its pictures, so that a template can set each picture by its cuts."""
    parts: list[Markup | ProsePicture] = []
    rest = str(_cleaned(markdown, _INLINE_TAGS | _BLOCK_TAGS | _TABLE_TAGS | _PICTURE_TAGS))
    while found := _LONE_PICTURE.search(rest):
        parts += [Markup(rest[: found.start()]), _picture(found.group(1))]
        rest = rest[found.end() :]
    return (*parts, Markup(rest))


def curled(text: str) -> str:
    """Typewriter quotes and apostrophes as print sets them; the mark of inches stays straight."""
    text = _INCHES.sub("\N{DOUBLE PRIME}", _APOSTROPHE.sub("’", text))
    text = _OPENING.sub(lambda found: _OPENED[found.group(1)], text)
    return text.replace("'", "’").replace('"', "”")


def _picture(attributes: str) -> ProsePicture:
    values = {name: unescape(value) for name, value in _ATTRIBUTE.findall(attributes)}
    return ProsePicture(values.get("src", ""), values.get("alt", ""))


@lru_cache(maxsize=4096)
def _cleaned(markdown: str, tags: frozenset[str]) -> Markup:
    """Kept, since one text stands on the pages of many batches and editions."""
    html = Markdown(extensions=_EXTENSIONS).convert(markdown)
    attributes = {tag: names for tag, names in _ATTRIBUTES.items() if tag in tags}
    clean = nh3.clean(
        html, tags=set(tags), attributes=attributes, url_schemes=_SCHEMES, attribute_filter=_beside_the_page
    )
    return Markup(_tied(clean))


def _beside_the_page(tag: str, attribute: str, value: str) -> str | None:
    """The value, or None for a picture that lies on a host or anywhere but beside its page."""
    is_away = tag == "img" and attribute == "src" and (":" in value or value.startswith(("/", "\\")))
    return None if is_away else value


def _tied(text: str) -> str:
    """No line ends within a range, '118 to 120', or between a figure and its unit."""
    return _TIES.sub(lambda tie: tie.group().replace(" ", "\N{NO-BREAK SPACE}"), text)
