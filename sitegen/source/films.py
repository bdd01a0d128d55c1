"""The films of recipes: their captions read, and held against the recipe with all that it draws on."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from pathlib import Path

from sitegen.faults import Fault
from sitegen.film.reading import FilmTables, read_film
from sitegen.film.values import Cue
from sitegen.kitchen.declared import tables_of, with_bases
from sitegen.kitchen.filmed import FilmReading
from sitegen.kitchen.recipe import Recipe
from sitegen.kitchen.tables import Tables
from sitegen.source.captions import read_captions
from sitegen.source.spoken_words import spoken_words

USUAL_EDITION = "british-metric"
"""Where the school's file cannot be read."""


class FilmReader:
    """Reads films against recipes that were read before.

    recipes: read, with all that they draw on. titles: of all recipes of the school. written_in: key of the
    edition that the recipes are written in, '' unknown.
    """

    def __init__(
        self, recipes: Iterable[Recipe], titles: Sequence[str], tables: Tables, written_in: str
    ) -> None:
        self._bases = {recipe.title: recipe for recipe in recipes}
        self._tables = tables
        self._titles = tuple(titles)
        self._written = tables.editions.get(written_in) or tables.editions[USUAL_EDITION]

    def reading(self, recipe: Recipe, cues: Sequence[Cue]) -> FilmReading:
        """What the cues of a film tell of a recipe."""
        own = tables_of(recipe, self._bases, self._tables)
        bases = [each for each in with_bases(recipe, self._bases) if each is not recipe]
        return read_film(recipe, bases, cues, FilmTables(own, self._written, spoken_words(), self._titles))


def with_films(
    recipes: Sequence[Recipe], titles: Sequence[str], tables: Tables, written_in: str, root: Path
) -> tuple[tuple[Recipe, ...], tuple[Fault, ...]]:
    """The recipes with what their films tell, and what is wrong with captions, as advice.

    root: the folder that holds `content/`. The other arguments are those of `FilmReader`.
    """
    reader = FilmReader(recipes, titles, tables, written_in)
    read = [_with_film(recipe, reader, root) for recipe in recipes]
    return tuple(recipe for recipe, _ in read), tuple(fault for _, faults in read for fault in faults)


def _with_film(recipe: Recipe, reader: FilmReader, root: Path) -> tuple[Recipe, tuple[Fault, ...]]:
    video = recipe.video
    if video is None or not video.captions:
        return recipe, ()
    path = root / video.captions
    cues, faults = read_captions(path, video.captions, path.parent, video.captions_at)
    if not cues:
        return recipe, faults
    return replace(recipe, video=replace(video, film=reader.reading(recipe, cues))), faults
