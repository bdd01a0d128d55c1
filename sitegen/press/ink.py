"""Where a finished page has ink: the box round all that its content stream draws (ISO 32000-1, 8 and 9).

The box may be too wide, never too narrow: a path counts as its box, a clip as the box of its path, a letter
as its face's full height. A fill that covers the whole page is the paper's tone and counts as no ink.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any, TypeAlias

import pikepdf
from pikepdf import Matrix, Name, Rectangle

from sitegen.press.ink_text import FontMeasure, TextPlace, TextState, measure_of

_DEEPEST = 12
"""Forms within forms: more than any card has, and a bound for those that hold themselves."""
_SLACK = 1.0
"""In points: how much a fill may miss of the page and still be its tone."""
_UNIT = Rectangle(0, 0, 1, 1)
_NOWHERE = Rectangle(0, 0, 0, 0)
_AS_IT_IS = (1, 0, 0, 1, 0, 0)

Operands: TypeAlias = Sequence[Any]


@dataclass(frozen=True)
class Ink:
    """box: round all ink, in points of the page's own space; None on an empty page.

    open_states: how many graphics states the content saves and never restores.
    """

    box: Rectangle | None
    open_states: int


def ink_of(page: pikepdf.Page) -> Ink:
    """All ink of a page within its trim box. Raises pikepdf.PdfError where the content cannot be read."""
    paper = _rectangle(page.trimbox)
    content = _Content(paper, page.resources, _State(Matrix(), paper), 0)
    content.follow(page.obj)
    box = content.box
    for note in page.obj.get("/Annots", ()):
        if "/AP" in note and "/Rect" in note:
            box = _around(box, _common(_rectangle(note.Rect), paper))
    return Ink(box, len(content.saved))


@dataclass(frozen=True)
class _State:
    """What q and Q keep. clip: nothing outside it shows."""

    matrix: Matrix
    clip: Rectangle
    line_width: float = 1.0
    text: TextState = TextState()


class _Content:
    """One content stream, followed from its first operator to its last. box: round what it has drawn."""

    def __init__(
        self, paper: Rectangle, resources: "pikepdf.Object | None", state: _State, depth: int
    ) -> None:
        """depth: of forms round this one."""
        self._paper = paper
        self._resources = resources
        self._state = state
        self._depth = depth
        self._path: Rectangle | None = None
        self._clips = False
        self._place = TextPlace()
        self._fonts: dict[str, FontMeasure | None] = {}
        self.saved: list[_State] = []
        self.box: Rectangle | None = None

    def follow(self, stream: pikepdf.Object) -> None:
        for instruction in pikepdf.parse_content_stream(stream):
            step = _STEPS.get(str(instruction.operator))
            if step is not None:
                step(self, list(instruction.operands))

    def save(self, _: Operands) -> None:
        self.saved.append(self._state)

    def restore(self, _: Operands) -> None:
        if self.saved:
            self._state = self.saved.pop()

    def transform(self, operands: Operands) -> None:
        self._state = replace(self._state, matrix=_matrix(operands) @ self._state.matrix)

    def line_width(self, operands: Operands) -> None:
        self._state = replace(self._state, line_width=float(operands[0]))

    def add_points(self, operands: Operands) -> None:
        numbers = [float(one) for one in operands]
        for right, up in zip(numbers[::2], numbers[1::2], strict=False):
            self._path = _around(self._path, Rectangle(right, up, right, up))

    def add_box(self, operands: Operands) -> None:
        left, bottom, width, height = (float(one) for one in operands)
        self.add_points((left, bottom, left + width, bottom + height))

    def clip(self, _: Operands) -> None:
        self._clips = True

    def stroke(self, operands: Operands) -> None:
        if self._path is not None:
            path, half = self._path, self._state.line_width / 2
            self._take(Rectangle(path.llx - half, path.lly - half, path.urx + half, path.ury + half))
        self.end_path(operands)

    def fill(self, operands: Operands) -> None:
        if self._path is not None:
            self._take_tone(self._state.matrix.transform(self._path))
        self.end_path(operands)

    def end_path(self, _: Operands) -> None:
        """A clip holds from the end of its path (8.5.4)."""
        if self._clips and self._path is not None:
            self._clip_to(self._path)
        self._path, self._clips = None, False

    def shade(self, _: Operands) -> None:
        self._take_tone(self._state.clip)

    def inline_image(self, _: Operands) -> None:
        self._take(_UNIT)

    def draw_object(self, operands: Operands) -> None:
        drawn = self._resource(Name.XObject, operands[0])
        if drawn is None or self._depth == _DEEPEST:
            return
        if drawn.get("/Subtype") != Name.Form:
            self._take(_UNIT)
            return
        matrix = _matrix(list(drawn.get("/Matrix", _AS_IT_IS))) @ self._state.matrix
        clip = _common(matrix.transform(_rectangle(drawn.BBox)), self._state.clip) or _NOWHERE
        state = replace(self._state, matrix=matrix, clip=clip)
        form = _Content(self._paper, drawn.get("/Resources", self._resources), state, self._depth + 1)
        form.follow(drawn)
        self.box = _around(self.box, form.box)

    def begin_text(self, _: Operands) -> None:
        self._place = TextPlace()

    def font(self, operands: Operands) -> None:
        name = str(operands[0])
        if name not in self._fonts:
            font = self._resource(Name.Font, operands[0])
            self._fonts[name] = None if font is None else measure_of(font)
        self._set_text(font=self._fonts[name], size=float(operands[1]))

    def place_text(self, operands: Operands) -> None:
        self._place.set(_matrix(operands))

    def next_line(self, operands: Operands) -> None:
        self._place.next_line(float(operands[0]), float(operands[1]))

    def next_line_leading(self, operands: Operands) -> None:
        self._set_text(leading=-float(operands[1]))
        self.next_line(operands)

    def next_line_as_led(self, _: Operands) -> None:
        self._place.next_line(0, -self._state.text.leading)

    def show(self, operands: Operands) -> None:
        """Tj and TJ: the last operand is a string, or an array of strings and moves."""
        shown = operands[-1]
        moved, box = self._state.text.shown(list(shown) if isinstance(shown, pikepdf.Array) else [shown])
        if box is not None:
            seen = (self._place.matrix @ self._state.matrix).transform(box)
            self.box = _around(self.box, _common(seen, self._state.clip))
        self._place.move(moved)

    def show_on_next_line(self, operands: Operands) -> None:
        """' and ": the latter sets the spaces first."""
        if len(operands) == 3:
            self._set_text(between_words=float(operands[0]), between_letters=float(operands[1]))
        self.next_line_as_led(operands)
        self.show(operands)

    def letter_space(self, operands: Operands) -> None:
        self._set_text(between_letters=float(operands[0]))

    def word_space(self, operands: Operands) -> None:
        self._set_text(between_words=float(operands[0]))

    def stretch(self, operands: Operands) -> None:
        self._set_text(stretch=float(operands[0]) / 100)

    def leading(self, operands: Operands) -> None:
        self._set_text(leading=float(operands[0]))

    def rise(self, operands: Operands) -> None:
        self._set_text(rise=float(operands[0]))

    def _set_text(self, **settings: Any) -> None:
        self._state = replace(self._state, text=replace(self._state.text, **settings))

    def _resource(self, kind: Name, name: pikepdf.Object) -> Any:
        """None where the page has no such thing; a reader of PDF leaves it out then."""
        named = None if self._resources is None else self._resources.get(kind)
        return None if named is None else named.get(str(name))

    def _clip_to(self, path: Rectangle) -> None:
        seen = _common(self._state.matrix.transform(path), self._state.clip)
        self._state = replace(self._state, clip=seen or _NOWHERE)

    def _take(self, drawn: Rectangle) -> None:
        """Something is drawn, in the space of now, as far as the clip lets it show."""
        self.box = _around(self.box, _common(self._state.matrix.transform(drawn), self._state.clip))

    def _take_tone(self, drawn: Rectangle) -> None:
        """A fill is drawn, in the page's space."""
        seen = _common(drawn, self._state.clip)
        if seen is not None and not _covers(seen, self._paper):
            self.box = _around(self.box, seen)


