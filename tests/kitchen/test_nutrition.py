"""From a food table's row to what a label counts, and from grams to energy."""

from dataclasses import replace
from fractions import Fraction

import pytest

from sitegen.kitchen.composition import FoodRow, label_composition
from sitegen.kitchen.nutrition import EnergyFactor, Nutrients, Quantity, nutrients_of, quantities

NONE = Fraction(0)
FLOUR = FoodRow(
    protein=Fraction("10.33"),
    fat=Fraction("0.98"),
    saturates=Fraction("0.155"),
    carbohydrate=Fraction("76.31"),
    sugars=Fraction("0.27"),
    fibre=Fraction("2.7"),
    sodium_mg=Fraction(2),
    water=Fraction("11.92"),
    alcohol=NONE,
    polyols=NONE,
    organic_acids=NONE,
    nitrogen_factor=Fraction("5.7"),
    source="usda-sr28 20081",
)
FACTORS = (
    EnergyFactor("fat", Fraction(37), Fraction(9)),
    EnergyFactor("carbohydrate", Fraction(17), Fraction(4)),
    EnergyFactor("protein", Fraction(17), Fraction(4)),
    EnergyFactor("fibre", Fraction(8), Fraction(2)),
)


def test_protein_is_counted_again_by_6_25() -> None:
    assert label_composition(FLOUR).protein == Fraction("10.33") * Fraction("6.25") / Fraction("5.7")


def test_carbohydrate_loses_its_fibre_and_what_the_protein_gains() -> None:
    found = label_composition(FLOUR)
    assert found.carbohydrate + found.fibre + found.protein == Fraction("76.31") + Fraction("10.33")


def test_carbohydrate_is_never_less_than_its_sugars() -> None:
    peanuts = replace(FLOUR, protein=Fraction("24.35"), sugars=Fraction(76))
    assert label_composition(peanuts).carbohydrate == 76


def test_there_is_never_less_than_no_carbohydrate() -> None:
    gelatine = replace(FLOUR, protein=Fraction("85.6"), carbohydrate=NONE, sugars=NONE, fibre=NONE)
    assert label_composition(gelatine).carbohydrate == 0


def test_salt_is_two_and_a_half_times_the_sodium() -> None:
    assert label_composition(replace(FLOUR, sodium_mg=Fraction(643))).salt == Fraction("1.6075")


def test_energy_of_flour_by_the_law_is_350_kcal() -> None:
    found = quantities(nutrients_of(label_composition(FLOUR), Fraction(100)), FACTORS)
    assert found[Quantity.ENERGY_KCAL] == Fraction("349.98")
    assert found[Quantity.ENERGY_KJ] == 17 * (Fraction("76.31") - Fraction("2.7") + Fraction("10.33")) + (
        37 * Fraction("0.98") + 8 * Fraction("2.7")
    )


@pytest.mark.parametrize("grams", [0, 1, 250])
def test_a_weight_holds_its_share_of_100_g(grams: int) -> None:
    assert nutrients_of(label_composition(FLOUR), Fraction(grams)).fat == Fraction("0.98") * grams / 100


def test_water_that_no_table_gives_counts_as_none() -> None:
    assert nutrients_of(label_composition(replace(FLOUR, water=None)), Fraction(100)).water == 0


def test_nutrients_add_up_and_divide() -> None:
    one = Nutrients(fat=Fraction(3), sugars=Fraction(1))
    assert one.plus(one).times(Fraction(1, 2)) == one


def test_total_carbohydrate_has_the_fibre_in_it() -> None:
    some = Nutrients(
        carbohydrate=Fraction(30), fibre=Fraction(4), polyols=Fraction(1), organic_acids=Fraction(2)
    )
    assert quantities(some, FACTORS)[Quantity.TOTAL_CARBOHYDRATE] == 37


def test_sodium_is_told_in_milligrams() -> None:
    assert quantities(Nutrients(salt=Fraction(5, 2)), FACTORS)[Quantity.SODIUM_MG] == 1000
