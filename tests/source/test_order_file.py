"""Order files: what is read, and what is refused at its word."""

from datetime import time
from fractions import Fraction
from functools import cache
from pathlib import Path

import pytest

from sitegen.faults import Fault
from sitegen.kitchen.recipe import BatchKind
from sitegen.source.day_hours import DayHour
from sitegen.source.library import read_content
from sitegen.source.order_file import order_from
from sitegen.source.orders import Order
from sitegen.source.reader import parse_document
from sitegen.source.school import Content

SAMPLE = Path(__file__).parent / "sample_school"
BAY = "blackcurrant-and-bay-cupcakes"


@cache
def school() -> Content:
    return read_content(SAMPLE)


def read(text: str) -> tuple[Order | None, tuple[Fault, ...]]:
    document, faults = parse_document(text, "content/orders/a.yaml")
    assert document is not None
    order, more = order_from(document, school().recipes, school().tables)
    return order, (*faults, *more)


def order(text: str) -> Order:
    found, faults = read(text)
    assert faults == ()
    assert found is not None
    return found


def test_an_order_names_recipes_by_title_or_folder_whatever_the_case() -> None:
    found = order(f"title: A\nmake:\n  {BAY}: 48 cupcakes\n  base BUTTERCREAM: 1 kg\n")
    assert [line.recipe.title for line in found.lines] == [
        "Blackcurrant and bay cupcakes",
        "Base buttercream",
    ]
    assert [line.ask.makes for line in found.lines] == [48, 1000]


def test_all_else_may_be_left_out() -> None:
    found = order(f"title: A\nmake: {{{BAY}: double}}\n")
    assert (found.ready_by, found.cooks, found.oven_loads, found.rest) == (None, 1, 1, None)


def test_the_day_the_hands_the_oven_and_the_night() -> None:
    found = order(
        "title: A\nready-by: Saturday 09:00\ncooks: 2\noven-loads: 3\nrest: 22:00-07:00\n"
        f"make: {{{BAY}: double}}\n"
    )
    assert found.ready_by == DayHour(time(9), weekday=5)
    assert (found.cooks, found.oven_loads, found.rest) == (2, 3, (time(22), time(7)))


@pytest.mark.parametrize(
    ("words", "kind", "figure"),
    [
        ("48 cupcakes", BatchKind.MAKES, Fraction(48)),
        ("48", BatchKind.MAKES, Fraction(48)),
        ("double", BatchKind.TIMES, Fraction(2)),
        ("times 3/2", BatchKind.TIMES, Fraction(3, 2)),
    ],
)
def test_amounts_are_written_as_batches_are(words: str, kind: BatchKind, figure: Fraction) -> None:
    (line,) = order(f"title: A\nmake: {{{BAY}: {words}}}\n").lines
    assert line.ask.kind is kind
    assert figure in (line.ask.makes, line.ask.times)


def test_a_tin_may_be_written_with_for() -> None:
    (line,) = order(f"title: A\nmake:\n  {BAY}: for two muffin 12\n").lines
    assert line.ask.tin is not None
    assert (line.ask.tin.holes, line.ask.tin.number) == (12, 2)


def test_an_order_of_the_school_is_among_its_content() -> None:
    (found,) = school().orders
    assert found.title == "Saturday"


@pytest.mark.parametrize(
    ("text", "code", "marked"),
    [
        ("title: A\nmake: {bay-cupcakes: 24}\n", "unknown-recipe", "bay-cupcakes"),
        (f"title: A\nmake:\n  {BAY}: 24 loaves\n", "batch", "24 loaves"),
        (f"title: A\nmake:\n  {BAY}: a few\n", "batch", "a few"),
        (f"title: A\nmake:\n  {BAY}: 1 kg\n", "batch", "1 kg"),
        ("title: A\nmake:\n", "empty-value", "make"),
        ("title: A\nmake: {}\n", "nothing-in-it", "{}"),
        ("title: A\n", "missing-key", "t"),
        (f"title: A\nmake:\n  {BAY}: 12\n  Blackcurrant and bay cupcakes: 12\n", "ordered-twice", None),
        (f"title: A\nmake:\n  {BAY}: 12\n  {BAY}: 24\n", "key-twice", BAY),
        (f"title: A\nready-by: 9 am\nmake: {{{BAY}: 12}}\n", "bad-hour", "9 am"),
        (f"title: A\nrest: never\nmake: {{{BAY}: 12}}\n", "bad-rest", "never"),
        (f"title: A\ncooks: 0\nmake: {{{BAY}: 12}}\n", "bad-number-of-hands", "0"),
        (f"title: A\noven-loads: 2.5\nmake: {{{BAY}: 12}}\n", "bad-number-of-hands", "2.5"),
        (f"title: A\nready: Saturday 09:00\nmake: {{{BAY}: 12}}\n", "unknown-key", "ready"),
    ],
)
def test_a_mistake_is_marked_at_its_word(text: str, code: str, marked: str | None) -> None:
    found, (fault, *_) = read(text)
    assert found is None or code == "key-twice"
    assert fault.code == code
    assert fault.way_out
    shown = text.split("\n")[fault.place.line - 1][fault.place.column - 1 :][: fault.place.length]
    assert shown == (marked or "Blackcurrant and bay cupcakes")


def test_every_mistake_comes_in_one_run() -> None:
    text = "title: A\nready-by: soon\ncooks: x\nmake:\n  nothing: 12\n  Base buttercream: a bucket\n"
    assert [fault.code for fault in read(text)[1]] == [
        "unknown-recipe",
        "batch",
        "bad-hour",
        "bad-number-of-hands",
    ]


def test_an_unknown_recipe_is_told_the_near_ones_else_all_that_there_are() -> None:
    (near,) = read("title: A\nmake: {bay cupcakes: 24}\n")[1]
    assert near.way_out == f"did you mean '{BAY}'?"
    (far,) = read("title: A\nmake: {xyz: 24}\n")[1]
    assert far.way_out == f"there are base-buttercream, {BAY}"


def test_a_number_alone_that_is_no_batch_is_shown_as_it_was_written() -> None:
    (fault,) = read(f"title: A\nmake: {{{BAY}: 12-24}}\n")[1]
    assert "'12-24'" in fault.sentence
