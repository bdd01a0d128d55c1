"""The table of substitutions against published ratios, the law and the arithmetic of chemistry."""

from fractions import Fraction
from math import isclose

import pytest

from sitegen.kitchen.larder import Ingredient
from sitegen.kitchen.substitutions import Swap
from sitegen.source.tables import read_tables

TABLES = read_tables()[0]


def swap(instead_of: str, *use: str) -> Swap:
    return next(
        row
        for row in TABLES.swaps
        if row.instead_of == instead_of and tuple(one.ingredient for one in row.use) == use
    )


def grams(instead_of: str, *use: str) -> tuple[Fraction, ...]:
    return tuple(one.grams for one in swap(instead_of, *use).use)


def row(name: str) -> Ingredient:
    found = TABLES.larder.find(name)
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("original", "use", "per_100_g"),
    [
        # Published conversions of baker's yeast: fresh to active dry 0.40, fresh to instant 0.33.
        ("fresh yeast", ("active dry yeast",), ("40",)),
        ("fresh yeast", ("instant yeast",), ("33",)),
        # The same: instant to active dry 1.25, and back 0.8.
        ("instant yeast", ("active dry yeast",), ("125",)),
        ("active dry yeast", ("instant yeast",), ("80",)),
        # Common practice: 95 g of plain flour and 5 g of baking powder.
        ("self-raising flour", ("plain flour", "baking powder"), ("95", "5")),
        # Common practice: 85 g of plain flour and 15 g of cornflour.
        ("cake flour", ("plain flour", "cornflour"), ("85", "15")),
        # Common practice: 240 g of buttermilk is 225 g of milk and 15 g of lemon juice.
        ("buttermilk", ("whole milk", "lemon juice"), ("93.75", "6.25")),
        # Common practice: 95 g of caster sugar and 5 to 6 g of treacle; 90 and 10 to 12.
        ("light muscovado sugar", ("caster sugar", "black treacle"), ("95", "5.5")),
        ("dark muscovado sugar", ("caster sugar", "black treacle"), ("90", "11")),
        # Common practice: granulated sugar, ground, with 3 % cornflour.
        ("icing sugar", ("granulated sugar", "cornflour"), ("97", "3")),
        # Common practice: three of honey, one of treacle.
        ("golden syrup", ("honey", "black treacle"), ("75", "25")),
        # Common practice: 85 g of whipping cream and 15 g of butter.
        ("double cream", ("whipping cream", "unsalted butter"), ("85", "15")),
        # Common practice: half evaporated milk, half water.
        ("whole milk", ("evaporated milk", "water"), ("50", "50")),
        # Common practice: 2 to 3 % of gluten.
        ("strong white flour", ("plain flour", "vital wheat gluten"), ("97.5", "2.5")),
        # Common practice: 1 g of agar for about 8 g of gelatine.
        ("agar", ("powdered gelatine",), ("800",)),
        # Common practice: 1 tbsp of lemon juice (15 g) meets what 5 g of cream of tartar meet.
        ("cream of tartar", ("lemon juice",), ("300",)),
        # Common practice: the same weight, ground.
        ("caster sugar", ("granulated sugar",), ("100",)),
    ],
)
def test_ratios(original: str, use: tuple[str, ...], per_100_g: tuple[str, ...]) -> None:
    assert grams(original, *use) == tuple(Fraction(text) for text in per_100_g)


def test_cream_of_tartar_meets_the_bicarbonate_mole_for_mole() -> None:
    """KHC4H4O6, 188.18 g/mol, against NaHCO3, 84.007 g/mol: 2.24 to 1; kitchens take 2 to 2.25."""
    bicarbonate, tartar = grams("baking powder", "bicarbonate of soda", "cream of tartar")
    exact = Fraction("188.18") / Fraction("84.007")
    assert isclose(tartar / bicarbonate, exact, rel_tol=0.12)
    assert tartar / bicarbonate < exact, "a little bicarbonate over, none of the acid"


def test_home_made_baking_powder_gives_the_gas_that_the_standard_asks_for() -> None:
    """NaHCO3 gives 44.01 / 84.007 of its weight as CO2; baking powder is to give at least 10 to 12 %.

    Source: the Canadian standard for baking powder, not less than 10 % of carbon dioxide.
    """
    bicarbonate, _ = grams("baking powder", "bicarbonate of soda", "cream of tartar")
    assert bicarbonate * Fraction("44.01") / Fraction("84.007") >= 10


