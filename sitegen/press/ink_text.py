"""How far lines of text reach on a page: the text state of a content stream (ISO 32000-1, 9.3 and 9.4)."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import pikepdf
from pikepdf import Matrix, Name, Rectangle

_ASCENT, _DESCENT = 1000.0, -300.0
"""Of a face that does not tell its own, in thousandths."""
_LAST_CODE = 0xFFFF


@dataclass(frozen=True)
class FontMeasure:
    """What is needed of a font: how wide its codes are, in text space at size 1.

    bytes_a_code: 2 for composite fonts, of which cards hold none but those with Identity-H.
    """

    bytes_a_code: int
    widths: Mapping[int, float]
    usual: float
    ascent: float
    descent: float

    def codes(self, text: bytes) -> Iterator[int]:
        for at in range(0, len(text), self.bytes_a_code):
            yield int.from_bytes(text[at : at + self.bytes_a_code], "big")

    def width(self, code: int) -> float:
        return self.widths.get(code, self.usual)


@dataclass(frozen=True)
class TextState:
    """What q and Q keep of text. rise, leading and spaces in unscaled units; stretch: 1 is as drawn."""

    font: FontMeasure | None = None
    size: float = 0.0
    between_letters: float = 0.0
    between_words: float = 0.0
    stretch: float = 1.0
    leading: float = 0.0
    rise: float = 0.0

    def shown(self, parts: Sequence[object]) -> tuple[float, Rectangle | None]:
        """A piece of text: how far it moves, and its box in text space, None where nothing is shown.

        parts: strings, and numbers that move back by thousandths, as in TJ.
        """
        if self.font is None:
            return 0.0, None
        at, low, high = 0.0, 0.0, 0.0
        for part in parts:
            if isinstance(part, pikepdf.String):
                at += self._moved(self.font, bytes(part)) * self.stretch
            else:
                at -= float(str(part)) / 1000 * self.size * self.stretch
            low, high = min(low, at), max(high, at)
        foot = self.font.descent * self.size + self.rise
        head = self.font.ascent * self.size + self.rise
        return at, Rectangle(low, min(foot, head), high, max(foot, head))

    def _moved(self, font: FontMeasure, text: bytes) -> float:
        moved = 0.0
        for code in font.codes(text):
            moved += font.width(code) * self.size + self.between_letters
            if code == ord(" ") and font.bytes_a_code == 1:
                moved += self.between_words
        return moved


class TextPlace:
    """Where the next piece of text stands: both matrices of a text object (9.4.1)."""

    def __init__(self) -> None:
        self.matrix = self._line = Matrix()

    def set(self, matrix: Matrix) -> None:
        self.matrix = self._line = matrix

    def next_line(self, right: float, up: float) -> None:
        self.set(Matrix(1, 0, 0, 1, right, up) @ self._line)

    def move(self, along: float) -> None:
        self.matrix = Matrix(1, 0, 0, 1, along, 0) @ self.matrix


def measure_of(font: pikepdf.Object) -> FontMeasure:
    """Of a font dictionary (9.6 and 9.7)."""
    if font.get("/Subtype") == Name.Type0:
        within = font.DescendantFonts[0]
        widths = dict(_cid_widths(list(within.get("/W", ()))))
        up, down = _reach(within)
        return FontMeasure(2, widths, float(within.get("/DW", 1000)) / 1000, up, down)
    unit = float(font.FontMatrix[0]) if "/FontMatrix" in font else 0.001
    first = int(font.get("/FirstChar", 0))
    widths = {first + at: float(width) * unit for at, width in enumerate(font.get("/Widths", ()))}
    up, down = _reach(font)
    return FontMeasure(1, widths, 1.0 if not widths else 0.0, up, down)


def _reach(font: pikepdf.Object) -> tuple[float, float]:
    facts: Any = font.get("/FontDescriptor", {})
    return float(facts.get("/Ascent", _ASCENT)) / 1000, float(facts.get("/Descent", _DESCENT)) / 1000


def _cid_widths(parts: list[Any]) -> Iterator[tuple[int, float]]:
    """Pairs of code and width of an array W (9.7.4.3)."""
    while parts:
        first, second = int(parts.pop(0)), parts.pop(0)
        if isinstance(second, pikepdf.Array):
            yield from ((first + at, float(width) / 1000) for at, width in enumerate(second))
        else:
            width = float(parts.pop(0)) / 1000
            yield from ((code, width) for code in range(first, min(int(second), _LAST_CODE) + 1))
