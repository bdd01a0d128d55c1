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
NUMBER_NEEDS = 12
"""Pixels between two step numbers that can both be read."""


@dataclass(frozen=True)
class Shape:
    """How a picture is laid out, in CSS pixels.

    gutter: room for titles left of the lanes; 0 sets each title above its lane. lane: from one lane to the
    next. letters: of a title that fit on a line.
    """

    name: str
    width: int
    gutter: int
    lane: int
    letters: int


WIDE = Shape("wide", width=700, gutter=150, lane=30, letters=22)
NARROW = Shape("narrow", width=340, gutter=0, lane=48, letters=48)
BAR, NUMBER, TITLE, TICK, EDGE = 12, 9, 11, 9, 14
TICK_HALF = 17
"""Pixels that half of the longest tick takes."""
NOTCH = 1
"""Pixels left free between the work of two steps, so that each is seen as one."""


def timeline_picture(timeline: Timeline, shape: str = "wide", family: str = "sans-serif") -> Markup:
    """The picture for a template. shape: 'wide' for paper and large screens, 'narrow' for a phone.

    family: the stack of fonts of its words, as style sheets write it.
    """
    return timeline_svg(timeline, NARROW if shape == "narrow" else WIDE, f"timeline-{shape}", family)


def timeline_svg(timeline: Timeline, shape: Shape, name: str, family: str = "sans-serif") -> Markup:
    """The picture. name: makes the ids of its patterns its own, where a page holds several."""
    top = EDGE + (TITLE + 4 if not shape.gutter else 0)
    floor = top + shape.lane * len(timeline.lanes)
    height = floor + 22 + 20
    cuts = [share for share, _ in timeline.cuts]
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {shape.width} {height}" '
        f'class="timeline {shape.name}" role="img" font-family="{escape(family)}">',
        f"<title>{escape(timeline.spoken)}</title>",
        _patterns(name),
        *_ticks(timeline, shape, floor),
        *(
            line
            for place, lane in enumerate(timeline.lanes)
            for line in _lane(lane, cuts, shape, top + shape.lane * place, name)
        ),
        *_cuts(timeline, shape, floor),
        *_legend(shape, floor + 22, name),
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
        yield _text(min(x, shape.width - TICK_HALF), floor + TICK + 3, label, TICK, anchor="middle")


def _lane(lane: TimelineLane, cuts: Sequence[Fraction], shape: Shape, top: int, name: str) -> Iterator[str]:
    bar_top = top + NUMBER + 3
    yield from _title(lane.title, shape, top, bar_top)
    last = float(-NUMBER_NEEDS)
    for bar in lane.bars:
        yield from _bar(bar, shape, bar_top, name)
        yield from (_break(share, shape, bar_top) for share in cuts if bar.free < share < bar.end)
        x = _across(bar.start, shape)
        if x - last >= NUMBER_NEEDS:
            yield _text(x, bar_top - 3, str(bar.step), NUMBER)
            last = x


def _title(title: str, shape: Shape, top: int, bar_top: int) -> Iterator[str]:
    if not shape.gutter:
        yield from (_text(EDGE, top - 5, line, TITLE, weight=600) for line in _lines(title, shape, 1))
        return
    lines = _lines(title, shape, 2)
    first = bar_top + BAR - 2 - (TITLE * (len(lines) - 1)) / 2
    for place, line in enumerate(lines):
        yield _text(shape.gutter, first + place * TITLE, line, TITLE, anchor="end", weight=600)


def _lines(title: str, shape: Shape, most: int) -> list[str]:
    """A title in so many lines at most; what does not fit is left to the table."""
    return wrap(title, shape.letters, max_lines=most, placeholder="…")


def _bar(bar: TimelineBar, shape: Shape, top: int, name: str) -> Iterator[str]:
    start, free, end = (_across(share, shape) for share in (bar.start, bar.free, bar.end))
    if end > free:
        kind = "oven" if bar.heat == "oven" else "wait"
        yield _box(free, top, end - free, f"url(#{name}-{kind})", kind)
    if free > start:
        yield _box(start, top, max(free - start - NOTCH, 1.5), INK, "work")


def _box(x: float, y: float, width: float, fill: str, kind: str) -> str:
    line = "" if kind == "work" else f' stroke="{INK}" stroke-width="0.75"'
    return (
        f'<rect x="{x}" y="{y}" width="{round(width, 1)}" height="{BAR}" fill="{fill}"{line} class="{kind}"/>'
    )


def _break(share: Fraction, shape: Shape, top: int) -> str:
    """A bar torn in two where its wait is cut short."""
    x = _across(share, shape)
    return (
        f'<path d="M{x - 5} {top + BAR + 2}l5 -{BAR + 4}h5l-5 {BAR + 4}z" fill="#ffffff" class="torn"/>'
        f'<path d="M{x - 5} {top + BAR + 2}l5 -{BAR + 4}m5 0l-5 {BAR + 4}" stroke="{INK}" '
        'stroke-width="0.75" fill="none" class="cut"/>'
    )


def _cuts(timeline: Timeline, shape: Shape, floor: int) -> Iterator[str]:
    """Where a long wait is cut: two slanted strokes on the axis, and how long it is."""
    for share, label in timeline.cuts:
        x = _across(share, shape)
        yield f'<path d="M{x - 5} {floor + 4}l4 -8m2 8l4 -8" stroke="{INK}" fill="none" class="cut"/>'
        yield _text(x, EDGE - 5, label, TICK, anchor="middle")


def _legend(shape: Shape, top: int, name: str) -> Iterator[str]:
    x = float(shape.gutter + EDGE)
    for kind, fill, words in (
        ("work", INK, "hands-on"),
        ("wait", f"url(#{name}-wait)", "waiting"),
        ("oven", f"url(#{name}-oven)", "in the oven"),
    ):
        yield _box(x, top - 2, 18, fill, kind)
        yield _text(x + 23, top + 8, words, TICK)
        x += 36 + 5.2 * len(words)


def _text(x: float, y: float, words: str, size: int, anchor: str = "start", weight: int = 400) -> str:
    return (
        f'<text x="{round(x, 1)}" y="{round(y, 1)}" font-size="{size}" text-anchor="{anchor}" '
        f'font-weight="{weight}" fill="{INK}">{escape(words)}</text>'
    )
