"""The larder: facts on ingredients, each with its source, as frozen values.

The rows stand in `data/larder.yaml` and `content/larder.yaml`; `source/tables.py` reads them.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from difflib import get_close_matches
from fractions import Fraction

SPOONED = "spooned"


@dataclass(frozen=True)
class Density:
    """How much of an ingredient a measure holds.

    method: 'spooned', 'scooped', 'sifted', 'packed', 'chopped', 'whole', 'liquid', 'level'.
    grams of the ingredient fill `millilitres`; both exact.
    source: a key of `data/sources.yaml`, with the row's own number where it has one.
    """

    method: str
    grams: Fraction
    millilitres: Fraction
    source: str

    @property
    def grams_per_ml(self) -> Fraction:
        return self.grams / self.millilitres


@dataclass(frozen=True)
class Piece:
    """The edible weight of one, in grams.

    size: 'medium', 'large', '' for the only size. part: 'zest', 'juice', 'white', 'yolk', or ''.
    """

    grams: Fraction
    source: str
    size: str = ""
    part: str = ""


@dataclass(frozen=True)
class Composition:
    """What 100 g of the edible part hold, grams, exact.

    carbohydrate: available, without fibre, as Regulation (EU) No 1169/2011 counts it. protein: nitrogen
    x 6.25. salt: sodium x 2.5. source: a key of `data/sources.yaml`, with the row's own number.
    """

    fat: Fraction
    saturates: Fraction
    carbohydrate: Fraction
    sugars: Fraction
    fibre: Fraction
    protein: Fraction
    salt: Fraction
    source: str
    water: Fraction | None = None
    alcohol: Fraction = Fraction(0)
    polyols: Fraction = Fraction(0)
    organic_acids: Fraction = Fraction(0)


@dataclass(frozen=True)
class Ingredient:
    """One row of the larder.

    key: the British name. names: region ('uk', 'us', 'au') -> name in print; a region that is
    missing prints the British one. aliases: other spellings that a baker may write. plural: of the key;
    plurals: region -> of its name there.
    densities: the usual method first. pieces: by size and part.
    allergens_eu: of the EU/UK fourteen, named as the label does ('wheat', 'milk', 'eggs', 'almonds');
    allergens_us: of the US nine; allergens_au: of the Australian and New Zealand list.
    roles: what it is for balance, rounding and cautions: 'flour', 'leavening', 'salt', 'yeast',
    'gelatine', 'sugar', 'fat', 'egg', 'liquid', 'alcohol', 'nut', 'honey', 'dairy', 'chocolate', 'fruit',
    'spice' ...
    measured_by: 'cup' for what has an honest cup, 'stick' for butter, 'weight' for what has none,
    'spoon' for what is only ever spooned, 'piece' for what is counted.
    label_advice: True where the packet decides its allergens ('read the packet'). packet_may_hold: EU/UK
    names of all that some makers' packets add to it; empty where nobody can name them.
    composition: None where no table has it. allergens_unsaid: 'eu', 'us', 'au' where a recipe that declares
    the ingredient leaves open what the region's law would name.
    """

    key: str
    names: Mapping[str, str] = field(hash=False)
    aliases: tuple[str, ...] = ()
    plural: str = ""
    densities: tuple[Density, ...] = ()
    pieces: tuple[Piece, ...] = ()
    allergens_eu: tuple[str, ...] = ()
    allergens_us: tuple[str, ...] = ()
    roles: frozenset[str] = frozenset()
    measured_by: str = "cup"
    label_advice: bool = False
    allergens_au: tuple[str, ...] = ()
    composition: Composition | None = None
    allergens_unsaid: frozenset[str] = frozenset()
    packet_may_hold: tuple[str, ...] = ()
    plurals: Mapping[str, str] = field(default_factory=dict, hash=False)

    def name_in(self, region: str) -> str:
        """The name that print uses in a region."""
        return self.names.get(region, self.key)

    def counted(self, name: str, count: Fraction, region: str) -> str:
        """A name as the number before it wants it: '1 lemon', '3/2 lemons'; as it is without a known plural.

        name: the British one or the region's, of one or of many.
        """
        forms = ((self.key, self.plural), (self.name_in(region), self.plurals.get(region, "")))
        for one, many in forms:
            if many and name in (one, many):
                return many if count > 1 else one
        return name

    @property
    def density(self) -> Density | None:
        """The density by the usual method, or None."""
        return self.densities[0] if self.densities else None

    def density_by(self, fill: str) -> Density | None:
        """The usual density; of what is usually spooned, that of a region's way to fill a cup ('scooped')."""
        usual = self.density
        if usual is None or usual.method != SPOONED:
            return usual
        return next((row for row in self.densities if row.method == fill), usual)

    def piece(self, size: str, part: str = "") -> Piece | None:
        """The weight of one of that size and part; the size-less row answers for any size."""
        rows = [row for row in self.pieces if row.part == part]
        exact = next((row for row in rows if row.size == size), None)
        return exact or next((row for row in rows if row.size == ""), None)


@dataclass(frozen=True)
class Larder:
    """All ingredients, found by any of their names."""

    ingredients: tuple[Ingredient, ...]
    by_name: Mapping[str, Ingredient] = field(hash=False, compare=False, repr=False)

    @classmethod
    def of(cls, ingredients: tuple[Ingredient, ...]) -> "Larder":
        """A larder that finds each ingredient by key, regional names, aliases and plural.

        Where two rows share a word the earlier row keeps it, and a key always wins over an alias.
        """
        by_name: dict[str, Ingredient] = {}
        for row in ingredients:
            by_name.setdefault(row.key.casefold(), row)
        for row in ingredients:
            for name in (*row.names.values(), *row.aliases, row.plural, *row.plurals.values()):
                if name:
                    by_name.setdefault(name.casefold(), row)
        return cls(ingredients, by_name)

    def find(self, name: str) -> Ingredient | None:
        """The row of that name, whatever its case, or None."""
        return self.by_name.get(name.casefold().strip())

    def near(self, name: str) -> tuple[str, ...]:
        """Up to three known names that look like this one, nearest first."""
        return tuple(get_close_matches(name.casefold().strip(), self.by_name, n=3, cutoff=0.72))
