"""Worked examples with published figures: measures to grams, eggs, ovens, tins."""

from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import Amount, single
from sitegen.kitchen.eggs import edible_grams
from sitegen.kitchen.method import OvenSetting
from sitegen.kitchen.ovens import read_oven
from sitegen.kitchen.recipe import Choice, Tin
from sitegen.kitchen.tables import Tables
from sitegen.kitchen.temperatures import celsius_of, fahrenheit_of
from sitegen.kitchen.tins import hole_ml
from sitegen.kitchen.weighing import grams_of
from sitegen.source.tables import read_tables

PERCENT = Fraction(1, 100)


@pytest.fixture(scope="module")
def tables() -> Tables:
    return read_tables()[0]


def weighed(tables: Tables, number: str, unit: str, name: str, edition: str = "us-cups") -> Fraction:
    """What an amount of an ingredient weighs in a recipe of that edition, grams."""
    row = tables.larder.find(name)
    amount = Amount(single(Fraction(number)), unit)
    grams = grams_of(amount, Choice(name, name), row, tables.editions[edition], tables)
    assert grams is not None
    return grams.middle


@pytest.mark.parametrize(
    ("number", "unit", "name", "grams", "source"),
    [
        ("1", "cup", "plain flour", "125", "USDA SR28 20081"),
        ("9/4", "cup", "plain flour", "281.25", "USDA SR28 20081 x 2 1/4"),
        ("1", "cup", "self-raising flour", "125", "USDA SR28 20082"),
        ("1", "cup", "wholemeal flour", "120", "USDA SR28 20080"),
        ("1", "cup", "rye flour", "128", "USDA SR28 20063"),
        ("1", "cup", "light rye flour", "102", "USDA SR28 20065"),
        ("1", "cup", "oat flour", "104", "USDA SR28 20132"),
        ("1", "cup", "ground almonds", "95", "USDA SR28 12061"),
        ("1", "cup", "fine polenta", "122", "USDA SR28 20020"),
        ("1", "cup", "cornflour", "128", "USDA SR28 20027"),
        ("1", "cup", "granulated sugar", "200", "USDA SR28 19335"),
        ("1", "cup", "icing sugar", "120", "USDA SR28 19336"),
        ("1", "cup", "soft light brown sugar", "220", "USDA SR28 19334"),
        ("1", "cup", "honey", "339", "USDA SR28 19296"),
        ("1", "cup", "black treacle", "337", "USDA SR28 19304"),
        ("1", "cup", "maple syrup", "315", "USDA SR28 19353"),
        ("1", "cup", "glucose syrup", "341", "USDA SR28 19350"),
        ("1", "cup", "unsalted butter", "227", "USDA SR28 01145"),
        ("1", "tbsp", "unsalted butter", "14.2", "USDA SR28 01145"),
        ("1", "stick", "unsalted butter", "113", "USDA SR28 01145"),
        ("1", "cup", "white vegetable fat", "205", "USDA SR28 04615"),
        ("1", "tbsp", "olive oil", "13.5", "USDA SR28 04053"),
        ("1", "cup", "sunflower oil", "218", "USDA SR28 04060"),
        ("1", "cup", "whole milk", "244", "USDA SR28 01077"),
        ("1", "cup", "whipping cream", "238", "USDA SR28 01053"),
        ("1", "cup", "natural yoghurt", "245", "USDA SR28 01116"),
        ("1", "cup", "cream cheese", "232", "USDA SR28 01017"),
        ("1", "cup", "cocoa powder", "86", "USDA SR28 19165"),
        ("1", "tbsp", "cocoa powder", "5.4", "USDA SR28 19165"),
        ("1", "cup", "porridge oats", "81", "USDA SR28 08120"),
        ("1", "tsp", "bicarbonate of soda", "4.6", "USDA SR28 18372"),
        ("1", "tsp", "baking powder", "4.6", "USDA SR28 18369"),
        ("1", "tsp", "cream of tartar", "3", "USDA SR28 18373"),
        ("1", "tsp", "fine salt", "6", "USDA SR28 02047"),
        ("1", "packet", "active dry yeast", "7.2", "USDA SR28 18375"),
        ("1", "tsp", "vanilla extract", "4.2", "USDA SR28 02050"),
        ("1", "cup", "lemon juice", "244", "USDA SR28 09152"),
        ("1", "tbsp", "lemon zest", "6", "USDA SR28 09156"),
        ("1", "cup", "smooth peanut butter", "258", "USDA SR28 16098"),
        ("1", "cup", "raisins", "145", "USDA SR28 09298"),
        ("1", "floz", "rum", "27.8", "USDA SR28 14050"),
        ("1", "cup", "dark chocolate chips", "168", "USDA SR28 19080"),
        ("1", "cup", "egg", "243", "USDA SR28 01123"),
    ],
)
def test_an_american_measure_weighs_what_is_published(
    tables: Tables, number: str, unit: str, name: str, grams: str, source: str
) -> None:
    ours = weighed(tables, number, unit, name)
    assert abs(ours - Fraction(grams)) <= Fraction(grams) * PERCENT / 2, f"{source}: {float(ours):.4g} g"


