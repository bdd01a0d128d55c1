"""Vulgar fractions that a face lacks, made of what it has: superior figures, fraction bar, inferior figures.

Many faces bring only ½, ¼ and ¾. A fraction from another face beside them would have another weight and
another height, on the same line of the same recipe.
"""

# mypy: disable-error-code="no-untyped-call"
# fontTools carries no types of its own.

from collections.abc import Mapping
from unicodedata import normalize

from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.ttLib import TTFont

VULGAR = tuple(range(0x2150, 0x215F))
"""⅐ to ⅞: the block Number Forms of Unicode. ½, ¼ and ¾ are Latin-1, and in every face."""
_BAR = 0x2044
_SUPERIOR = dict(zip("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹", strict=True))
_INFERIOR = dict(zip("0123456789", "₀₁₂₃₄₅₆₇₈₉", strict=True))


def complete_fractions(face: TTFont) -> None:
    """Give a TrueType face each fraction of VULGAR that it has the parts of and not the whole.

    A face whose outlines are not TrueType, or that lacks a part, is left as it is.
    """
    if "glyf" not in face:
        return
    glyphs = face.getBestCmap() or {}
    for point in VULGAR:
        parts = [glyphs.get(part) for part in _parts(point)]
        if point not in glyphs and all(parts):
            _add(face, point, [part for part in parts if part])


def _parts(point: int) -> tuple[int, ...]:
    """The characters that make a fraction: 2, bar, 3 (its compatibility decomposition) as ², ⁄, ₃."""
    numerator, _, denominator = normalize("NFKD", chr(point)).partition(chr(_BAR))
    return (
        *(ord(_SUPERIOR[figure]) for figure in numerator),
        _BAR,
        *(ord(_INFERIOR[figure]) for figure in denominator),
    )


def _add(face: TTFont, point: int, parts: list[str]) -> None:
    """One glyph, its parts set one behind the other as the face sets them."""
    widths: Mapping[str, tuple[int, int]] = face["hmtx"].metrics
    pen, across = TTGlyphPen(dict(face.getGlyphSet())), 0
    for part in parts:
        pen.addComponent(part, (1, 0, 0, 1, across, 0))
        across += widths[part][0]
    name = f"uni{point:04X}"
    face["glyf"][name] = glyph = pen.glyph()
    glyph.recalcBounds(face["glyf"])
    face["hmtx"][name] = (across, glyph.xMin)
    for table in face["cmap"].tables:
        if table.isUnicode():
            table.cmap[point] = name
