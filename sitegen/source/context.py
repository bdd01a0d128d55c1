"""What the words of one recipe are read against."""

from dataclasses import dataclass

from sitegen.kitchen.tables import Tables


@dataclass(frozen=True)
class Context:
    """tables: of the trade, the school's own larder among them.

    components: titles of the recipe's own components. recipes: titles of all recipes of the school,
    which are the base recipes that a line may draw on.
    """

    tables: Tables
    components: tuple[str, ...] = ()
    recipes: tuple[str, ...] = ()
