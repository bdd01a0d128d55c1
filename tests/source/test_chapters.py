"""Chapters of a film: read one by one, and held together."""

import pytest

from sitegen.faults import Place
from sitegen.kitchen.recipe import Chapter, Component, Makes, Recipe, Video
from sitegen.source.chapters import BAD_MOMENT, NO_TITLE, read_chapter
from sitegen.source.checks.chapters import LEAST_SECONDS, MOST_BYTES, chapters_hold
from sitegen.source.misread import Misread
from sitegen.source.reader import parse_document
from sitegen.source.tables import read_tables
from tests.sheet.pantry import Fraction

AT = Place("recipe.yaml", 3, 5, 10)


@pytest.mark.parametrize(
    ("text", "seconds", "title"),
    [
        ("0:00 What we make", 0, "What we make"),
        ("1:25 The sponge", 85, "The sponge"),
        ("75:10 Late", 4510, "Late"),
        ("1:02:30  To\n finish", 3750, "To finish"),
        ("00:01:05 Padded", 65, "Padded"),
    ],
)
def test_a_chapter_is_its_moment_and_its_title(text: str, seconds: int, title: str) -> None:
    assert read_chapter(text, AT) == Chapter(seconds, title)


@pytest.mark.parametrize(
    "text", ["85 The sponge", "1:60 Late", "1:5 x", "1.25 x", "-1:25 x", "١:٢٥ x", "The end"]
)
def test_what_no_player_shows_is_no_moment(text: str) -> None:
    with pytest.raises(Misread) as problem:
        read_chapter(text, AT)
    assert problem.value.code is BAD_MOMENT
    assert text[problem.value.start : problem.value.end] == text.split()[0]


def test_a_moment_alone_has_no_title() -> None:
    with pytest.raises(Misread) as problem:
        read_chapter("1:25", AT)
    assert problem.value.code is NO_TITLE


def test_a_bare_moment_stays_text_where_yaml_1_1_counts_in_sixties() -> None:
    """YAML 1.1, the type `int`: 1:25 is 85, and 190:20:30 is 685230. https://yaml.org/type/int.html."""
    document, faults = parse_document("chapters:\n  - 1:25\n  - 190:20:30\n", "recipe.yaml")
    assert document is not None
    assert faults == ()
    assert document.value(("chapters",)) == ["1:25", "190:20:30"]


def told(*moments: int, title: str = "The sponge") -> list[str]:
    chapters = tuple(Chapter(second, title) for second in moments)
    recipe = Recipe(
        "bay",
        "Bay",
        "A.",
        Makes(Fraction(1), "cake"),
        (Component("A", (), ()),),
        video=Video("", chapters=chapters),
    )
    return [fault.code for fault in chapters_hold(recipe, read_tables()[0])]


@pytest.mark.parametrize(
    ("moments", "codes"),
    [
        ((), []),
        ((0, 60, 120), []),
        ((0, 60, 60 + LEAST_SECONDS), []),
        ((5, 60, 120), ["chapters-not-from-start"]),
        ((0, 60, 60), ["chapters-not-rising"]),
        ((0, 90, 60), ["chapters-not-rising"]),
        ((0, 60, 59 + LEAST_SECONDS), ["chapter-short"]),
        ((0, 60), ["chapters-few"]),
    ],
)
def test_chapters_rise_from_the_start_and_are_long_enough(moments: tuple[int, ...], codes: list[str]) -> None:
    assert told(*moments) == codes


def test_chapters_leave_room_for_the_ingredients() -> None:
    most = MOST_BYTES // 100
    assert told(*range(0, most * 60, 60), title="x" * 90) == []
    assert told(*range(0, most * 60, 60), title="ü" * 60) == ["chapters-too-long"]
