"""The film with its chapters, as a sheet tells it."""

from dataclasses import replace
from datetime import date

import pytest

from sitegen.kitchen.filmed import FilmReading, StepMoment, moment_text
from sitegen.kitchen.recipe import Chapter, Video
from sitegen.sheet.values import SheetMoment
from sitegen.sheet.video_words import step_moment, video_of
from tests.sheet.pantry import setting

FILM = "https://video.example/bay"
CHAPTERS = (Chapter(0, "The colour of caramel"), Chapter(85, "To finish"))


@pytest.mark.parametrize(
    ("seconds", "moment"), [(0, "0:00"), (9, "0:09"), (85, "1:25"), (725, "12:05"), (3750, "1:02:30")]
)
def test_a_moment_reads_as_players_show_it(seconds: int, moment: str) -> None:
    assert moment_text(seconds) == moment


def test_a_chapter_leads_to_its_own_second() -> None:
    """W3C Media Fragments URI 1.0, 4.2.1: '#t=10' is an interval from the tenth second to the end."""
    film = video_of(Video(FILM, published=date(2026, 7, 11), chapters=CHAPTERS), setting())
    assert film is not None
    assert film.published == "2026-07-11"
    assert [each.address for each in film.chapters] == [f"{FILM}#t=0", f"{FILM}#t=85"]


def test_an_address_with_a_fragment_of_its_own_takes_no_moment() -> None:
    film = video_of(Video("https://video.example/#/bay", chapters=CHAPTERS), setting())
    assert film is not None
    assert [each.address for each in film.chapters] == ["", ""]


def test_titles_are_spelled_as_the_region_spells() -> None:
    film = video_of(Video(FILM, chapters=CHAPTERS), setting("us-cups"))
    assert film is not None
    assert film.chapters[0].title == "The color of caramel"


def filmed(*seconds: int) -> Video:
    """A film in which the sponge, then the custard is shown; `seconds` of their first steps."""
    titles = ("Sponge", "Custard", "Glaze", "Finish")
    moments = tuple(StepMoment(title, 1, second) for title, second in zip(titles, seconds, strict=False))
    return Video(FILM, film=FilmReading(moments, steps=len(moments), words=500))


@pytest.mark.parametrize(
    ("seconds", "chapters"),
    [
        ((40, 130, 260), ["0:00 What we make", "0:40 Sponge", "2:10 Custard", "4:20 Glaze"]),
        ((6, 130, 260), ["0:00 Sponge", "2:10 Custard", "4:20 Glaze"]),
        ((40, 130, 137, 260), ["0:00 What we make", "0:40 Sponge", "2:10 Custard", "4:20 Finish"]),
        ((130, 40, 260), ["0:00 What we make", "0:40 Custard", "2:10 Sponge", "4:20 Glaze"]),
        ((40,), []),
    ],
)
def test_without_chapters_they_follow_from_the_film(seconds: tuple[int, ...], chapters: list[str]) -> None:
    film = video_of(filmed(*seconds), setting())
    assert film is not None
    assert [f"{each.moment} {each.title}" for each in film.chapters] == chapters


def test_chapters_that_are_written_stand() -> None:
    film = video_of(replace(filmed(40, 130, 260), chapters=CHAPTERS), setting())
    assert film is not None
    assert [each.begins_s for each in film.chapters] == [0, 85]


def test_a_step_knows_its_moment_and_none_of_a_film_that_does_not_follow_the_recipe() -> None:
    video = filmed(40, 130, 260)
    assert step_moment(video, "Custard", 1) == SheetMoment("2:10", 130, f"{FILM}#t=130")
    assert step_moment(video, "Custard", 2) is None
    assert step_moment(None, "Custard", 1) is None
    unlike = replace(video, film=replace(video.film, steps=9))
    assert step_moment(unlike, "Custard", 1) is None
    told = video_of(unlike, setting())
    assert told is not None
    assert told.chapters == ()


def test_no_film_is_none() -> None:
    assert video_of(None, setting()) is None
