"""Reads films with the project's own code: captions into cues, cues held against the recipe."""

from collections.abc import Iterable
from functools import cache

from sitegen.film.values import FilmReading
from sitegen.source.captions import cues_of
from sitegen.source.films import FilmReader
from sitegen.source.library import read_content
from sitegen.source.school import Content
from tests.film.film_truth import PROJECT, Film


def readings_of(films: Iterable[Film]) -> dict[str, FilmReading]:
    """Each film, by name, held against its recipe of the demo."""
    content = demo()
    assert content.school is not None
    titles = [recipe.title for recipe in content.recipes]
    reader = FilmReader(content.recipes, titles, content.tables, content.school.written_in)
    recipes = {recipe.slug: recipe for recipe in content.recipes}
    return {
        film.name: reader.reading(recipes[film.slug], cues_of(film.captions.read_text(encoding="utf-8")))
        for film in films
    }


@cache
def demo() -> Content:
    """The demo's content, read once."""
    return read_content(PROJECT)
