"""Components weighed and taken apart as the school's own kitchen does: by its spoons, its cups, its eggs."""

from collections.abc import Mapping

from sitegen.kitchen.contents import Unpacking
from sitegen.kitchen.part_weights import PartScale
from sitegen.kitchen.recipe import Recipe
from sitegen.kitchen.tables import Tables
from sitegen.kitchen.weighing import Scales


def own_unpacking(bases: Mapping[str, Recipe], tables: Tables, written_in: str) -> Unpacking:
    """How components are taken apart. bases: recipes by title. written_in: key of the files' edition."""
    scales = Scales(tables, tables.editions[written_in])
    return Unpacking(PartScale(bases, scales.grams), scales.row)
