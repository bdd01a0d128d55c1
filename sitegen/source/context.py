"""What the words of one recipe are read against."""

from dataclasses import dataclass

from sitegen.kitchen.larder import Ingredient
from sitegen.kitchen.tables import Tables


@dataclass(frozen=True)
class Context:
    """tables: of the trade, with the school's own larder and what the recipe itself declares.

    components: titles of the recipe's own components. recipes: titles of all recipes of the school,
    which are the base recipes that a line may draw on. declared: ingredients that the recipe's file declares.
    """

    tables: Tables
    components: tuple[str, ...] = ()
    recipes: tuple[str, ...] = ()
    declared: tuple[Ingredient, ...] = ()
