"""Films of 5 to 8 minutes, as speech recognisers write them, held against the demo's recipes.

What is planted in them stands in the truth beside each; the films were written without a look at the code.
"""

from itertools import pairwise
from pathlib import Path

import pytest
import webvtt

from sitegen.film.values import FilmReading
from tests.film.film_truth import Film, films_in, score
from tests.film.reading_films import demo, readings_of

FILMS = films_in(Path(__file__).parent / "films")
STEP_WITHIN_S = 5
SHORTEST_S, LONGEST_S = 5 * 60, 8 * 60
ROLLING_OVERLAP_S = 0.5

film_by_film = pytest.mark.parametrize("film", FILMS, ids=lambda film: film.name)


@pytest.fixture(scope="module")
def readings() -> dict[str, FilmReading]:
    return readings_of(FILMS)


@film_by_film
def test_every_planted_mismatch_is_found(film: Film, readings: dict[str, FilmReading]) -> None:
    reading = readings[film.name]
    assert [each.told for each in score(film, reading).missed] == []


@film_by_film
def test_findings_tell_both_figures(film: Film, readings: dict[str, FilmReading]) -> None:
    reading = readings[film.name]
    assert score(film, reading).misquoted == ()


@film_by_film
def test_no_decoy_is_reported(film: Film, readings: dict[str, FilmReading]) -> None:
    reading = readings[film.name]
    assert score(film, reading).decoyed == ()


@film_by_film
def test_nothing_else_is_called_certain(film: Film, readings: dict[str, FilmReading]) -> None:
    reading = readings[film.name]
    assert [each for each in score(film, reading).others if each.certain] == []


@film_by_film
def test_each_step_is_found_where_it_begins(film: Film, readings: dict[str, FilmReading]) -> None:
    told = score(film, readings[film.name])
    assert told.steps_missed == ()
    assert max(told.step_errors_s) <= STEP_WITHIN_S


@film_by_film
def test_the_captions_are_whole_and_in_order(film: Film) -> None:
    read = webvtt.from_srt if film.captions.suffix == ".srt" else webvtt.read
    cues = read(str(film.captions)).captions
    begins = [_moment(cue.start) for cue in cues]
    ends = [_moment(cue.end) for cue in cues]
    assert begins == sorted(begins)
    assert all(begin < end for begin, end in zip(begins, ends, strict=True))
    assert all(after - before > -ROLLING_OVERLAP_S for before, after in zip(ends, begins[1:], strict=False))
    assert SHORTEST_S <= ends[-1] <= film.length_s <= LONGEST_S
    said_at = [each.at_s for each in film.planted if each.at_s is not None]
    for at_s in [*said_at, *(decoy.at_s for decoy in film.decoys)]:
        assert any(begin < at_s + 1 and end > at_s for begin, end in zip(begins, ends, strict=True))


@film_by_film
def test_the_truth_is_of_the_recipe_as_it_stands(film: Film) -> None:
    recipe = next(each for each in demo().recipes if each.slug == film.slug)
    steps = {component.title: len(component.steps) for component in recipe.components}
    assert all(each.step <= steps[each.component] for each in film.steps)
    assert all(early.begins_s < late.begins_s for early, late in pairwise(film.steps))


def _moment(stamp: str) -> float:
    hours, minutes, rest = stamp.split(":")
    return int(hours) * 3600 + int(minutes) * 60 + float(rest)
