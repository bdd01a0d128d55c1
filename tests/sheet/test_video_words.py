"""The film with its chapters, as a sheet tells it."""

from datetime import date

import pytest

from sitegen.kitchen.recipe import Chapter, Video
from sitegen.sheet.video_words import moment_text, video_of
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


def test_no_film_is_none() -> None:
    assert video_of(None, setting()) is None