@pytest.mark.parametrize(
    ("name", "method", "grams", "source"),
    [
        ("strong white flour", "scooped", "137", "USDA SR28 20083, as its twin 20129 'dipped'"),
        ("cake flour", "scooped", "137", "USDA SR28 20084 'dipped'"),
        ("icing sugar", "sifted", "100", "USDA SR28 19336"),
        ("soft light brown sugar", "spooned", "145", "USDA SR28 19334 'unpacked'"),
    ],
)
def test_a_cup_filled_another_way_weighs_what_is_published(
    tables: Tables, name: str, method: str, grams: str, source: str
) -> None:
    row = tables.larder.find(name)
    assert row is not None
    density = next(density for density in row.densities if density.method == method)
    ours = density.grams_per_ml * tables.measures.unit_ml("us_cup")
    assert abs(ours - Fraction(grams)) <= Fraction(grams) * PERCENT / 2, source


# One density, three cups: USDA SR28 20081 (125 g a US cup of 236.588 ml) and 19296 by volume.
@pytest.mark.parametrize(
    ("measure", "name", "grams"),
    [
        ("metric_cup", "plain flour", "132.1"),
        ("us_label_cup", "plain flour", "126.8"),
        ("australian_tablespoon", "honey", "28.7"),
    ],
)
def test_another_cup_holds_in_proportion(tables: Tables, measure: str, name: str, grams: str) -> None:
    row = tables.larder.find(name)
    assert row is not None
    assert row.density is not None
    ours = tables.measures.unit_ml(measure) * row.density.grams_per_ml
    assert abs(ours - Fraction(grams)) <= Fraction(grams) * PERCENT / 2


def test_150_g_of_granulated_sugar_is_three_quarters_of_a_us_cup(tables: Tables) -> None:
    """USDA SR28 19335: 200 g a cup."""
    assert weighed(tables, "3/4", "cup", "granulated sugar") == 150


def test_a_cup_of_whole_egg_is_4_86_large_eggs(tables: Tables) -> None:
    """USDA SR28 01123: '1 cup (4.86 large eggs)', 243 g."""
    assert weighed(tables, "4.86", "", "egg") == weighed(tables, "1", "cup", "egg") == 243


# Reg. (EC) 589/2008, Article 4, with USDA's 12 % of shell, at the middle of the grade.
@pytest.mark.parametrize(("size", "three_g"), [("medium", "153.1"), ("large", "179.5")])
def test_three_british_eggs_weigh_the_middle_of_their_grade(tables: Tables, size: str, three_g: str) -> None:
    assert abs(3 * edible_grams(tables.eggs, "uk", size) - Fraction(three_g)) < 1


