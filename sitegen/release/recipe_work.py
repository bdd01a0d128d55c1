"""The work on one recipe: read and proofed with what it draws on, its sheets set, then its pages made.

Both pieces can be done in any process. What they leave is kept by the hash of all that went in: the files of
the recipe and of those that it may draw on, what the school has in common, who may see what on the day, and
the program.
"""

import os
import pickle
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from tempfile import NamedTemporaryFile

from sitegen.faults import Fault
from sitegen.kitchen.recipe import Recipe
from sitegen.release.commission import Commission, CommissionFile
from sitegen.release.parcel import PageRow, Parcel, pages_json, parcel_json
from sitegen.release.photo_work import CutWork, kept_picture
from sitegen.release.recipe_outputs import Setting, recipe_leaves
from sitegen.release.recipe_reading import (
    read_kitchen_faults,
    read_recipe,
    read_with,
    recipe_of,
)
from sitegen.release.secrets import RecipeSecrets, secrets_json, secrets_of
from sitegen.release.sheets import SheetSetter, sheet_setter
from sitegen.release.shown import Shown, card_rows, listed, shown_of
from sitegen.source.headings import Heading
from sitegen.source.library import read_headings
from sitegen.source.school import School


@dataclass(frozen=True)
class HeadingsWork:
    """Reads the headings of some recipes; those of files at fault are missing."""

    root: Path
    slugs: tuple[str, ...]

    def made(self) -> tuple[Heading, ...]:
        return read_headings(self.root, self.slugs)


@dataclass(frozen=True)
class KitchenWork:
    """Proofs what is for the kitchen alone. slugs: of the recipes that it needs."""

    commission: CommissionFile
    slugs: tuple[str, ...]

    def made(self) -> tuple[Fault, ...]:
        return read_kitchen_faults(self.commission.school(), self.commission.read().headings, self.slugs)


@dataclass(frozen=True)
class SetWork:
    """Reads, proofs and sets one recipe. drawn_on: slugs of it and of all that it may draw on.

    A parcel with an error in it is not kept.
    """

    commission: CommissionFile
    slug: str
    drawn_on: tuple[str, ...]
    key: str

    def made(self) -> Parcel:
        commission = self.commission.read()
        read = read_recipe(self.commission.school(), commission.headings, self.slug, self.drawn_on)
        proofed, school = read.proofed, read.content.school
        # What is wrong with a base recipe is told with that one, and would stop the sheets of this.
        if not read.has_sheets or read.recipe is None or read.setter is None or school is None:
            return Parcel(self.slug, read.title, proofed.faults, proofed.idle)
        shown = _shown(commission, read.recipe, read.setter, school)
        _put_by(self.commission.sheets_of(self.slug), shown)
        parcel = Parcel(
            slug=self.slug,
            title=read.title,
            faults=proofed.faults,
            idle=proofed.idle,
            about=shown.about,
            public=listed(shown.public),
            subscribers=listed(shown.subscribers),
            cards=tuple(card_rows(shown.subscribers, commission.imprints.subscribers)),
            revisions=shown.revisions,
            secrets=commission.cache.put_leaf(secrets_json(_secrets(read.recipe, read.setter, shown))),
        )
        if read.is_all:
            commission.cache.put(self.key, parcel_json(parcel))
        return parcel


@dataclass(frozen=True)
class PagesWork:
    """Makes the pages of one recipe in both trees, and its texts. Its photos are cut by now."""

    commission: CommissionFile
    slug: str
    drawn_on: tuple[str, ...]
    key: str

    def made(self) -> tuple[PageRow, ...]:
        commission = self.commission.read()
        cache = commission.cache
        shown = shown_recipe(self.commission, self.slug, self.drawn_on)
        cuts = [CutWork(commission.root, file, commission.digests[file], cache) for file in shown.photos()]
        setting = Setting(
            theme=commission.theme,
            public=commission.imprints.public,
            subscribers=commission.imprints.subscribers,
            pictures={work.file: kept_picture(work)[0] for work in cuts},
        )
        rows = tuple(
            PageRow(leaf.tree, leaf.path, cache.put_leaf(leaf.body)) for leaf in recipe_leaves(shown, setting)
        )
        cache.put(self.key, pages_json(rows))
        return rows


def shown_recipe(file: CommissionFile, slug: str, drawn_on: tuple[str, ...]) -> Shown:
    """A recipe without errors as each audience has it: as it was set for the proof, or set anew."""
    with suppress(OSError):
        shown = pickle.loads(file.sheets_of(slug).read_bytes())
        assert isinstance(shown, Shown)
        return shown
    content, _ = read_with(file.school(), file.read().headings, drawn_on)
    recipe, school = recipe_of(content, slug), content.school
    assert recipe is not None
    assert school is not None
    shown = _shown(file.read(), recipe, sheet_setter(content, school), school)
    _put_by(file.sheets_of(slug), shown)
    return shown


def _shown(commission: Commission, recipe: Recipe, setter: SheetSetter, school: School) -> Shown:
    return shown_of(
        setter.all_sheets(recipe),
        commission.standings[recipe.slug],
        school.papers,
        commission.public_slugs,
        commission.subscribers_slugs,
    )


def _secrets(recipe: Recipe, setter: SheetSetter, shown: Shown) -> RecipeSecrets:
    sheets = (sheet for row in setter.all_sheets(recipe).rows for sheet in row)
    if shown.public is None:
        return secrets_of(recipe.slug, sheets, ())
    return secrets_of(recipe.slug, sheets, shown.public.views(), shown.public.revisions)


def _put_by(path: Path, shown: Shown) -> None:
    """Keep sheets for the other pieces of work of this build."""
    with NamedTemporaryFile(dir=path.parent, delete=False) as part:
        part.write(pickle.dumps(shown))
    os.replace(part.name, path)
