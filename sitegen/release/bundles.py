"""Which cards go into which bundle, by dates alone: pure functions over small values.

A month's bundle has the cards of all that came out in it. A bundle of changes has those that came out or were
revised since a month's first day, so that who printed everything on a day finds what to print again in the
bundle of that day's month. The same content on the same day gives the same bundles; nothing is remembered.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

MONTHS_BACK = 6
"""Bundles of changes reach so many months back, this one counted: each holds its cards once more."""


class Why(StrEnum):
    """Why a recipe is in a bundle."""

    NEW = "new"
    CHANGED = "changed"


@dataclass(frozen=True)
class Change:
    """A revision. of: title of the recipe that was revised, a base recipe or the recipe itself."""

    day: date
    note: str
    of: str


@dataclass(frozen=True)
class BundledCard:
    """path: in the subscribers' tree. key: of its bytes in the cache. title: 'British metric, A4'."""

    path: str
    key: str
    title: str


@dataclass(frozen=True)
class BundledRecipe:
    """A recipe that subscribers have. released: to them. changes: of it and of its base recipes."""

    slug: str
    title: str
    released: date
    changes: tuple[Change, ...]
    cards: tuple[BundledCard, ...]


@dataclass(frozen=True)
class Item:
    """A recipe in a bundle, and why. changes: those that its reader must hear of, the oldest first."""

    recipe: BundledRecipe
    why: Why
    changes: tuple[Change, ...] = ()


@dataclass(frozen=True)
class Bundle:
    """name: of its file, without '.zip'. begins: the first day of its month. items: by title."""

    name: str
    begins: date
    is_of_changes: bool
    items: tuple[Item, ...]


def bundles_of(recipes: Sequence[BundledRecipe], day: date) -> tuple[Bundle, ...]:
    """Every bundle of a school on a day: those of changes, then those of months, each the newest first."""
    by_title = sorted(recipes, key=lambda recipe: (recipe.title, recipe.slug))
    return (*_of_changes(by_title, day), *_of_months(by_title))


def month_bundle_name(begins: date) -> str:
    return f"{begins:%Y-%m}"


def changes_bundle_name(begins: date) -> str:
    return f"changed-since-{begins.isoformat()}"


def first_days(day: date) -> tuple[date, ...]:
    """The first days of the month of a day and of those before it, the latest first."""
    months = day.year * 12 + day.month - 1
    return tuple(date(month // 12, month % 12 + 1, 1) for month in range(months, months - MONTHS_BACK, -1))


def changes_by_recipe(
    own: Mapping[str, Sequence[Change]], made_of: Mapping[str, Sequence[str]]
) -> dict[str, tuple[Change, ...]]:
    """Slug -> the changes of a recipe and of all that it is made of, the oldest first.

    own: slug -> its own. made_of: slug -> itself and its base recipes.
    """
    return {
        slug: tuple(sorted((one for each in parts for one in own.get(each, ())), key=lambda one: one.day))
        for slug, parts in made_of.items()
    }


def _of_months(recipes: Sequence[BundledRecipe]) -> Iterator[Bundle]:
    months = {recipe.released.replace(day=1) for recipe in recipes}
    for begins in sorted(months, reverse=True):
        new = (Item(one, Why.NEW) for one in recipes if one.released.replace(day=1) == begins)
        yield Bundle(month_bundle_name(begins), begins, is_of_changes=False, items=tuple(new))


def _of_changes(recipes: Sequence[BundledRecipe], day: date) -> Iterator[Bundle]:
    for begins in first_days(day):
        items = tuple(item for recipe in recipes if (item := _item_since(recipe, begins)) is not None)
        if items:
            yield Bundle(changes_bundle_name(begins), begins, is_of_changes=True, items=items)


def _item_since(recipe: BundledRecipe, begins: date) -> Item | None:
    """What changed up to the day on which it came out is no news: nobody had another card."""
    if recipe.released >= begins:
        return Item(recipe, Why.NEW, tuple(one for one in recipe.changes if one.day > recipe.released))
    heard = tuple(change for change in recipe.changes if change.day >= begins)
    return Item(recipe, Why.CHANGED, heard) if heard else None
