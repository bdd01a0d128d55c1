"""What was read of the school, as one value: pages, states and answers to what-ifs are all made from it."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from functools import cached_property
from pathlib import Path

from sitegen.desk.last_publish import Since
from sitegen.faults import Fault, Severity
from sitegen.kitchen.recipe import Recipe, Release
from sitegen.press.leaf import Tree
from sitegen.press.theme import Theme
from sitegen.release.cache import Cache
from sitegen.release.commission import Imprints
from sitegen.release.days import Standing, standing
from sitegen.release.parcel import Listed, Parcel
from sitegen.release.sheets import SheetSetter, sheet_setter
from sitegen.release.sites import imprints
from sitegen.release.survey import Survey
from sitegen.source.headings import Heading
from sitegen.source.school import Content, School

_Lines = Mapping[str, tuple[str, ...]]


@dataclass(frozen=True)
class RecipeState:
    """What is held of a recipe that was read and proofed.

    key: of all that it was made from. parcel: its lists' rows as if it were out for both audiences. recipe:
    None where it cannot be read. texts: file -> lines, of what its faults stand in.
    """

    key: str
    parcel: Parcel
    recipe: Recipe | None
    texts: _Lines = field(repr=False, hash=False)

    @property
    def errors(self) -> tuple[Fault, ...]:
        """Its own; those of what it draws on stand with that."""
        return tuple(fault for fault in self.parcel.faults if fault.severity is Severity.ERROR)

    @property
    def has_pages(self) -> bool:
        """Whether it could be set without an error."""
        return self.parcel.subscribers is not None


@dataclass(frozen=True)
class Bench:
    """A value that the next reading takes the place of.

    root: the folder that holds `content/`. day: that pages are made for. number: one more for each bench.
    common: what all recipes have in common. survey: None without a readable `site.yaml`. theme: None where it
    cannot be used. states: slug -> of each recipe that was read. pending: slugs of those that are to be read,
    or read again. kitchen: faults of prices and orders. own: faults of what all recipes have in common, of
    headings and of the theme. marks: file -> what tells whether it is still the same. since: what differs
    from the last publish, None for a school that was never published.
    """

    root: Path
    day: date
    number: int
    common: Content
    slugs: tuple[str, ...]
    headings: tuple[Heading, ...]
    survey: Survey | None
    theme: Theme | None
    cache: Cache
    states: Mapping[str, RecipeState]
    pending: frozenset[str]
    own: tuple[Fault, ...]
    kitchen: tuple[Fault, ...]
    marks: Mapping[str, str]
    since: Since | None

    @property
    def school(self) -> School | None:
        return self.common.school

    @cached_property
    def imprints(self) -> Imprints | None:
        return imprints(self.school) if self.school else None

    @cached_property
    def content(self) -> Content:
        """All that was read so far, with every fault of it; without prices and orders."""
        states = [self.states[slug] for slug in self.slugs if slug in self.states]
        faults = (*self.own, *self.kitchen, *(fault for each in states for fault in each.parcel.faults))
        return replace(
            self.common,
            recipes=tuple(each.recipe for each in states if each.recipe is not None),
            headings=self.headings,
            faults=faults,
            texts={
                **self.common.texts,
                **{file: lines for each in states for file, lines in each.texts.items()},
            },
        )

    @cached_property
    def setter(self) -> SheetSetter | None:
        """What sets sheets of any recipe; None without a readable `site.yaml`."""
        return sheet_setter(self.content, self.school) if self.school else None

    @cached_property
    def releases(self) -> Mapping[str, Release]:
        return {heading.slug: heading.release for heading in self.headings}

    def standing(self, slug: str) -> Standing:
        """Who may see what of a recipe on the day; nobody anything of one without a heading."""
        release = self.releases.get(slug)
        return standing(release, self.day) if release else Standing(subscribers=False, public=None)

    def is_out(self, slug: str, tree: Tree) -> bool:
        """Whether those who read a tree see anything of a recipe on the day."""
        stands = self.standing(slug)
        return stands.public is not None if tree is Tree.PUBLIC else stands.subscribers

    def listed(self, tree: Tree) -> tuple[Listed, ...]:
        """The recipes that a tree lists on the day."""
        rows = (state.parcel.listed(tree) for slug, state in self.states.items() if self.is_out(slug, tree))
        return tuple(row for row in rows if row is not None)


def as_if_out(release: Release) -> Standing:
    """How a recipe will stand once it is out for both audiences: so a draft is seen here, and only here."""
    return Standing(subscribers=True, public=release.public_shows)
