"""Components taken apart and weighed as the school's own kitchen weighs: its spoons, its cups, its eggs."""

from collections.abc import Mapping

from sitegen.kitchen.contents import Unpacking
from sitegen.kitchen.larder import Ingredient
from sitegen.kitchen.part_weights import PartScale
from sitegen.kitchen.recipe import Choice, IngredientLine, Recipe, Span
from sitegen.kitchen.tables import Tables
from sitegen.kitchen.weighing import grams_of


def own_unpacking(bases: Mapping[str, Recipe], tables: Tables, written_in: str) -> Unpacking:
    """How components are taken apart. bases: recipes by title. written_in: key of the files' edition."""
    edition = tables.editions[written_in]

    def row(choice: Choice) -> Ingredient | None:
        return tables.larder.find(choice.ingredient)

    def weigh(line: IngredientLine) -> Span | None:
        return grams_of(line.amount, line.chosen, row(line.chosen), edition, tables)

    return Unpacking(PartScale(bases, weigh), row)
