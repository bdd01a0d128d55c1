"""Pictures that a page needs, and words for who cannot see them."""

from collections.abc import Iterator

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.kitchen.method import Photo
from sitegen.kitchen.recipe import Recipe
from sitegen.kitchen.tables import Tables

NO_FINISHED_PHOTO = FaultCode(
    "no-finished-photo",
    Severity.ADVICE,
    "A recipe with a release day has no picture of the finished bake, so that lists and cards show none.",
    "Add `photo` with `file` and `alt` at the top of the recipe.",
    good="photo:\n  file: finished.jpg\n  alt: Twelve cupcakes, each with a purple swirl and one berry\n",
    bad="",
)
ALT_IS_FILE = FaultCode(
    "alt-is-a-file-name",
    Severity.ERROR,
    "The words for who cannot see the picture only repeat its file name.",
    "Say what the picture shows.",
    good="alt: A loose yellow batter under a whisk",
    bad="alt: whisk.jpg",
)
ALT_TWICE = FaultCode(
    "alt-twice",
    Severity.ADVICE,
    "Two different pictures have the same words, so that a listener cannot tell them apart.",
    "Say what is different in the second picture.",
    good="alt: A loose yellow batter under a whisk",
    bad="alt: Twelve cupcakes, each with a purple swirl and one berry",
)

CODES = (NO_FINISHED_PHOTO, ALT_IS_FILE, ALT_TWICE)


def finished_photo(recipe: Recipe, _tables: Tables) -> Iterator[Fault]:
    """A released recipe shows the finished bake."""
    released = recipe.release.subscribers or recipe.release.public
    if released and recipe.photo is None:
        sentence = "no picture of the finished bake"
        yield NO_FINISHED_PHOTO.fault(recipe.at, sentence)


def alt_says_something(recipe: Recipe, _tables: Tables) -> Iterator[Fault]:
    """The words are more than a file name."""
    for photo in _photos(recipe):
        name = photo.file.rpartition("/")[2]
        if photo.alt.casefold() in (name.casefold(), name.rpartition(".")[0].casefold()):
            yield ALT_IS_FILE.fault(photo.at, f"'{photo.alt}' says nothing about the picture")


def alt_differs(recipe: Recipe, _tables: Tables) -> Iterator[Fault]:
    """Two pictures, two texts."""
    seen: dict[str, str] = {}
    for photo in _photos(recipe):
        first = seen.setdefault(photo.alt.casefold(), photo.file)
        if first != photo.file:
            yield ALT_TWICE.fault(photo.at, "another picture has the same words")


def _photos(recipe: Recipe) -> Iterator[Photo]:
    if recipe.photo:
        yield recipe.photo
    for component in recipe.components:
        yield from (step.photo for step in component.steps if step.photo)


CHECKS = (finished_photo, alt_says_something, alt_differs)
