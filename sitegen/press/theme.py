"""A theme: tokens, templates, styles, scripts and faces, from its folder and those it inherits from."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property, partial
from hashlib import sha256
from pathlib import Path

from markupsafe import Markup, escape
from rcssmin import cssmin  # type: ignore[import-untyped]  # it carries no types
from rjsmin import jsmin  # type: ignore[import-untyped]  # it carries no types

from sitegen.press.fonts import FontFile, FontMissing, licence, short_hash, subset
from sitegen.press.formula_parts import formula_parts
from sitegen.press.prose import curled, to_inline_html
from sitegen.press.theme_folder import THEME_FILE, lineage, theme_text
from sitegen.press.theme_styles import loads_from_elsewhere
from sitegen.press.theme_templates import ThemeTemplates
from sitegen.press.timeline import timeline_picture
from sitegen.press.tokens import Face, ThemeUnusable, Tokens, custom_properties, read_tokens

MARK_FILE = "mark.svg"
CARD_STYLES = frozenset({"card.css", "kitchen-card.css", "order.css"})
"""What only paper is styled with."""
FONTS = "theme/fonts"


@dataclass(frozen=True)
class Theme:
    """name: its folder's. templates, styles: file name -> text. script: runs on every page. Styles and
    script are without comments and needless space.

    mark: the school's small picture, SVG. fonts: the faces that its style sheets may name.
    Pages use all styles but those of paper. A template of a theme that it inherits from is also there
    under 'that theme/its name', so that one of the same name can extend it.
    """

    name: str
    tokens: Tokens
    templates: Mapping[str, str] = field(hash=False, repr=False)
    styles: Mapping[str, str] = field(hash=False, repr=False)
    script: str = field(repr=False)
    mark: str = field(repr=False)
    fonts: tuple[FontFile, ...] = ()

    @cached_property
    def environment(self) -> ThemeTemplates:
        """The templates, sandboxed; every value is escaped, and a name that is missing is an error."""
        environment = ThemeTemplates(self.templates, _typeset)
        environment.globals["theme"] = {
            "stylesheet": self.stylesheet_path,
            "script": self.script_path,
            "mark": self.mark_path,
        }
        environment.filters |= {
            "inline": to_inline_html,
            "https": _https,
            "parts": formula_parts,
            "timeline": partial(timeline_picture, family=self.tokens.type.sans),
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
    def page_digest(self) -> str:
        """A hash of all that the theme brings to a page: for the key of a cache."""
        return self._digest(tuple(name for name in self.styles if name not in CARD_STYLES), self.script)

    def paper_digest(self, style: str) -> str:
        """A hash of all that it brings to what is printed in a style of CARD_STYLES."""
        return self._paper_digests[style]

    @cached_property
    def _paper_digests(self) -> Mapping[str, str]:
        return {style: self._digest((style,), "") for style in CARD_STYLES if style in self.styles}

    def _digest(self, styles: tuple[str, ...], script: str) -> str:
        texts = [*sorted(self.templates.items()), *((name, self.styles[name]) for name in sorted(styles))]
        fonts = [short_hash(font) for font in self.fonts]
        return sha256(repr((self.name, self.tokens, texts, script, self.mark, fonts)).encode()).hexdigest()


def load_theme(folder: Path) -> Theme:
    """The theme in a folder, with what it inherits. Raises ThemeUnusable with what is wrong in it.

    The nearest file of a name is taken: a theme's own template, style or script takes the place of the
    one that it would inherit. Scripts are joined in the order of their names.
    """
    folders = lineage(folder)
    texts = [theme_text(each, THEME_FILE) for each in folders]
    tokens = read_tokens(texts, folder)
    scripts = _nearest(folders, "scripts", "*.js")
    marks = _nearest(folders, "", MARK_FILE)
    _refuse_without(folder, {"scripts/*.js": scripts, MARK_FILE: marks})
    styles = {name: cssmin(text) for name, text in _nearest(folders, "styles", "*.css").items()}
    if outside := tuple(loads_from_elsewhere(styles)):
        raise ThemeUnusable(folder, outside)
    return Theme(
        name=folder.name,
        tokens=tokens,
        templates=_inherited_templates(folders[1:]) | _nearest(folders, "templates", "*.html"),
        styles=styles,
        script=jsmin("".join(text for _, text in sorted(scripts.items()))),
        mark=marks[MARK_FILE],
        fonts=_fonts(tokens.faces, folder),
    )


def theme_leaves(theme: Theme) -> tuple[tuple[str, bytes], ...]:
    """The files that pages need, (path, bytes) each: style sheet, script, fonts and their licences."""
    return (*theme_texts(theme), *((font_path(font), subset(font, "woff2")) for font in theme.fonts))


def theme_texts(theme: Theme) -> tuple[tuple[str, bytes], ...]:
    """The same without the fonts."""
    packages = {font.package: font for font in theme.fonts}
    return (
        (theme.stylesheet_path, theme.stylesheet.encode()),
        (theme.script_path, theme.script.encode()),
        (theme.mark_path, theme.mark.encode()),
        *((f"{FONTS}/OFL-{name.replace('_', '-')}.txt", licence(font)) for name, font in packages.items()),
    )


def _typeset(value: object) -> object:
    """Plain texts get the quotes of print; what is marked as HTML or as an address stays as it is."""
    return curled(value) if isinstance(value, str) and not isinstance(value, Markup) else value


def _https(address: str) -> Markup:
    """An address from a recipe, ready for `href`; anything but https becomes a link to nothing."""
    return escape(address) if address.startswith("https://") else Markup("#")


def font_path(font: FontFile) -> str:
    """Where a face lies for pages; the hash in it is that of the whole face."""
    return f"{FONTS}/{font.name}-{short_hash(font)}.woff2"


def _face_rules(fonts: tuple[FontFile, ...]) -> Iterator[str]:
    for font in fonts:
        address = font_path(font).removeprefix("theme/")
        slope = "italic" if font.italic else "normal"
        yield (
            f'@font-face{{font-family:"{font.family}";font-weight:{font.weight};font-style:{slope};'
            f'font-display:swap;src:url("{address}") format("woff2")}}\n'
        )


def _nearest(folders: Sequence[Path], part: str, pattern: str) -> dict[str, str]:
    """File name -> text of the nearest file of that name. folders: the theme's own first."""
    found: dict[str, str] = {}
    for folder in reversed(folders):
        names = sorted(path.relative_to(folder).as_posix() for path in (folder / part).glob(pattern))
        found |= {name.rpartition("/")[2]: theme_text(folder, name) for name in names}
    return found


