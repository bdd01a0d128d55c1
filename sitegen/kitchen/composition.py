"""From what a food table says of a food to what a label of the EU and the UK counts.

USDA's table counts protein by the food's own nitrogen factor, and fibre and organic acids among its
carbohydrate, which is what is left of 100 g when all else is taken off. A label counts nitrogen x 6.25, and
carbohydrate as what the body takes up. Source: Regulation (EU) No 1169/2011, Annex I.
"""

from dataclasses import dataclass
from fractions import Fraction

from sitegen.kitchen.larder import Composition

PROTEIN_PER_NITROGEN = Fraction(25, 4)
SALT_PER_SODIUM = Fraction(5, 2)
NOTHING = Fraction(0)


@dataclass(frozen=True)
class FoodRow:
    """What a food table says of 100 g of the edible part: grams, sodium in milligrams, all as published.

    carbohydrate: by difference, fibre included. nitrogen_factor: by which the table's protein was counted.
    water: None where the table does not say. source: a key of `data/sources.yaml`, with the row's own number.
    """

    protein: Fraction
    fat: Fraction
    saturates: Fraction
    carbohydrate: Fraction
    sugars: Fraction
    fibre: Fraction
    sodium_mg: Fraction
    water: Fraction | None
    alcohol: Fraction
    polyols: Fraction
    organic_acids: Fraction
    nitrogen_factor: Fraction
    source: str


def label_composition(row: FoodRow) -> Composition:
    """A food as labels count it, grams in 100 g, exact.

    Protein is nitrogen x 6.25. Carbohydrate loses the fibre; it also loses what the protein gains, since it
    is a difference, so that nothing is counted twice; but it is never less than the sugars that were
    measured. Salt is sodium x 2.5.
    """
    protein = row.protein * PROTEIN_PER_NITROGEN / row.nitrogen_factor
    available = row.carbohydrate - row.fibre - (protein - row.protein)
    return Composition(
        fat=row.fat,
        saturates=row.saturates,
        carbohydrate=max(available, row.sugars, NOTHING),
        sugars=row.sugars,
        fibre=row.fibre,
        protein=protein,
        salt=row.sodium_mg / 1000 * SALT_PER_SODIUM,
        source=row.source,
        water=row.water,
        alcohol=row.alcohol,
        polyols=row.polyols,
        organic_acids=row.organic_acids,
    )
