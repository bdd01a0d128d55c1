"""Ingredients that a recipe declares itself, under `larder`, with just what is known of them."""

from collections.abc import Collection

from sitegen.faults import Fault
from sitegen.kitchen.larder import Ingredient
from sitegen.kitchen.tables import Tables
from sitegen.source.larder_rows import LarderReading, part_of
from sitegen.source.reader import Document
from sitegen.source.tables import known_roles


def declared_in(
    document: Document, names: Collection[str], tables: Tables
) -> tuple[tuple[Ingredient, ...], tuple[Fault, ...]]:
    """The ingredients of a recipe file, and every fault of their rows.

    names: those that stand under `larder`, in the file's order. tables: with the school's own larder.
    A row at fault leaves a bare ingredient, so that no line is said to name something unknown.
    """
    if not names:
        return (), ()
    reading = LarderReading(tables.measures, tables.sources, roles=known_roles(tables.larder), is_recipe=True)
    larder, faults = reading.extended(tables.larder, part_of(document, "larder"))
    found = (larder.find(name) or Ingredient(name, {"uk": name}) for name in names)
    known = set(tables.larder.ingredients)
    return tuple(row for row in found if row not in known), faults
