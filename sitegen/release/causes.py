"""Which inputs a changed file may owe its change to: told once for all files, however many differ."""

from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass

FIRST_BUILD = "first build"
_RECIPES = "content/recipes/"
_RELEASE = "release of "
_NAMED = 8
"""As many inputs are named; of more, only their folders and how many each holds."""


def release_input(slug: str) -> str:
    """The name under which a recipe's standing on the day is told among the inputs."""
    return _RELEASE + slug


def recipe_of(name: str) -> str | None:
    """The slug of the only recipe that an input belongs to; None for one that concerns all."""
    if name.startswith(_RELEASE):
        return name.removeprefix(_RELEASE)
    if name.startswith(_RECIPES):
        return name.removeprefix(_RECIPES).partition("/")[0]
    return None


@dataclass(frozen=True)
class Causes:
    """The inputs that differ from the last build.

    of_recipes: slug -> its own inputs. of_all: those that concern every file. in_short: all of them.
    """

    of_recipes: Mapping[str, tuple[str, ...]]
    of_all: tuple[str, ...]
    in_short: tuple[str, ...]

    @classmethod
    def between(cls, before: Mapping[str, str], now: Mapping[str, str]) -> "Causes":
        """before, now: name of an input -> its hash or standing."""
        differing = sorted(name for name in before.keys() | now.keys() if before.get(name) != now.get(name))
        of_recipes: dict[str, tuple[str, ...]] = {}
        of_all: list[str] = []
        for name in differing:
            slug = recipe_of(name)
            if slug is None:
                of_all.append(name)
            else:
                of_recipes[slug] = (*of_recipes.get(slug, ()), name)
        return cls(of_recipes, tuple(of_all), in_short(differing))

    def of(self, about: tuple[str, ...]) -> tuple[str, ...]:
        """Those that concern a file. about: slugs of the recipes it shows; none for the school as a whole."""
        if not about:
            return self.in_short
        own = {name for slug in about for name in self.of_recipes.get(slug, ())}
        return in_short([*own, *self.of_all])


def in_short(names: Collection[str]) -> tuple[str, ...]:
    """Names of inputs, sorted; of many only their folders: 'themes/plain/ (9 files)'."""
    listed = tuple(sorted(names))
    for heading in (_folder, _region):
        if len(listed) > _NAMED:
            listed = _filed(names, heading)
    return listed


def _filed(names: Iterable[str], heading: Callable[[str], str]) -> tuple[str, ...]:
    """The names under their headings; one that stands alone keeps its own."""
    files: dict[str, list[str]] = {}
    for name in names:
        files.setdefault(heading(name), []).append(name)
    return tuple(sorted(held[0] if len(held) == 1 else _held(under, held) for under, held in files.items()))


def _held(heading: str, names: Sequence[str]) -> str:
    is_days = heading == _RELEASE
    return f"{heading}{len(names)} recipes" if is_days else f"{heading} ({len(names)} files)"


def _folder(name: str) -> str:
    """The folder that a file lies in, the same for all releases; another input is its own."""
    return _RELEASE if name.startswith(_RELEASE) else name[: name.rfind("/") + 1] or name


def _region(name: str) -> str:
    """The first two folders above a file: 'content/recipes/', 'themes/plain/'."""
    folder = _folder(name)
    return "/".join(folder.split("/")[:2]) + "/" if folder.count("/") > 1 else folder