_STEPS: Mapping[str, Callable[[_Content, Operands], None]] = {
    "q": _Content.save,
    "Q": _Content.restore,
    "cm": _Content.transform,
    "w": _Content.line_width,
    **dict.fromkeys(("m", "l", "c", "v", "y"), _Content.add_points),
    "re": _Content.add_box,
    **dict.fromkeys(("W", "W*"), _Content.clip),
    **dict.fromkeys(("S", "s", "B", "B*", "b", "b*"), _Content.stroke),
    **dict.fromkeys(("f", "F", "f*"), _Content.fill),
    "n": _Content.end_path,
    "sh": _Content.shade,
    "INLINE IMAGE": _Content.inline_image,
    "Do": _Content.draw_object,
    "BT": _Content.begin_text,
    "Tf": _Content.font,
    "Tm": _Content.place_text,
    "Td": _Content.next_line,
    "TD": _Content.next_line_leading,
    "T*": _Content.next_line_as_led,
    "Tj": _Content.show,
    "TJ": _Content.show,
    **dict.fromkeys(("'", '"'), _Content.show_on_next_line),
    "Tc": _Content.letter_space,
    "Tw": _Content.word_space,
    "Tz": _Content.stretch,
    "TL": _Content.leading,
    "Ts": _Content.rise,
}
"""Operator -> what it does to what is drawn. All others change neither place nor size."""


def _matrix(numbers: Operands) -> Matrix:
    a, b, c, d, e, f = (float(one) for one in numbers)
    return Matrix(a, b, c, d, e, f)


def _rectangle(numbers: Any) -> Rectangle:
    """Of an array, its corners in any order (7.9.5)."""
    one, two, three, four = (float(number) for number in numbers)
    return Rectangle(min(one, three), min(two, four), max(one, three), max(two, four))


def _common(one: Rectangle, other: Rectangle) -> Rectangle | None:
    """What both have in common; None where they have nothing."""
    left, bottom = max(one.llx, other.llx), max(one.lly, other.lly)
    right, top = min(one.urx, other.urx), min(one.ury, other.ury)
    return Rectangle(left, bottom, right, top) if left <= right and bottom <= top else None


def _around(one: Rectangle | None, other: Rectangle | None) -> Rectangle | None:
    if one is None or other is None:
        return one or other
    return Rectangle(
        min(one.llx, other.llx), min(one.lly, other.lly), max(one.urx, other.urx), max(one.ury, other.ury)
    )


def _covers(one: Rectangle, other: Rectangle) -> bool:
    return (
        one.llx <= other.llx + _SLACK
        and one.lly <= other.lly + _SLACK
        and one.urx >= other.urx - _SLACK
        and one.ury >= other.ury - _SLACK
    )
