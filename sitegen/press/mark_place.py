"""Where on a page the mark of a numbered copy stands: upright in a side margin, where nothing is printed."""

from dataclasses import dataclass

import pikepdf

from sitegen.press.ink import Ink
from sitegen.press.mark_face import EM, MarkFace

SIZE, SMALLEST = 6.5, 5.0
"""In points, as the next three. A line that is too long for the page is set smaller, down to the second."""
_MILLIMETRE = 72 / 25.4
_FROM_EDGE = 6 * _MILLIMETRE
"""From the paper's edge to the middle of the line: beyond what most printers leave white."""
_CLEAR = 0.9 * _MILLIMETRE
"""Between the line and what the page prints."""
NARROWEST = 6 * _MILLIMETRE
"""The narrowest margin that takes a mark."""
_FROM_FOOT = 12 * _MILLIMETRE
"""From the paper's foot to the line's beginning, and from its end to the head."""


@dataclass(frozen=True)
class MarkPlace:
    """The line's beginning on its baseline, from which it runs upwards, and how long it may be, in points."""

    right: float
    up: float
    longest: float

    def drawn(self, glyphs: str, size: float, font: str) -> bytes:
        """The line as operators (ISO 32000-1, 9.4): an artifact, which no voice reads (14.8.2.2).

        glyphs: two bytes each, as hexadecimal digits, so that no name can bring an operator. font: its name
        in the page's resources.
        """
        return (
            "/Artifact <</Type /Pagination /Subtype /Watermark>> BDC\n"
            f"q\n0 g\nBT\n{font} {size:.3f} Tf\n0 1 -1 0 {self.right:.3f} {self.up:.3f} Tm\n"
            f"<{glyphs}> Tj\nET\nQ\nEMC\n"
        ).encode("ascii")


def mark_place(page: pikepdf.Page, ink: Ink, face: MarkFace) -> MarkPlace | None:
    """In the right margin, or the left one where only that is free; None where neither is."""
    left, bottom, right, top = (float(edge) for edge in page.trimbox)
    free_right = right - (ink.box.urx if ink.box else left)
    free_left = (ink.box.llx if ink.box else right) - left
    if max(free_right, free_left) < NARROWEST or top - bottom <= 2 * _FROM_FOOT:
        return None
    height, depth = face.ascent * SIZE / EM, -face.descent * SIZE / EM
    half = (height + depth) / 2
    to_baseline = half - depth  # upright lines stand with their feet to the right
    if free_right >= NARROWEST:
        middle = right - min(_FROM_EDGE, free_right - half - _CLEAR)
    else:
        middle = left + min(_FROM_EDGE, free_left - half - _CLEAR)
    return MarkPlace(middle + to_baseline, bottom + _FROM_FOOT, top - bottom - 2 * _FROM_FOOT)
