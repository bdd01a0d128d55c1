"""A theme: tokens, templates, styles and a script, read from one folder."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from hashlib import sha256
from pathlib import Path

from jinja2 import DictLoader, Environment, StrictUndefined
from jinja2.sandbox import SandboxedEnvironment
from markupsafe import Markup, escape

from sitegen.press.fonts import FACES, FontFile, licence, short_hash, subset
from sitegen.press.formula_parts import formula_parts
from sitegen.press.prose import curled, to_inline_html
from sitegen.press.timeline import timeline_picture
from sitegen.press.tokens import ThemeUnusable, Tokens, custom_properties, read_tokens

THEME_FILE = "theme.yaml"
SCRIPT_FILE = "script.js"
MARK_FILE = "mark.svg"
CARD_STYLES = frozenset({"card.css", "order.css"})
"""What only paper is styled with."""
FONTS = "theme/fonts"


@dataclass(frozen=True)
class Theme:
    """name: its folder's. templates, styles: file name -> text. script: runs on every page.

    mark: the school's small picture, SVG. fonts: the faces that its style sheets may name.
    Pages use all styles but those of paper.
    """

    name: str
    tokens: Tokens
    templates: Mapping[str, str] = field(hash=False, repr=False)
    styles: Mapping[str, str] = field(hash=False, repr=False)
    script: str = field(repr=False)
    mark: str = field(repr=False)
    fonts: tuple[FontFile, ...] = FACES

    @cached_property
    def environment(self) -> Environment:
        """The templates, sandboxed; every value is escaped, and a name that is missing is an error."""
        environment = SandboxedEnvironment(
            loader=DictLoader(dict(self.templates)),
            autoescape=True,
            undefined=StrictUndefined,
            trim_blocks=True,
            lstrip_blocks=True,
            finalize=_typeset,
        )
        environment.globals["theme"] = {
            "stylesheet": self.stylesheet_path,
            "script": self.script_path,
            "mark": self.mark_path,
        }
        environment.filters |= {
            "inline": to_inline_html,
            "https": _https,
            "parts": formula_parts,
            "timeline": timeline_picture,
        }
        return environment

    @cached_property
    def stylesheet(self) -> str:
        """What pages are styled with: faces, tokens, then the styles in order of their file names."""
        parts = [style for name, style in sorted(self.styles.items()) if name not in CARD_STYLES]
        return "".join([*_face_rules(self.fonts), custom_properties(self.tokens), *parts])

    @property
    def stylesheet_path(self) -> str:
        return f"theme/page-{_short(self.stylesheet)}.css"

    @property
    def script_path(self) -> str:
        return f"theme/page-{_short(self.script)}.js"

    @property
    def mark_path(self) -> str:
        return f"theme/mark-{_short(self.mark)}.svg"

    @cached_property
    def digest(self) -> str:
        """A hash of all that the theme brings to a leaf: for the key of a cache."""
        texts = [*sorted(self.templates.items()), *sorted(self.styles.items())]
        fonts = [short_hash(font) for font in self.fonts]
        return sha256(
            repr((self.name, self.tokens, texts, self.script, self.mark, fonts)).encode()
        ).hexdigest()


def find_theme(root: Path, name: str) -> Path:
    """The folder of a theme: beside `content/` first, then among those that come with the program.

    Raises ThemeUnusable where there is none of that name.
    """
    package = Path(__file__).parent.parent
    places = (root / "themes" / name, package / "themes" / name, package.parent / "themes" / name)
    found = next((place for place in places if (place / THEME_FILE).is_file()), None)
    if found is None:
        raise ThemeUnusable(places[0], (f"there is no theme '{name}'",))
    return found


def load_theme(folder: Path) -> Theme:
    """The theme in a folder. Raises ThemeUnusable with what is wrong in it."""
    missing = [name for name in (THEME_FILE, SCRIPT_FILE, MARK_FILE) if not (folder / name).is_file()]
    if missing:
        raise ThemeUnusable(folder, tuple(f"{name} is missing" for name in missing))
    return Theme(
        name=folder.name,
        tokens=read_tokens((folder / THEME_FILE).read_text(encoding="utf-8"), folder),
        templates=_texts(folder / "templates", "*.html"),
        styles=_texts(folder / "styles", "*.css"),
        script=(folder / SCRIPT_FILE).read_text(encoding="utf-8"),
        mark=(folder / MARK_FILE).read_text(encoding="utf-8"),
    )


def theme_leaves(theme: Theme) -> tuple[tuple[str, bytes], ...]:
    """The files that pages need, (path, bytes) each: style sheet, script, fonts and their licences."""
    packages = sorted({font.package for font in theme.fonts})
    return (
        (theme.stylesheet_path, theme.stylesheet.encode()),
        (theme.script_path, theme.script.encode()),
        (theme.mark_path, theme.mark.encode()),
        *((_font_path(font), subset(font, "woff2")) for font in theme.fonts),
        *((f"{FONTS}/OFL-{package.replace('_', '-')}.txt", licence(package)) for package in packages),
    )


def _typeset(value: object) -> object:
    """Plain texts get the quotes of print; what is marked as HTML or as an address stays as it is."""
    return curled(value) if isinstance(value, str) and not isinstance(value, Markup) else value


def _https(address: str) -> Markup:
    """An address from a recipe, ready for `href`; anything but https becomes a link to nothing."""
    return escape(address) if address.startswith("https://") else Markup("#")


def _font_path(font: FontFile) -> str:
    return f"{FONTS}/{font.name}-{short_hash(font)}.woff2"


def _face_rules(fonts: tuple[FontFile, ...]) -> Iterator[str]:
    for font in fonts:
        address = _font_path(font).removeprefix("theme/")
        slope = "italic" if font.italic else "normal"
        yield (
            f'@font-face{{font-family:"{font.family}";font-weight:{font.weight};font-style:{slope};'
            f'font-display:swap;src:url("{address}") format("woff2")}}\n'
        )


def _texts(folder: Path, pattern: str) -> Mapping[str, str]:
    return {path.name: path.read_text(encoding="utf-8") for path in sorted(folder.glob(pattern))}


def _short(text: str) -> str:
    return sha256(text.encode()).hexdigest()[:16]
