"""Gelatine by the leaf and pastry by the sheet, in a region's word: '3 leaves gelatine', US '3 sheets'."""

from fractions import Fraction

from sitegen.kitchen.larder import Ingredient
from sitegen.sheet.amounts import NO_BREAK

LEAF, SHEET = ("leaf", "leaves"), ("sheet", "sheets")
SHEETS_EVERYWHERE = "pastry"
"""The role of what no region counts in leaves."""
WORD_OF_REGION = {"us": SHEET}


def is_in_leaves(row: Ingredient | None, unit: str) -> bool:
    """Whether a count is one of leaves or sheets: it says so, or nothing else of it can be counted."""
    is_gelatine = row is not None and "gelatine" in row.roles and row.measured_by == "piece"
    return unit == LEAF[0] or (not unit and is_gelatine)


def leaf_word(row: Ingredient | None, count: Fraction, region: str) -> str:
    """'leaf', 'leaves', 'sheet' or 'sheets': what the region counts an ingredient in."""
    is_pastry = row is not None and SHEETS_EVERYWHERE in row.roles
    one, many = SHEET if is_pastry else WORD_OF_REGION.get(region, LEAF)
    return one if count <= 1 else many


def name_beside(amount: str, name: str) -> str:
    """A name without the word that its amount says already: '3 sheets', 'sheet gelatin' -> 'gelatin'."""
    unit = amount.rpartition(NO_BREAK)[2]
    for one, many in (LEAF, SHEET):
        if unit in (one, many):
            return name.removeprefix(f"{one} ").removesuffix(f" {many}").removesuffix(f" {one}")
    return name
