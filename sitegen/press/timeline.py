"""The work plan as an SVG picture: one lane a component, work solid, waits hatched, the oven cross-hatched.

It is drawn in shapes and greys that survive a black-and-white printer; a page's style may colour its classes.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from textwrap import wrap

from markupsafe import Markup, escape

from sitegen.sheet.work_values import Timeline, TimelineBar, TimelineLane

INK, SOFT, FAINT = "#222222", "#6b6b6b", "#c8c8c8"


@dataclass(frozen=True)
class Shape:
    """How a picture is laid out, in CSS pixels.

    gutter: room for titles left of the lanes; 0 sets each title above its lane. lane: from one lane to the
    next. letters: of a title that fit on a line. title, figure: sizes of the letters of titles, and of
    numbers, hours and the key. bar: how high the bars are. key_on_top: the key stands above the lanes, where
    that is clear of the lengths of waits that were cut.
    """

    name: str
    width: int
    gutter: int
    lane: int
    letters: int
    title: int
    figure: int
    bar: int = 12
    key_on_top: bool = False

    @property
    def number_needs(self) -> float:
        """Room between two step numbers that can both be read."""
        return 1.35 * self.figure

    @property
    def tick_half(self) -> float:
        """Room that half of the longest hour takes."""
        return 1.9 * self.figure


WIDE = Shape("wide", width=700, gutter=164, lane=34, letters=21, title=13, figure=12)
NARROW = Shape("narrow", width=350, gutter=0, lane=54, letters=40, title=14, figure=12)
CARD = Shape("card", width=590, gutter=128, lane=20, letters=21, title=10, figure=9, bar=8, key_on_top=True)
SHAPES = {shape.name: shape for shape in (WIDE, NARROW, CARD)}
EDGE = 14
KEY = {"work": "hands-on", "wait": "waiting", "oven": "in the oven"}
NOTCH = 1
"""Pixels left free between the work of two steps, so that each is seen as one."""


def timeline_picture(timeline: Timeline, shape: str = "wide", family: str = "sans-serif") -> Markup:
    """The picture for a template.

    shape: 'wide' for large screens, 'narrow' for a phone, 'card' for paper, where it is set larger.
    family: the stack of fonts of its words, as style sheets write it.
    """
    return timeline_svg(timeline, SHAPES[shape], f"timeline-{shape}", family)


def timeline_svg(timeline: Timeline, shape: Shape, name: str, family: str = "sans-serif") -> Markup:
    """The picture. name: makes the ids of its patterns its own, where a page holds several."""
    top = EDGE + (shape.title + 5 if not shape.gutter else 0)
    floor = top + shape.lane * len(timeline.lanes)
    cuts = [share for share, _ in timeline.cuts]
    key = _key(shape, [_across(share, shape) for share in cuts], floor)
    height = (floor if key.is_on_top else key.top + 2) + 2 * shape.figure
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {shape.width} {height}" '
        f'class="timeline {shape.name}{" key-on-top" if key.is_on_top else ""}" role="img" '
        f'font-family="{escape(family)}">',
        f"<title>{escape(timeline.spoken)}</title>",
        _patterns(name),
        *_ticks(timeline, shape, floor),
        *(
            line
            for place, lane in enumerate(timeline.lanes)
            for line in _lane(lane, cuts, shape, top + shape.lane * place, name)
        ),
        *_cuts(timeline, shape, floor),
        *_legend(key, shape, name),
        "</svg>",
    ]
    return Markup("".join(parts))


def _patterns(name: str) -> str:
    """Slanted lines for waiting, crossed ones for the oven."""
    slant = f'<path d="M0 6L6 0" stroke="{SOFT}" stroke-width="1" class="hatch"/>'
    cross = f'<path d="M0 0L6 6M0 6L6 0" stroke="{INK}" stroke-width="1" class="hatch"/>'
    patterns = (
        f'<pattern id="{name}-{kind}" width="6" height="6" patternUnits="userSpaceOnUse">{lines}</pattern>'
        for kind, lines in (("wait", slant), ("oven", cross))
    )
    return f"<defs>{''.join(patterns)}</defs>"


def _across(share: Fraction, shape: Shape) -> float:
    """A share of the time line as pixels from the left."""
    room = shape.width - shape.gutter - 2 * EDGE
    return round(shape.gutter + EDGE + float(share) * room, 1)


def _ticks(timeline: Timeline, shape: Shape, floor: int) -> Iterator[str]:
    for share, label in timeline.ticks:
        x = _across(share, shape)
        yield f'<path d="M{x} {EDGE - 4}V{floor}" stroke="{FAINT}" stroke-width="0.5" class="tick"/>'
        place = min(x, shape.width - shape.tick_half)
        yield _text(place, floor + shape.figure + 3, label, shape.figure, anchor="middle")


def _lane(lane: TimelineLane, cuts: Sequence[Fraction], shape: Shape, top: int, name: str) -> Iterator[str]:
    bar_top = top + shape.figure + 3
    yield from _title(lane.title, shape, top, bar_top)
    last = -shape.number_needs
    for bar in lane.bars:
        yield from _bar(bar, shape, bar_top, name)
        yield from (_break(share, shape, bar_top) for share in cuts if bar.free < share < bar.end)
        x = _across(bar.start, shape)
        if x - last >= shape.number_needs:
            yield _text(x, bar_top - 3, str(bar.step), shape.figure)
            last = x


def _title(title: str, shape: Shape, top: int, bar_top: int) -> Iterator[str]:
    if not shape.gutter:
        yield from (_text(EDGE, top - 4, line, shape.title, weight=600) for line in _lines(title, shape, 1))
        return
    lines = _lines(title, shape, 2)
    first = bar_top + shape.bar - 2 - (shape.title * (len(lines) - 1)) / 2
    for place, line in enumerate(lines):
        yield _text(shape.gutter, first + place * shape.title, line, shape.title, anchor="end", weight=600)


def _lines(title: str, shape: Shape, most: int) -> list[str]:
    """A title in so many lines at most; what does not fit is left to the table."""
    return wrap(title, shape.letters, max_lines=most, placeholder="…")


def _bar(bar: TimelineBar, shape: Shape, top: int, name: str) -> Iterator[str]:
    start, free, end = (_across(share, shape) for share in (bar.start, bar.free, bar.end))
    if end > free:
        kind = "oven" if bar.heat == "oven" else "wait"
        yield _box(free, top, end - free, f"url(#{name}-{kind})", kind, shape.bar)
    if free > start:
        yield _box(start, top, max(free - start - NOTCH, 1.5), INK, "work", shape.bar)


def _box(x: float, y: float, width: float, fill: str, kind: str, height: int) -> str:
    line = "" if kind == "work" else f' stroke="{INK}" stroke-width="0.75"'
    return (
        f'<rect x="{x}" y="{y}" width="{round(width, 1)}" height="{height}" fill="{fill}"{line} '
        f'class="{kind}"/>'
    )


def _break(share: Fraction, shape: Shape, top: int) -> str:
    """A bar torn in two where its wait is cut short."""
    start = f"M{_across(share, shape) - 5} {top + shape.bar + 2}"
    high = shape.bar + 4
    return (
        f'<path d="{start}l5 -{high}h5l-5 {high}z" fill="#ffffff" class="torn"/>'
        f'<path d="{start}l5 -{high}m5 0l-5 {high}" stroke="{INK}" '
        'stroke-width="0.75" fill="none" class="cut"/>'
    )


def _cuts(timeline: Timeline, shape: Shape, floor: int) -> Iterator[str]:
    """Where a long wait is cut: two slanted strokes on the axis, and how long it is."""
    for share, label in timeline.cuts:
        x = _across(share, shape)
        yield f'<path d="M{x - 5} {floor + 4}l4 -8m2 8l4 -8" stroke="{INK}" fill="none" class="cut"/>'
        yield _text(x, EDGE - 5, label, shape.figure, anchor="middle")


@dataclass(frozen=True)
class _Key:
    """Where the key of the picture begins. top: of its words."""

    left: float
    top: int
    is_on_top: bool = False


def _key(shape: Shape, cuts: Sequence[float], floor: int) -> _Key:
    """Above the lanes on the left or on the right, where no cut is near, else below them."""
    left = float(shape.gutter + EDGE)
    below = _Key(left, floor + 2 * shape.figure + 4)
    if not shape.key_on_top:
        return below
    width = sum(_key_step(words, shape) for words in KEY.values())
    places = (_Key(x, 2, is_on_top=True) for x in (left, shape.width - width))
    clear = (key for key in places if all(not key.left - EDGE < cut < key.left + width for cut in cuts))
    return next(clear, below)


def _key_step(words: str, shape: Shape) -> float:
    return 36 + 0.58 * shape.figure * len(words)


def _legend(key: _Key, shape: Shape, name: str) -> Iterator[str]:
    x = key.left
    for kind, words in KEY.items():
        fill = INK if kind == "work" else f"url(#{name}-{kind})"
        yield _box(x, key.top - 2, 18, fill, kind, shape.bar)
        yield _text(x + 23, key.top + 8, words, shape.figure)
        x += _key_step(words, shape)


def _text(x: float, y: float, words: str, size: int, anchor: str = "start", weight: int = 400) -> str:
    return (
        f'<text x="{round(x, 1)}" y="{round(y, 1)}" font-size="{size}" text-anchor="{anchor}" '
        f'font-weight="{weight}" fill="{INK}">{escape(words)}</text>'
    )
