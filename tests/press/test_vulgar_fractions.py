"""Fractions that a face lacks, made of its own figures.

Source: the Unicode Character Database: the compatibility decomposition of ⅔ is 2, fraction slash, 3.
"""

from io import BytesIO

import pytest
from fontTools.subset import Subsetter
from fontTools.ttLib import TTFont

from sitegen.press.fonts import FontFile
from sitegen.press.vulgar_fractions import VULGAR, complete_fractions

LACKING = FontFile("Any Sans", 700, False, "font_manrope", "Manrope-Bold.ttf")
HAVING = FontFile("Any Serif", 400, False, "font_source_serif_pro", "SourceSerifPro-Regular.ttf")


def opened(font: FontFile) -> TTFont:
    return TTFont(BytesIO(font.read()), recalcTimestamp=False)


def saved(face: TTFont) -> TTFont:
    out = BytesIO()
    face.save(out)
    return TTFont(BytesIO(out.getvalue()))


@pytest.mark.parametrize(
    ("fraction", "parts"),
    [("⅔", "²⁄₃"), ("⅜", "³⁄₈"), ("⅒", "¹⁄₁₀")],
)
def test_a_fraction_is_as_wide_as_its_parts_and_drawn_with_them(fraction: str, parts: str) -> None:
    face = opened(LACKING)
    assert ord(fraction) not in face.getBestCmap()
    complete_fractions(face)
    whole = saved(face)
    names = whole.getBestCmap()
    glyph = whole["glyf"][names[ord(fraction)]]
    assert [part.glyphName for part in glyph.components] == [names[ord(part)] for part in parts]
    widths = whole["hmtx"].metrics
    assert widths[names[ord(fraction)]][0] == sum(widths[names[ord(part)]][0] for part in parts)


def test_its_parts_stand_one_behind_the_other() -> None:
    face = opened(LACKING)
    complete_fractions(face)
    places = [part.x for part in face["glyf"][face.getBestCmap()[ord("⅞")]].components]
    assert places == sorted(set(places))
    assert places[0] == 0


def test_fractions_that_the_face_has_stay_as_its_designer_drew_them() -> None:
    face = opened(LACKING)
    before = {point: face["glyf"][face.getBestCmap()[ord(point)]] for point in "½¼¾"}
    complete_fractions(face)
    assert all(face["glyf"][face.getBestCmap()[ord(point)]] is glyph for point, glyph in before.items())
    full = opened(HAVING)
    drawn = full.getBestCmap()[ord("⅔")]
    complete_fractions(full)
    assert full.getBestCmap()[ord("⅔")] == drawn


def test_a_face_without_the_parts_is_left_without_the_fractions() -> None:
    face = opened(LACKING)
    cutter = Subsetter()
    cutter.populate(text="0123456789½")
    cutter.subset(face)
    complete_fractions(face)
    assert not set(VULGAR) & set(face.getBestCmap())
