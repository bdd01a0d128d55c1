"""Sections of a shop: where an ingredient stands, as frozen values."""

from dataclasses import dataclass

from sitegen.kitchen.larder import Ingredient

NOWHERE_ELSE = "Everything else"


@dataclass(frozen=True)
class Section:
    """title: as a list prints it. ingredients: keys of the larder. takes_rest: it has all that is left."""

    key: str
    title: str
    ingredients: frozenset[str] = frozenset()
    roles: frozenset[str] = frozenset()
    takes_rest: bool = False


@dataclass(frozen=True)
class Sections:
    """All sections, the rows of `data/sections.yaml`, in the order of a walk through the shop."""

    rows: tuple[Section, ...] = (Section("other", NOWHERE_ELSE, takes_rest=True),)

    def of(self, ingredient: Ingredient | None) -> Section:
        """Where an ingredient stands: by its name, else by its roles, else among the rest.

        ingredient: None for what the larder lacks.
        """
        if ingredient is not None:
            for row in self.rows:
                if ingredient.key in row.ingredients:
                    return row
            for row in self.rows:
                if ingredient.roles & row.roles:
                    return row
        return next(row for row in self.rows if row.takes_rest)
