"""Every sheet of a recipe that its page offers: each batch in each edition of the school."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from sitegen.kitchen.recipe import BatchAsk, Recipe
from sitegen.sheet.batches import offered
from sitegen.sheet.build import build_sheet
from sitegen.sheet.checks import Shelf
from sitegen.sheet.values import Sheet
from sitegen.source.school import Content, School


@dataclass(frozen=True)
class RecipeSheets:
    """rows: one a batch, the tested one first, each with one sheet an edition in the school's order."""

    recipe: Recipe
    rows: tuple[tuple[Sheet, ...], ...]

    @property
    def tested(self) -> tuple[Sheet, ...]:
        """The tested batch in each edition, the school's own edition first."""
        return self.rows[0]


@dataclass(frozen=True)
class SheetSetter:
    """Sets sheets of one school, each of them once: what was proofed is what is printed.

    tutorials: slug -> title. kept: what was set, by slug, edition and batch.
    """

    shelf: Shelf
    tutorials: Mapping[str, str] = field(hash=False)
    kept: dict[tuple[str, str, BatchAsk | None], Sheet] = field(
        default_factory=dict, init=False, repr=False, compare=False
    )

    def sheet(self, recipe: Recipe, edition: str, ask: BatchAsk | None) -> Sheet:
        """One sheet; raises CannotScale for a batch that the recipe cannot give.

        recipe: one of the school's. edition: a key of the tables' editions, the school's own or not.
        """
        key = (recipe.slug, edition, ask)
        if key not in self.kept:
            self.kept[key] = self._newly_set(recipe, edition, ask)
        return self.kept[key]

    def _newly_set(self, recipe: Recipe, edition: str, ask: BatchAsk | None) -> Sheet:
        shelf = self.shelf
        printed = shelf.tables.editions[edition]
        return build_sheet(recipe, shelf.bases, shelf.tables, printed, shelf.written, ask, self.tutorials)

    def all_sheets(self, recipe: Recipe) -> RecipeSheets:
        """Every batch that the page offers in every edition of the school, each batch once."""
        rows: dict[str, tuple[Sheet, ...]] = {}
        for ask in offered(recipe):
            row = tuple(
                _without_lines_of_file(self.sheet(recipe, edition.key, ask))
                for edition in self.shelf.editions
            )
            rows.setdefault(row[0].head.batch.key, row)
        return RecipeSheets(recipe, tuple(rows.values()))


def sheet_setter(content: Content, school: School) -> SheetSetter:
    """What sets the sheets of a school that was read."""
    editions = content.tables.editions
    shelf = Shelf(
        bases={recipe.title: recipe for recipe in content.recipes},
        tables=content.tables,
        editions=tuple(editions[key] for key in school.editions),
        written=editions[school.written_in],
    )
    return SheetSetter(shelf, {tutorial.slug: tutorial.title for tutorial in content.tutorials})


def _without_lines_of_file(sheet: Sheet) -> Sheet:
    """The sheet without line numbers of the recipe file: an empty line more there makes no new card."""
    components = tuple(
        replace(part, lines=tuple(replace(line, at_line=0) for line in part.lines))
        for part in sheet.components
    )
    return replace(sheet, components=components)
