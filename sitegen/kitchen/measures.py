"""Measures of weight, volume and length, exact, from the project's own definitions.

Pint's default file is never loaded: there a bare cup, tablespoon, teaspoon or pint is the US one.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from difflib import get_close_matches
from fractions import Fraction
from functools import cached_property, lru_cache

from pint import DimensionalityError, UndefinedUnitError, UnitRegistry

from sitegen.kitchen.amounts import Amount, Span, single
from sitegen.kitchen.editions import Edition

WEIGHT_BASE = "gram"
VOLUME_BASE = "milliliter"
LENGTH_BASE = "centimeter"
SHARES_OF_A_TEASPOON = {"pinch": Fraction(1, 16), "dash": Fraction(1, 8)}
REGIONAL_MEASURES = {"floz": "fluid_ounce", "pint": "pint"}
KITCHEN_MEASURES = frozenset({"tsp", "tbsp", "cup", *SHARES_OF_A_TEASPOON, *REGIONAL_MEASURES})


@dataclass(eq=False)
class NotAWeight(Exception):
    """A unit was asked for grams and is none of weight."""

    unit: str


@dataclass(eq=False)
class NotAVolume(Exception):
    """A unit was asked for millilitres and is none of volume."""

    unit: str


@dataclass(eq=False)
class NotALength(Exception):
    """A unit was asked for centimetres and is none of length."""

    unit: str


@dataclass(frozen=True)
class Measures:
    """All measures that a recipe file, an edition or a table may name.

    definitions: the text of `data/measures.txt`, one Pint definition a line. It defines gram,
    milliliter and centimeter as bases and gives each plain unit its short name as symbol
    ('kilogram = 1000 gram = kg'). 'floz' and 'pint' are spelled us_fluid_ounce, imperial_fluid_ounce ...
    names: canonical unit ('g', 'tbsp', ...) -> its spellings in recipe files.
    The Pint registry is built from `definitions` once a process, so that this value can cross processes.
    """

    definitions: str
    names: Mapping[str, tuple[str, ...]] = field(hash=False)

    @classmethod
    def of(cls, definitions: str, names: Mapping[str, tuple[str, ...]]) -> "Measures":
        """Measures by their definitions and spellings."""
        return cls(definitions, dict(names))

    @cached_property
    def _canonical(self) -> Mapping[str, str]:
        """Spelling -> canonical unit; a spelling as written wins over one in another case."""
        spelled = [
            (word, unit) for unit, spellings in self.names.items() for word in (unit, *spellings) if word
        ]
        as_written = dict(reversed(spelled))
        any_case = {word.casefold(): unit for word, unit in reversed(spelled)}
        return any_case | as_written

    def unit_named(self, word: str) -> str | None:
        """The canonical unit of a spelling: 'grams' -> 'g'; None for what is no unit."""
        return self._canonical.get(word) or self._canonical.get(word.casefold())

    def near_unit(self, word: str) -> str | None:
        """The spelling of a unit that looks most like a word, or None."""
        near = get_close_matches(word.casefold(), self._canonical, n=1, cutoff=0.6)
        return near[0] if near else None

    def is_weight(self, unit: str) -> bool:
        """Whether a canonical unit is one of weight."""
        return self._factor(unit, WEIGHT_BASE) is not None

    def is_volume(self, unit: str) -> bool:
        """Whether a canonical unit is one of volume, the spoons and cups of an edition among them."""
        return unit in KITCHEN_MEASURES or self._factor(unit, VOLUME_BASE) is not None

    def is_length(self, unit: str) -> bool:
        """Whether a canonical unit is one of length."""
        return self._factor(unit, LENGTH_BASE) is not None

    def grams(self, amount: Amount) -> Span:
        """An amount by weight in grams, exact. Raises NotAWeight."""
        factor = self._factor(amount.unit, WEIGHT_BASE)
        if factor is None:
            raise NotAWeight(amount.unit)
        return amount.span.times(factor)

    def gram_factor(self, unit: str) -> Fraction:
        """Grams in one of a unit of weight, exact. Raises NotAWeight."""
        return self.grams(Amount(single(1), unit)).low

    def millilitres(self, amount: Amount, edition: Edition) -> Span:
        """An amount by volume in millilitres, exact.

        edition: whose teaspoon, tablespoon and cup are meant, and by its region whose fluid ounce and
        pint. A pinch is 1/16, a dash 1/8 of a teaspoon (common practice). Raises NotAVolume.
        """
        return amount.span.times(self._kitchen_ml(amount.unit, edition))

    def unit_ml(self, name: str) -> Fraction:
        """The millilitres in a measure of `definitions`, such as 'us_cup'. Raises NotAVolume."""
        factor = self._factor(name, VOLUME_BASE)
        if factor is None:
            raise NotAVolume(name)
        return factor

    def centimetres(self, amount: Amount) -> Span:
        """A length in centimetres, exact. Raises NotALength."""
        factor = self._factor(amount.unit, LENGTH_BASE)
        if factor is None:
            raise NotALength(amount.unit)
        return amount.span.times(factor)

    def _kitchen_ml(self, unit: str, edition: Edition) -> Fraction:
        if unit in SHARES_OF_A_TEASPOON:
            return SHARES_OF_A_TEASPOON[unit] * self.unit_ml(edition.teaspoon)
        own = {"tsp": edition.teaspoon, "tbsp": edition.tablespoon, "cup": edition.cup}
        if unit in REGIONAL_MEASURES:
            kind = "us" if edition.region == "us" else "imperial"
            return self.unit_ml(f"{kind}_{REGIONAL_MEASURES[unit]}")
        return self.unit_ml(own.get(unit, unit))

    def _factor(self, unit: str, base: str) -> Fraction | None:
        return _factor(self.definitions, unit, base) if unit else None


@lru_cache(maxsize=8)
def _registry(definitions: str) -> "UnitRegistry[Fraction]":
    registry: UnitRegistry[Fraction] = UnitRegistry(None, non_int_type=Fraction)
    registry.load_definitions(definitions.splitlines())
    return registry


@lru_cache(maxsize=1024)
def _factor(definitions: str, unit: str, base: str) -> Fraction | None:
    """How many of the base unit are in one, exact; None where they measure different things."""
    try:
        return Fraction(_registry(definitions).Quantity(Fraction(1), unit).to(base).magnitude)
    except (DimensionalityError, UndefinedUnitError):
        return None