def test_bicarbonate_is_three_to_four_times_as_strong_as_baking_powder() -> None:
    """Common practice."""
    (powder,) = grams("bicarbonate of soda", "baking powder")
    assert 300 <= powder <= 400


def test_american_self_rising_flour_has_no_more_leavening_than_the_law_lets() -> None:
    """21 CFR 137.180: not more than 4.5 parts of the acid and bicarbonate to 100 parts of flour, and salt."""
    flour, powder, salt = grams("self-raising flour", "plain flour", "baking powder", "fine salt")
    assert powder / flour <= Fraction(45, 1000)
    assert salt > 0


def test_british_self_raising_flour_gives_the_gas_that_it_must() -> None:
    """At least 0.4 % of carbon dioxide (from memory), by baking powder of 10 %."""
    _, powder = grams("self-raising flour", "plain flour", "baking powder")
    assert powder * Fraction(10, 100) >= Fraction(4, 10)


@pytest.mark.parametrize(
    ("grade", "bloom"),
    # Published tables of leaves: the middle of each grade's bloom.
    [("bronze", 140), ("silver", 160), ("gold", 205), ("platinum", 250)],
)
def test_a_leaf_of_any_grade_sets_about_like_the_powder_that_replaces_it(grade: str, bloom: int) -> None:
    """Weight times bloom is kept: a leaf of 2 g and 200 bloom is 400, powder has 225."""
    (powder,) = grams("leaf gelatine", "powdered gelatine")
    leaf = row("leaf gelatine").piece(grade)
    assert leaf is not None
    assert isclose(powder * 225, leaf.grams * bloom, rel_tol=0.16)


def test_leaf_and_powder_go_there_and_back() -> None:
    (leaves,) = grams("powdered gelatine", "leaf gelatine")
    (powder,) = grams("leaf gelatine", "powdered gelatine")
    gold = row("leaf gelatine").piece("gold")
    assert gold is not None
    assert leaves / gold.grams * powder == 100


def test_a_vanilla_pod_is_a_teaspoon_of_paste_or_one_to_two_of_extract() -> None:
    """Common practice."""
    (paste,) = grams("vanilla pod", "vanilla bean paste")
    (extract,) = grams("vanilla pod", "vanilla extract")
    a_teaspoon = {
        name: density.grams_per_ml * 5
        for name in ("vanilla bean paste", "vanilla extract")
        if (density := row(name).density)
    }
    assert paste == a_teaspoon["vanilla bean paste"]
    assert 1 <= extract / a_teaspoon["vanilla extract"] <= 2


@pytest.mark.parametrize(
    ("original", "use", "fat_of_each", "fat_wanted", "within"),
    [
        # Fat by USDA SR28: whipping cream 01053 36.1, butter 01145 81.1, milk 01077 3.3; British double
        # cream 48 %, single cream 18 % (the law's least).
        ("double cream", ("whipping cream", "unsalted butter"), ("36.1", "81.1"), "48", "5.5"),
        ("single cream", ("whipping cream", "whole milk"), ("36.1", "3.3"), "18", "0.5"),
        ("whipping cream", ("double cream", "whole milk"), ("48", "3.3"), "36", "1"),
        # Cream cheese 01017 34.4; mascarpone about 43 % (from labels, from memory).
        ("mascarpone", ("cream cheese", "whipping cream"), ("34.4", "36.1"), "43", "9"),
    ],
)
def test_creams_come_near_the_fat_of_what_they_replace(
    original: str, use: tuple[str, ...], fat_of_each: tuple[str, ...], fat_wanted: str, within: str
) -> None:
    parts = zip(grams(original, *use), fat_of_each, strict=True)
    fat = sum((part * Fraction(percent) / 100 for part, percent in parts), Fraction(0))
    assert abs(fat - Fraction(fat_wanted)) <= Fraction(within)


def test_salted_butter_is_butter_with_its_salt() -> None:
    """1.2 to 1.8 % of salt, common practice; USDA SR28 01001 has 643 mg of sodium, 1.6 % of salt."""
    _, salt = grams("salted butter", "unsalted butter", "fine salt")
    assert Fraction("1.2") <= salt <= Fraction("1.8")
