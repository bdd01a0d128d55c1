"""What a weight of food holds, and its energy. Exact: the sheet rounds.

Source: Regulation (EU) No 1169/2011, Annexes I and XIV; the factors stand in `data/nutrition.yaml`.
"""

from collections.abc import Mapping
from dataclasses import dataclass, fields
from enum import StrEnum
from fractions import Fraction

from sitegen.kitchen.composition import SALT_PER_SODIUM
from sitegen.kitchen.larder import Composition

NOTHING = Fraction(0)


class Quantity(StrEnum):
    """What a table of nutrition has a line for; grams but where it says otherwise."""

    ENERGY_KJ = "energy in kJ"
    ENERGY_KCAL = "energy in kcal"
    FAT = "fat"
    SATURATES = "saturates"
    CARBOHYDRATE = "carbohydrate"
    TOTAL_CARBOHYDRATE = "total carbohydrate"
    SUGARS = "sugars"
    FIBRE = "fibre"
    PROTEIN = "protein"
    SALT = "salt"
    SODIUM_MG = "sodium in mg"


@dataclass(frozen=True)
class EnergyFactor:
    """What a gram of a nutrient yields; kJ and kcal are laid down apart, neither is worked out of the other.

    nutrient: a field of Nutrients.
    """

    nutrient: str
    kj: Fraction
    kcal: Fraction


@dataclass(frozen=True)
class Nutrients:
    """Grams of each nutrient in some weight of food, exact.

    carbohydrate: what the body takes up, polyols and organic acids not counted in. water: as far as known.
    """

    fat: Fraction = NOTHING
    saturates: Fraction = NOTHING
    carbohydrate: Fraction = NOTHING
    sugars: Fraction = NOTHING
    fibre: Fraction = NOTHING
    protein: Fraction = NOTHING
    salt: Fraction = NOTHING
    alcohol: Fraction = NOTHING
    polyols: Fraction = NOTHING
    organic_acids: Fraction = NOTHING
    water: Fraction = NOTHING

    def plus(self, other: "Nutrients") -> "Nutrients":
        return Nutrients(*(getattr(self, name) + getattr(other, name) for name in NAMES))

    def times(self, factor: Fraction) -> "Nutrients":
        return Nutrients(*(getattr(self, name) * factor for name in NAMES))


NAMES = tuple(field.name for field in fields(Nutrients))


def nutrients_of(composition: Composition, grams: Fraction) -> Nutrients:
    """What a weight of a food holds.

    grams: of the edible part, 0 or more.
    """
    share = grams / 100
    return Nutrients(*((getattr(composition, name) or NOTHING) * share for name in NAMES))


def quantities(nutrients: Nutrients, factors: tuple[EnergyFactor, ...]) -> Mapping[Quantity, Fraction]:
    """Every line that a table of nutrition may have, exact.

    Energy is the sum of each nutrient's grams by its factor. Total carbohydrate is the United States' word:
    with fibre, polyols and organic acids, as 21 CFR 101.9(c)(6) counts it by difference.
    """
    kj = (getattr(nutrients, factor.nutrient) * factor.kj for factor in factors)
    kcal = (getattr(nutrients, factor.nutrient) * factor.kcal for factor in factors)
    other = nutrients.fibre + nutrients.polyols + nutrients.organic_acids
    return {
        Quantity.ENERGY_KJ: sum(kj, NOTHING),
        Quantity.ENERGY_KCAL: sum(kcal, NOTHING),
        Quantity.FAT: nutrients.fat,
        Quantity.SATURATES: nutrients.saturates,
        Quantity.CARBOHYDRATE: nutrients.carbohydrate,
        Quantity.TOTAL_CARBOHYDRATE: nutrients.carbohydrate + other,
        Quantity.SUGARS: nutrients.sugars,
        Quantity.FIBRE: nutrients.fibre,
        Quantity.PROTEIN: nutrients.protein,
        Quantity.SALT: nutrients.salt,
        Quantity.SODIUM_MG: nutrients.salt / SALT_PER_SODIUM * 1000,
    }