@pytest.mark.parametrize(
    ("mark", "fahrenheit", "exact_c"),
    [
        ("1/4", 225, "107.2"),
        ("1/2", 250, "121.1"),
        ("1", 275, "135.0"),
        ("2", 300, "148.9"),
        ("3", 325, "162.8"),
        ("4", 350, "176.7"),
        ("5", 375, "190.6"),
        ("6", 400, "204.4"),
        ("7", 425, "218.3"),
        ("8", 450, "232.2"),
        ("9", 475, "246.1"),
    ],
)
def test_a_gas_mark_in_both_scales(tables: Tables, mark: str, fahrenheit: int, exact_c: str) -> None:
    """GNU units, gasmark and tempC."""
    row = tables.ovens.mark_named(Fraction(mark))
    assert row is not None
    assert row.fahrenheit == fahrenheit
    assert abs(celsius_of(row.fahrenheit) - Fraction(exact_c)) <= Fraction(5, 100)


def test_180_c_is_356_f() -> None:
    """F = 1.8 C + 32."""
    assert fahrenheit_of(Fraction(180)) == 356


# Published UK gas-mark tables (six compared): fan 20 C below conventional, F and mark beside it.
@pytest.mark.parametrize(
    ("fan_c", "conventional_c", "fahrenheit", "gas"),
    [
        (90, 110, 225, "1/4"),
        (100, 120, 250, "1/2"),
        (120, 140, 275, "1"),
        (130, 150, 300, "2"),
        (140, 160, 325, "3"),
        (150, 170, 325, "3"),
        (160, 180, 350, "4"),
        (170, 190, 375, "5"),
        (180, 200, 400, "6"),
        (200, 220, 425, "7"),
        (210, 230, 450, "8"),
        (220, 240, 475, "9"),
    ],
)
def test_a_fan_setting_on_every_scale(
    tables: Tables, fan_c: int, conventional_c: int, fahrenheit: int, gas: str
) -> None:
    reading = read_oven(OvenSetting(Fraction(fan_c), "celsius", fan=True), tables.ovens)
    assert (reading.conventional_c, reading.fahrenheit, reading.gas) == (conventional_c, fahrenheit, gas)


# Capacities by geometry and by makers' labels, ml.
@pytest.mark.parametrize(
    ("name", "lowest_ml", "highest_ml", "source"),
    [
        ("900 g loaf", 1400, 1900, "makers' labels 1.4 to 1.9 l"),
        ("450 g loaf", 700, 900, "makers' labels 0.7 to 0.9 l"),
        ("muffin", 80, 100, "makers' labels 80 to 100 ml a hole"),
        ("bun", 40, 60, "makers' labels 40 to 60 ml a hole"),
        ("mini-muffin", 25, 30, "makers' labels 25 to 30 ml a hole"),
        ("jumbo muffin", 177, 266, "US charts 3/4 to 1 cup, geometry up to an eighth more"),
        ("jelly-roll", 2366, 2603, "US charts 10 cups, geometry up to a tenth more"),
    ],
)
def test_a_tin_known_by_name_holds_what_is_printed(
    tables: Tables, name: str, lowest_ml: int, highest_ml: int, source: str
) -> None:
    named = tables.tins.tin_named(name)
    assert named is not None
    assert lowest_ml <= hole_ml(named.tin, tables.tins) <= highest_ml, source


def test_a_22_cm_ring_holds_1_2_to_1_5_litres(tables: Tables) -> None:
    """Makers' labels; by Pappus 1,402 ml with a core of 8 cm and a half-round floor."""
    width, depth = Fraction(22), tables.tins.shape("ring").depth_cm
    ring = Tin("ring", width, width, depth, width, width)
    assert 1200 <= hole_ml(ring, tables.tins) <= 1500
    assert round(hole_ml(ring, tables.tins)) == 1402
