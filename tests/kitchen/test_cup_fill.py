"""A cup of flour is not the same in every region: it depends on how it is filled."""

from fractions import Fraction

import pytest

from sitegen.kitchen.larder import Density, Ingredient

FLOUR = Ingredient(
    "plain flour",
    {},
    densities=(
        Density("spooned", Fraction(125), Fraction(250), "usda-sr28 20081"),
        Density("scooped", Fraction(150), Fraction(250), "gnu-units flour_scooped"),
    ),
)
BROWN_SUGAR = Ingredient(
    "soft light brown sugar",
    {},
    densities=(
        Density("packed", Fraction(220), Fraction(250), "usda-sr28 19334"),
        Density("spooned", Fraction(145), Fraction(250), "usda-sr28 19334"),
    ),
)


@pytest.mark.parametrize(
    ("ingredient", "fill", "cup_g"),
    [
        (FLOUR, "spooned", 125),
        (FLOUR, "scooped", 150),
        (FLOUR, "poured", 125),  # a way that nobody has weighed: the usual one
        (BROWN_SUGAR, "spooned", 220),  # brown sugar is packed, however flour is filled
        (BROWN_SUGAR, "scooped", 220),
    ],
)
def test_what_is_usually_spooned_goes_by_the_regions_way(
    ingredient: Ingredient, fill: str, cup_g: int
) -> None:
    density = ingredient.density_by(fill)
    assert density is not None
    assert density.grams_per_ml * 250 == cup_g


def test_what_nobody_has_weighed_has_no_density() -> None:
    assert Ingredient("moonberry jam", {}).density_by("spooned") is None
