"""What is only for subscribers, gathered from a whole build, and looked for in its public tree."""

from collections.abc import Iterator

from sitegen.press.leaf import Tree
from sitegen.release.kept_words import KeptWords
from sitegen.release.leaks import Leaked, leaks_in
from sitegen.release.outputs import Build
from sitegen.release.secrets import KeptSecrets, Secrets, stem_of
from sitegen.release.sites import Site
from sitegen.release.staging import Stage

_FILES = ("pictures/", "cards/", "bundles/")


def refuse_leaks(stage: Stage, build: Build) -> None:
    """Read the whole public tree of a stage that is filled. Raises Leaked, NotKept and OSError."""
    start = f"{Tree.PUBLIC}/"
    digests = {
        place.removeprefix(start): file.sha256
        for place, file in stage.files.items()
        if place.startswith(start)
    }
    kept = KeptWords(digests, build.cache)
    found = leaks_in(stage.folder / Tree.PUBLIC, _secrets(stage, build), kept)
    if found:
        raise Leaked(found)


def _secrets(stage: Stage, build: Build) -> Secrets:
    keys = tuple(recipe.parcel.secrets for recipe in build.recipes)
    public = set(_picture_paths(build, build.public))
    return Secrets(
        recipes=KeptSecrets(build.cache, keys),
        open_texts=tuple(_open_texts(build.public)),
        bodies=frozenset(_bodies(stage, public)),
        stems=frozenset(map(stem_of, set(_picture_paths(build, build.subscribers)) - public)),
    )


def _open_texts(site: Site) -> Iterator[str]:
    """What everyone may read that is of no recipe: words of the school, its technique pages, its theme."""
    imprint, theme = site.imprint, site.theme
    yield from (imprint.name, imprint.tagline, imprint.about, imprint.copyright)
    for tutorial in site.tutorials:
        yield from (tutorial.title, tutorial.summary, tutorial.markdown)
        yield tutorial.photo.alt if tutorial.photo else ""
    yield from (*theme.templates.values(), *theme.styles.values(), theme.script, theme.mark)


def _picture_paths(build: Build, site: Site) -> Iterator[str]:
    return (path for source in site.pictures for path, _ in build.pictures[source])


def _bodies(stage: Stage, public: set[str]) -> Iterator[str]:
    """Hashes of the subscribers' pictures, cards and bundles, without the pictures that everyone may see."""
    start = f"{Tree.SUBSCRIBERS}/"
    for place, file in stage.files.items():
        path = place.removeprefix(start)
        if place.startswith(start) and path.startswith(_FILES) and path not in public:
            yield file.sha256
