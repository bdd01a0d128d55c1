"""What the desk looks like: its pages, set by templates of its own, and the files that they load.

The templates print what they are given; those of the school's theme are another matter (`press/theme.py`).
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup, escape

from sitegen.desk.groups import grouped
from sitegen.desk.values import Desk, ShownFault
from sitegen.press.fonts import FontFile
from sitegen.press.prose import curled, to_inline_html
from sitegen.press.timeline import timeline_picture

DESK_POLICY = (
    "default-src 'none'; img-src 'self'; style-src 'self'; script-src 'self'; font-src 'self'; "
    "connect-src 'self'; frame-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'self'"
)
FACES = {
    font.name: font
    for font in (
        FontFile("Desk Serif", 400, False, "font_source_serif_pro", "SourceSerifPro-Regular.ttf"),
        FontFile("Desk Serif", 600, False, "font_source_serif_pro", "SourceSerifPro-Semibold.ttf"),
        FontFile("Desk Sans", 400, False, "font_source_sans_pro", "SourceSansPro-Regular.ttf"),
        FontFile("Desk Sans", 600, False, "font_source_sans_pro", "SourceSansPro-Semibold.ttf"),
    )
}
"""What its pages are set in. On this machine's own wire a whole face costs less than cutting one."""
_MARK = "mark.svg"
_STYLES = {
    "desk.css": (
        *("1-faces.css", "2-ground.css", "3-faults.css", "4-desk.css", "5-form.css", "6-what-if.css"),
        "7-card-and-plan.css",
    ),
    "live.css": ("live.css",),
}
_SCRIPTS = ("renew.js", "live.js")


@dataclass(frozen=True)
class Asset:
    """A file that a page loads. media: its type, as HTTP names it."""

    body: bytes
    media: str


def desk_page(desk: Desk, find: str = "") -> str:
    """The desk. find: words that a recipe must have, in its title or in what is said of it; '' for all."""
    return page("desk.html", home="", desk=desk, found=grouped(desk, find), find=find)


def not_made_page(title: str, told: str, faults: Sequence[ShownFault], desk: str) -> str:
    """What stands in place of a page that cannot be made. desk: relative address of the desk."""
    return page("not-made.html", home=desk, title=title, told=told, faults_shown=faults)


def page(template: str, /, **content: object) -> str:
    """A page of the desk. content: what its template prints; `home` is the relative address of the desk."""
    return _environment().get_template(template).render(**content)


def asset(name: str) -> Asset | None:
    """A style sheet, script or face by its file name; None for what the desk does not have."""
    if name in _STYLES:
        return Asset("\n".join(_text("styles", part) for part in _STYLES[name]).encode(), "text/css")
    if name in _SCRIPTS:
        return Asset(_text("scripts", name).encode(), "text/javascript")
    if name == _MARK:
        return Asset(_text("styles", name).encode(), "image/svg+xml")
    face = FACES.get(name.removesuffix(".ttf"))
    return Asset(face.read(), "font/ttf") if face else None


def _text(folder: str, name: str) -> str:
    return (files("sitegen.desk") / folder / name).read_text(encoding="utf-8")


@cache
def _environment() -> Environment:
    """Every value is escaped and typeset, and a name that is missing is an error."""
    environment = Environment(
        loader=PackageLoader("sitegen.desk", "templates"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        finalize=_typeset,
    )
    environment.filters |= {
        "as_written": _as_written,
        "opening": _opening,
        "inline": to_inline_html,
        "timeline": timeline_picture,
    }
    return environment


def _typeset(value: object) -> object:
    return curled(value) if isinstance(value, str) and not isinstance(value, Markup) else value


def _opening(text: str) -> Markup:
    """A sentence as it begins a line: with a capital; what is to be written, between backticks, as code."""
    parts = f"{text[:1].upper()}{text[1:]}".split("`")
    last = len(parts) - 1
    return Markup("").join(
        Markup("<code>{}</code>").format(part) if place in range(1, last, 2) else escape(curled(part))
        for place, part in enumerate(parts)
    )


def _as_written(text: str) -> Markup:
    """A text from a file, with the quotes that stand there."""
    return Markup(escape(text))
