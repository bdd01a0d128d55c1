"""The faces that pages and cards are set in, cut down to the characters and features that they use.

A theme names them, from Python packages of type under the SIL Open Font Licence 1.1. A subset is a
modified version, which may not bear a reserved name (clause 3): so each bears the theme's name for it,
and the licence is published beside it (clause 2).

fontTools is imported where a face is cut and not above, since it takes a tenth of the start of a build, and
most builds find their faces cut.
"""

# mypy: disable-error-code="no-untyped-call"
# fontTools carries no types of its own.

from dataclasses import dataclass
from functools import cache
from hashlib import sha256
from importlib.resources import files
from io import BytesIO
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from fontTools.subset import Options
    from fontTools.ttLib import TTFont

Flavor = Literal["woff2"]

FEATURES = (
    "kern",
    "liga",
    "ccmp",
    "locl",
    "mark",
    "frac",
    "numr",
    "dnom",
    "onum",
    "lnum",
    "pnum",
    "tnum",
    "smcp",
    "case",
)
_RANGES = (
    (0x20, 0x7E),
    (0xA0, 0x17F),
    (0x2010, 0x2015),
    (0x2018, 0x201E),
    (0x2153, 0x215E),
    (0x2190, 0x2193),
)
_SINGLES = "†‡•…‰′″‹›⁄€−≈≤≥×÷✓☐☑\N{FIGURE SPACE}"
_NAMES_KEPT = {0: "copyright", 13: "licence", 14: "address of the licence"}
_FAMILY, _STYLE, _UNIQUE, _FULL, _POSTSCRIPT = 1, 2, 3, 4, 6


@dataclass(frozen=True)
class FontFile:
    """One face.

    family: its name in style sheets. weight: 100 to 900, as CSS counts. package, file: where it
    comes from, a Python package and a file in its `files` folder.
    """

    family: str
    weight: int
    italic: bool
    package: str
    file: str

    @property
    def name(self) -> str:
        """A name for files: 'oatcloth-serif-600', 'oatcloth-serif-400-italic'."""
        slope = "-italic" if self.italic else ""
        return f"{self.family.lower().replace(' ', '-')}-{self.weight}{slope}"

    def read(self) -> bytes:
        """The whole face as its package brings it. Raises FontMissing."""
        try:
            return (files(self.package) / "files" / self.file).read_bytes()
        except (ModuleNotFoundError, FileNotFoundError) as error:
            raise FontMissing(self) from error


class FontMissing(Exception):
    """A face that is not on this machine: its package, or the file in it."""

    def __init__(self, font: FontFile) -> None:
        super().__init__(font)
        self.font = font


@cache
def subset(font: FontFile, flavor: Flavor | None = None) -> bytes:
    """The face with Latin letters, punctuation, fractions, arrows and the features in FEATURES.

    flavor: 'woff2' for pages, None for a plain TrueType file. The same face gives the same bytes: the
    date inside stays the foundry's.
    """
    return _cut(font) if flavor is None else _packed(subset(font), flavor)


def _cut(font: FontFile) -> bytes:
    from fontTools.subset import Subsetter
    from fontTools.ttLib import TTFont

    from sitegen.press.vulgar_fractions import complete_fractions

    face = TTFont(BytesIO(font.read()), recalcTimestamp=False)
    complete_fractions(face)
    cutter = Subsetter(_options())
    cutter.populate(unicodes=_characters())
    cutter.subset(face)
    _rename(face, font)
    return _saved(face)


def _packed(cut: bytes, flavor: Flavor) -> bytes:
    from fontTools.ttLib import TTFont

    face = TTFont(BytesIO(cut), recalcTimestamp=False)
    face.flavor = flavor
    return _saved(face)


def _saved(face: "TTFont") -> bytes:
    out = BytesIO()
    face.save(out)
    return out.getvalue()


@cache
def short_hash(font: FontFile) -> str:
    """Names a published subset without making it: 16 hex digits of the face and of what is kept of it."""
    kept = repr((font, FEATURES, _RANGES, _SINGLES)).encode()
    return sha256(font.read() + kept).hexdigest()[:16]


def licence(font: FontFile) -> bytes:
    """The licence of a face: its own notice of copyright, and the SIL Open Font Licence 1.1.

    Not every package carries the text; each face carries the notice (name table, name 0).
    """
    from fontTools.ttLib import TTFont

    notice = str(TTFont(BytesIO(font.read()), lazy=True)["name"].getDebugName(0))
    text = (files("sitegen") / "data" / "licences" / "OFL-1.1.txt").read_text(encoding="utf-8")
    return f"{notice}\n\n{text}".encode()


def _options() -> "Options":
    from fontTools.subset import Options

    options = Options()
    options.layout_features = list(FEATURES)
    options.hinting = False
    options.name_IDs = [*_NAMES_KEPT, _FAMILY, _STYLE, _UNIQUE, _FULL, _POSTSCRIPT]
    options.notdef_outline = True
    return options


def _characters() -> list[int]:
    ranged = [point for low, high in _RANGES for point in range(low, high + 1)]
    return [*ranged, *map(ord, _SINGLES)]


def _rename(face: "TTFont", font: FontFile) -> None:
    style = f"{font.weight} Italic" if font.italic else str(font.weight)
    full = f"{font.family} {style}"
    texts = {
        _FAMILY: font.family,
        _STYLE: style,
        _UNIQUE: full,
        _FULL: full,
        _POSTSCRIPT: full.replace(" ", "-"),
    }
    for record in face["name"].names:
        if record.nameID in texts:
            record.string = texts[record.nameID]
