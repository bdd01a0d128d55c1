"""One recipe's film as it is asked for at a terminal: the captions beside it, or another file of captions."""

from dataclasses import dataclass, replace
from pathlib import Path

from sitegen.faults import Fault, Place
from sitegen.kitchen.filmed import FilmReading, Finding
from sitegen.kitchen.recipe import Recipe, Video
from sitegen.release.asking import AtFault, NotAsked, recipe_named, school_without_errors
from sitegen.source.captions import read_captions
from sitegen.source.checks.film import open_findings
from sitegen.source.films import FilmReader
from sitegen.source.library import read_content


@dataclass(frozen=True)
class Filmed:
    """A recipe with what its film tells. open: the findings that no entry of the recipe settles."""

    recipe: Recipe
    film: FilmReading
    open: tuple[Finding, ...]


def filmed(root: Path, name: str, captions: Path | None) -> Filmed:
    """What a film tells of a recipe. name: its slug or title.

    captions: a file, None for the one that the recipe names. Raises NotAsked where there is none, and AtFault
    where the recipe or the captions cannot be read.
    """
    content = read_content(root)
    recipe = recipe_named(content, name)
    school = school_without_errors(content, recipe)
    video = recipe.video
    if captions is not None:
        titles = [heading.title for heading in content.headings]
        reader = FilmReader(content.recipes, titles, content.tables, school.written_in)
        film = _film(captions, str(captions), Place(str(captions)), reader, recipe)
        video = replace(video or Video(""), film=film)
    elif video is None or not video.captions:
        way_out = "name a file: --captions FILE, or `captions` under `video` in the recipe"
        raise NotAsked(f"'{recipe.title}' has no captions", way_out)
    elif not video.film.steps:
        raise AtFault(_of_captions(content.faults, video), content.texts)
    recipe = replace(recipe, video=video)
    return Filmed(recipe, video.film, open_findings(recipe))


def _film(path: Path, shown: str, at: Place, reader: FilmReader, recipe: Recipe) -> FilmReading:
    cues, faults = read_captions(path, shown, path.parent, at)
    if faults:
        raise AtFault(faults, {})
    return reader.reading(recipe, cues)


def _of_captions(faults: tuple[Fault, ...], video: Video) -> list[Fault]:
    return [fault for fault in faults if fault.place == video.captions_at]
