"""The face that names and numbers are set in on numbered copies, and the part of it that a copy carries.

A copy carries only the glyphs of its own mark, so that it tells nothing of the other names. Its subset bears
a name of ours (see `fonts.py` on reserved names).
"""

# mypy: disable-error-code="no-untyped-call"
# fontTools carries no types of its own.

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from io import BytesIO
from typing import TYPE_CHECKING, Any
from unicodedata import category

from sitegen.press.fonts import FontFile

if TYPE_CHECKING:
    from fontTools.subset import Options
    from fontTools.ttLib import TTFont

MARK_FONT = FontFile("Copy Mark", 400, False, "font_source_sans_pro", "SourceSansPro-Regular.ttf")
"""Latin with Vietnamese, Greek and Cyrillic: the widest of the faces that come with the program."""

EM = 1000
"""Glyphs are measured in thousandths of the size of type, as PDF does (ISO 32000-1, 9.2.4)."""

_LEFT_OUT = ("GSUB", "GPOS", "GDEF", "BASE", "DSIG", "OS/2", "post", "name", "gasp", "cmap")
"""Tables that an embedded CIDFontType2 needs none of (ISO 32000-1, 9.9)."""


@dataclass(frozen=True)
class CutFace:
    """A part of the face. program: a TrueType file. numbers: glyph of the whole face -> of this part."""

    program: bytes
    numbers: Mapping[int, int]


class MarkFace:
    """Made once a process: the face is read here, and kept.

    ascent, descent: of the tallest and the deepest letters, in thousandths; descent is below nought.
    box: round all glyphs: left, bottom, right, top.
    """

    def __init__(self) -> None:
        from fontTools.ttLib import TTFont

        face = TTFont(BytesIO(MARK_FONT.read()), recalcTimestamp=False)
        head: Any = face["head"]
        lines: Any = face["hhea"]
        scale = EM / head.unitsPerEm
        order = face.getReverseGlyphMap()
        self._glyphs = {point: order[name] for point, name in (face.getBestCmap() or {}).items()}
        self._advances: list[int] = [round(face["hmtx"][name][0] * scale) for name in face.getGlyphOrder()]
        self.ascent = round(lines.ascent * scale)
        self.descent = round(lines.descent * scale)
        self.box = tuple(round(edge * scale) for edge in (head.xMin, head.yMin, head.xMax, head.yMax))
        self._bare = _without_layout(face)

    def lacking(self, text: str) -> str:
        """The characters of a text that cannot be set, each once: those that the face has no glyph for.

        Marks that no letter of the face carries would have to be placed by rules of the script, which a line
        of glyphs knows nothing of: they are lacking as well.
        """
        return "".join(dict.fromkeys(mark for mark in text if not self._can_set(mark)))

    def glyphs(self, text: str) -> tuple[int, ...]:
        """The glyph of each character. Raises KeyError for one that is lacking."""
        return tuple(self._glyphs[ord(mark)] for mark in text)

    def advance(self, glyph: int) -> int:
        """How far the next glyph stands from this one, in thousandths of the size."""
        return self._advances[glyph]

    def cut(self, glyphs: Collection[int]) -> CutFace:
        """The part with these glyphs and those that they are put together from. The same give the same."""
        from fontTools.subset import Subsetter
        from fontTools.ttLib import TTFont

        face = TTFont(BytesIO(self._bare), recalcTimestamp=False, lazy=True)
        cutter = Subsetter(_options())
        cutter.populate(gids=sorted(glyphs))
        names = {glyph: face.getGlyphName(glyph) for glyph in glyphs}
        cutter.subset(face)
        order = face.getReverseGlyphMap(rebuild=True)
        return CutFace(_saved(face), {glyph: order[name] for glyph, name in names.items()})

    def _can_set(self, mark: str) -> bool:
        return (
            ord(mark) in self._glyphs and category(mark)[0] not in "MC" and category(mark) not in ("Zl", "Zp")
        )


def _without_layout(face: "TTFont") -> bytes:
    for table in _LEFT_OUT:
        if table in face:
            del face[table]
    return _saved(face)


def _saved(face: "TTFont") -> bytes:
    out = BytesIO()
    face.save(out)
    return out.getvalue()


def _options() -> "Options":
    from fontTools.subset import Options

    options = Options()
    options.hinting = False
    options.notdef_outline = True
    return options
