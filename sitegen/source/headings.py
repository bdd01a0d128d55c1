"""What a school knows of a recipe before a word of it is read: enough to tell recipes apart."""

from dataclasses import dataclass

from sitegen.faults import Place
from sitegen.kitchen.recipe import Release
from sitegen.source.recipes import RecipeSource, release_of


@dataclass(frozen=True)
class Part:
    """A component by its title, and where that stands."""

    title: str
    at: Place


@dataclass(frozen=True)
class Heading:
    """A recipe file of the right shape, by what stands above its lines and its method.

    declares: whether it declares ingredients of its own. at: the place of its title.
    """

    slug: str
    title: str
    tags: tuple[str, ...]
    parts: tuple[Part, ...]
    release: Release
    declares: bool
    at: Place


def heading_of(source: RecipeSource) -> Heading:
    """The heading; it holds also where a line of the recipe cannot be read."""
    file, document = source.file, source.document
    return Heading(
        slug=source.slug,
        title=file.title,
        tags=tuple(file.tags),
        parts=tuple(Part(title, document.key_place(("components", title))) for title in file.components),
        release=release_of(file, document),
        declares=bool(file.larder),
        at=document.place(("title",)),
    )
