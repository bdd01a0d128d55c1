"""The setting of a sheet: in which words and measures it is set, and from which it is read."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from sitegen.kitchen.editions import Edition
from sitegen.kitchen.larder import Ingredient
from sitegen.kitchen.recipe import Choice, IngredientLine, Span
from sitegen.kitchen.tables import Tables
from sitegen.kitchen.weighing import Scales


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
    def _region_words(self) -> Mapping[str, str]:
        if self.edition.region == self.written.region:
            return {}
        return {
            word.casefold(): other
            for word, other in self.tables.spelling.get(self.edition.region, {}).items()
        }

    @cached_property
    def _region_pattern(self) -> re.Pattern[str] | None:
        words = sorted(self._region_words, key=len, reverse=True)
        if not words:
            return None
        return re.compile(r"\b(" + "|".join(map(re.escape, words)) + r")\b", re.IGNORECASE)

    def respelled(self, text: str) -> str:
        """Prose in the printed region's spelling and words: 'baking parchment' -> 'parchment paper'.

        Whole words only, the longest phrase first; a capital at the head of a word stays.
        """
        if self._region_pattern is None:
            return text
        return self._region_pattern.sub(self._region_word, text)

    def _region_word(self, found: re.Match[str]) -> str:
        written = found.group(0)
        other = self._region_words[written.casefold()]
        return other[:1].upper() + other[1:] if written[:1].isupper() else other