def _inherited_templates(ancestors: Sequence[Path]) -> dict[str, str]:
    return {
        f"{folder.name}/{name}": text
        for folder in ancestors
        for name, text in _nearest([folder], "templates", "*.html").items()
    }


def _refuse_without(folder: Path, wanted: Mapping[str, Mapping[str, str]]) -> None:
    missing = tuple(f"{name} is missing" for name, found in wanted.items() if not found)
    if missing:
        raise ThemeUnusable(folder, missing)


def _fonts(faces: Sequence[Face], folder: Path) -> tuple[FontFile, ...]:
    """The faces as files, each of which is there."""
    fonts = tuple(
        FontFile(face.family, face.weight, face.style == "italic", face.package, face.file) for face in faces
    )
    missing = tuple(_lacks(font) for font in fonts if not _is_there(font))
    if missing:
        raise ThemeUnusable(folder, missing)
    return fonts


def _is_there(font: FontFile) -> bool:
    try:
        font.read()
    except FontMissing:
        return False
    return True


def _lacks(font: FontFile) -> str:
    package = font.package.replace("_", "-")
    return f"theme.yaml, faces: there is no {font.file} in the Python package '{package}'; is it installed?"


def _short(text: str) -> str:
    return sha256(text.encode()).hexdigest()[:16]
