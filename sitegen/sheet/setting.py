"""The setting of a sheet: in which words and measures it is set, and from which it is read."""

from dataclasses import dataclass
from functools import cached_property

from sitegen.kitchen.amounts import Span
from sitegen.kitchen.editions import Edition
from sitegen.kitchen.larder import Ingredient
from sitegen.kitchen.recipe import Choice, IngredientLine
from sitegen.kitchen.tables import Tables
from sitegen.kitchen.weighing import Scales
from sitegen.sheet.respelling import Respelling, respelling_by


@dataclass(frozen=True)
class Setting:
    """tables: the trade's. written: the edition the recipe files are written in. edition: the one printed."""

    tables: Tables
    written: Edition
    edition: Edition

    @cached_property
    def scales(self) -> Scales:
        """Those of the kitchen that the recipe is written in."""
        return Scales(self.tables, self.written)

    def row(self, choice: Choice) -> Ingredient | None:
        """The larder's row of an ingredient, or None where the larder has none."""
        return self.scales.row(choice)

    def grams(self, line: IngredientLine) -> Span | None:
        """What a line weighs as written, grams, exact; None where it cannot be known."""
        return self.scales.grams(line)

    def name(self, choice: Choice) -> str:
        """An ingredient's name in the printed edition's words.

        In the region that the recipe is written for, the baker's own word stands.
        """
        row = self.row(choice)
        if row is None or self.edition.region == self.written.region:
            return choice.name
        regional = row.name_in(self.edition.region)
        return choice.name if regional == row.key else regional

    @cached_property
    def _respelling(self) -> Respelling:
        is_own = self.edition.region == self.written.region
        words = {} if is_own else self.tables.spelling.get(self.edition.region, {})
        return respelling_by(tuple(words.items()))

    def respelled(self, text: str) -> str:
        """Prose in the printed region's spelling and words: 'baking parchment' -> 'parchment paper'."""
        return self._respelling.of(text)
