"""The work plan as a picture."""

import re
from fractions import Fraction
from itertools import pairwise
from xml.etree import ElementTree

import pytest

from sitegen.press.timeline import CARD, NARROW, WIDE, Shape, timeline_svg
from sitegen.sheet.work_values import Timeline, TimelineBar, TimelineLane

SVG = "{http://www.w3.org/2000/svg}"
HALF, QUARTER, ONE, NONE = Fraction(1, 2), Fraction(1, 4), Fraction(1), Fraction(0)
LOAF = Timeline(
    lanes=(
        TimelineLane("Overnight starter", (TimelineBar(1, NONE, Fraction(1, 50), HALF),)),
        TimelineLane(
            "Shaping & <baking> of a loaf with a very long name indeed",
            (
                TimelineBar(2, HALF, Fraction(3, 5), Fraction(3, 5)),
                TimelineBar(3, Fraction(3, 5), Fraction(3, 5), ONE, "oven"),
            ),
        ),
    ),
    ticks=((NONE, "0:00"), (HALF, "+14:04"), (ONE, "+20:00")),
    cuts=((QUARTER, "12 h"),),
    spoken="A plan of 3 steps & 2 parts.",
)
SHAPES = pytest.mark.parametrize("shape", [WIDE, NARROW, CARD], ids=lambda shape: shape.name)


def drawn(shape: Shape, timeline: Timeline = LOAF) -> ElementTree.Element:
    """Parsed as XML: a picture that stands alone must be well-formed."""
    return ElementTree.fromstring(timeline_svg(timeline, shape, "one"))


def boxes(picture: ElementTree.Element, kind: str) -> list[tuple[float, float]]:
    """From where to where each bar of a kind goes, without that of the legend."""
    found = [each for each in picture.iter(f"{SVG}rect") if each.get("class") == kind]
    return [
        (float(each.get("x", "")), float(each.get("x", "")) + float(each.get("width", ""))) for each in found
    ][:-1]


@SHAPES
def test_a_picture_stands_alone_with_a_title_and_a_face_to_fall_back_on(shape: Shape) -> None:
    picture = drawn(shape)
    assert picture.tag == f"{SVG}svg"
    assert picture.get("role") == "img"
    assert picture.findtext(f"{SVG}title") == "A plan of 3 steps & 2 parts."
    assert str(picture.get("font-family")).endswith("sans-serif")


@SHAPES
def test_work_is_solid_and_waits_and_bakes_have_patterns_of_their_own(shape: Shape) -> None:
    picture = drawn(shape)
    fills = {
        kind: {each.get("fill") for each in picture.iter(f"{SVG}rect") if each.get("class") == kind}
        for kind in ("work", "wait", "oven")
    }
    assert fills == {"work": {"#222222"}, "wait": {"url(#one-wait)"}, "oven": {"url(#one-oven)"}}
    assert {each.get("id") for each in picture.iter(f"{SVG}pattern")} == {"one-wait", "one-oven"}


@SHAPES
def test_a_colour_is_never_needed_to_read_it(shape: Shape) -> None:
    """Greys only: a black-and-white printer loses nothing."""
    colours = set(re.findall(r"#([0-9a-f]{6})\b", timeline_svg(LOAF, shape, "one")))
    assert colours
    assert all(colour[:2] == colour[2:4] == colour[4:] for colour in colours)


@SHAPES
def test_bars_follow_each_other_without_overlap(shape: Shape) -> None:
    picture = drawn(shape)
    (work, shaping), (wait,), (oven,) = boxes(picture, "work"), boxes(picture, "wait"), boxes(picture, "oven")
    assert work[1] <= wait[0]
    assert wait[1] <= shaping[0]
    assert shaping[1] <= oven[0]
    assert oven[1] <= shape.width


@SHAPES
def test_everything_lies_within_the_picture(shape: Shape) -> None:
    picture = drawn(shape)
    _, _, width, height = (float(each) for each in str(picture.get("viewBox")).split())
    for text in picture.iter(f"{SVG}text"):
        x, y, letters = float(text.get("x", "")), float(text.get("y", "")), len(text.text or "")
        reach = letters * float(text.get("font-size", "")) * 0.6
        left = {"start": x, "middle": x - reach / 2, "end": x - reach}[str(text.get("text-anchor"))]
        assert left >= -1
        assert left + reach <= width + 4
        assert 0 < y <= height


@SHAPES
def test_a_long_title_is_set_in_two_lines_at_most(shape: Shape) -> None:
    bold = [each.text for each in drawn(shape).iter(f"{SVG}text") if each.get("font-weight") == "600"]
    assert bold[0] == "Overnight starter"
    assert 2 <= len(bold) <= 3
    assert str(bold[-1]).endswith("…")


@SHAPES
def test_a_cut_is_told_and_tears_the_bar_that_it_shortens(shape: Shape) -> None:
    picture = drawn(shape)
    assert "12 h" in [each.text for each in picture.iter(f"{SVG}text")]
    torn = [each for each in picture.iter(f"{SVG}path") if each.get("class") == "torn"]
    assert len(torn) == 1


def test_step_numbers_that_would_touch_are_left_to_the_table() -> None:
    steps = tuple(
        TimelineBar(step, Fraction(step, 200), Fraction(step + 1, 200), Fraction(step + 1, 200))
        for step in range(200)
    )
    picture = drawn(WIDE, Timeline((TimelineLane("Part", steps),), (), (), "spoken"))
    places = sorted(
        float(each.get("x", "")) for each in picture.iter(f"{SVG}text") if (each.text or "").isdigit()
    )
    assert all(later - earlier >= 12 for earlier, later in pairwise(places))
    assert len(places) > 20


def test_a_step_of_no_width_can_be_seen() -> None:
    short = TimelineLane("Part", (TimelineBar(1, NONE, Fraction(1, 5000), ONE),))
    start, end = boxes(drawn(NARROW, Timeline((short,), (), (), "spoken")), "work")[0]
    assert end - start >= 1.5
