"""What a build knows of a school before it reads recipes word by word: how they stand, what draws on what."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from functools import cached_property
from pathlib import Path

from sitegen import limits
from sitegen.opening import read_within
from sitegen.release.cache import Cache, program_hash
from sitegen.release.days import Standing, standing
from sitegen.release.drawn_on import Titles, with_drawn_on
from sitegen.release.proof import is_kitchens_own
from sitegen.source.headings import Heading
from sitegen.source.school import Content, School

_RECIPES = "content/recipes/"
_IN_COMMON = ("content/site.yaml", "content/larder.yaml")


@dataclass(frozen=True)
class Survey:
    """content: what all recipes have in common. slugs: of all recipe folders, sorted.

    headings: of those whose file has the right shape. digests: file below `root` -> hash, of all of
    `content/`.
    """

    root: Path
    content: Content
    school: School
    slugs: tuple[str, ...]
    headings: tuple[Heading, ...]
    digests: Mapping[str, str]
    day: date

    @cached_property
    def standings(self) -> Mapping[str, Standing]:
        """Who may see what of each recipe on the day."""
        return {heading.slug: standing(heading.release, self.day) for heading in self.headings}

    def drawn_on(self, slug: str) -> tuple[str, ...]:
        """The recipe and all that it may draw on."""
        return self._drawn_on[slug]

    def parcel_key(self, slug: str, cache: Cache) -> str:
        """Of all that a recipe is read, proofed, set and sorted from."""
        drawn_on = self.drawn_on(slug)
        stands = [(each, self.standings.get(each)) for each in drawn_on]
        text = "\n".join(self._texts[each] for each in drawn_on)
        techniques = [(each.slug, each.title) for each in self.content.tutorials if each.slug in text]
        # What is said of other recipes on film is told by their titles.
        titles = [heading.title for heading in self.headings] if "captions" in text else []
        return self._key(cache, "parcel", slug, drawn_on, stands, techniques, titles)

    def kitchen_slugs(self) -> tuple[str, ...]:
        """Recipes that the kitchen's own files need: what is ordered, and what declares ingredients."""
        files = (file for file in self.digests if is_kitchens_own(file))
        text = "\n".join(_text(self.root, file) for file in files)
        by_slug = (slug for slug in self.slugs if slug in text)
        declaring = (heading.slug for heading in self.headings if heading.declares)
        named = {*self._titles.named_in(text), *by_slug, *declaring}
        return tuple(sorted({each for slug in named for each in self.drawn_on(slug)}))

    def kitchen_key(self, cache: Cache) -> str:
        """Of all that the kitchen's own files are proofed against."""
        own = [(file, digest) for file, digest in self.digests.items() if is_kitchens_own(file)]
        return self._key(cache, "kitchen", "", self.kitchen_slugs(), own)

    def _key(self, cache: Cache, kind: str, slug: str, drawn_on: Sequence[str], *more: object) -> str:
        in_common = [self.digests.get(file) for file in _IN_COMMON]
        files = [self._files.get(each) for each in drawn_on]
        return cache.key(kind, program_hash(), repr((slug, in_common, drawn_on, files, more)))

    @cached_property
    def _titles(self) -> Titles:
        return Titles.of((heading.slug, heading.title) for heading in self.headings)

    @cached_property
    def _texts(self) -> Mapping[str, str]:
        """Slug -> the bare text of its file; '' where there is none."""
        return {slug: _text(self.root, f"{_RECIPES}{slug}/recipe.yaml") for slug in self.slugs}

    @cached_property
    def _drawn_on(self) -> Mapping[str, tuple[str, ...]]:
        """Followed once: each step of a build asks for it."""
        return {slug: with_drawn_on(slug, self._named) for slug in self.slugs}

    @cached_property
    def _named(self) -> Mapping[str, tuple[str, ...]]:
        return {slug: self._titles.named_in(text) for slug, text in self._texts.items()}

    @cached_property
    def _files(self) -> Mapping[str, tuple[tuple[str, str], ...]]:
        """Slug -> the files in its folder with their hashes."""
        return _files_of_recipes(self.digests)


def _files_of_recipes(digests: Mapping[str, str]) -> Mapping[str, tuple[tuple[str, str], ...]]:
    """Slug -> (file, hash) of each file in the recipe's folder."""
    found: dict[str, list[tuple[str, str]]] = {}
    for file, digest in digests.items():
        if file.startswith(_RECIPES):
            found.setdefault(file.split("/")[2], []).append((file, digest))
    return {slug: tuple(files) for slug, files in found.items()}


def _text(root: Path, file: str) -> str:
    """The bare text of a file below `content/`; '' where it cannot be read."""
    try:
        return read_within(root / "content", root / file, limits.TEXT_BYTES).decode(errors="replace")
    except OSError:
        return ""
