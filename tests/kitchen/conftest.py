"""Small tables of the trade, so that each test shows the figures it rests on."""

from fractions import Fraction

import pytest

from sitegen.kitchen.cautions import CautionRow
from sitegen.kitchen.editions import Edition, Measuring
from sitegen.kitchen.eggs import EggRow, EggTable
from sitegen.kitchen.larder import Density, Ingredient, Larder, Piece
from sitegen.kitchen.measures import Measures
from sitegen.kitchen.ovens import GasMark, OvenTable, PrintedRow
from sitegen.kitchen.recipe import Tin
from sitegen.kitchen.tables import Tables
from sitegen.kitchen.tins import NamedTin, NominalLength, TinShape, TinTable, TinWords

DEFINITIONS = """
gram = [mass] = g
milligram = 1 / 1000 * gram = mg
kilogram = 1000 * gram = kg
pound = 453.59237 * gram = lb
ounce = 1 / 16 * pound = oz
stick = 1 / 4 * pound
milliliter = [volume] = ml
liter = 1000 * milliliter = l
metric_teaspoon = 5 * milliliter
metric_tablespoon = 15 * milliliter
australian_tablespoon = 20 * milliliter
metric_cup = 250 * milliliter
us_gallon = 3785.411784 * milliliter
us_pint = 1 / 8 * us_gallon
us_cup = 1 / 2 * us_pint
us_fluid_ounce = 1 / 8 * us_cup
us_tablespoon = 1 / 16 * us_cup
us_teaspoon = 1 / 3 * us_tablespoon
us_label_cup = 240 * milliliter
imperial_pint = 568.26125 * milliliter
imperial_fluid_ounce = 1 / 20 * imperial_pint
centimeter = [length] = cm
millimeter = 1 / 10 * centimeter = mm
inch = 2.54 * centimeter = in
"""
UNIT_NAMES = {
    "g": ("g", "gram", "grams"),
    "lb": ("lb", "pound", "pounds"),
    "tsp": ("tsp", "teaspoon", "teaspoons"),
    "tbsp": ("tbsp", "tablespoon", "tablespoons"),
    "cup": ("cup", "cups"),
    "leaf": ("leaf", "leaves"),
}


def edition(key: str, region: str, teaspoon: str, tablespoon: str, cup: str, egg_size: str) -> Edition:
    return Edition(
        key=key,
        title=key,
        language="en",
        region=region,
        measuring=Measuring.WEIGHT,
        teaspoon=teaspoon,
        tablespoon=tablespoon,
        cup=cup,
        oven_scales=("fan",),
        lengths="cm",
        egg_region=region,
        egg_size=egg_size,
        paper="a4",
    )


BRITISH = edition("british", "uk", "metric_teaspoon", "metric_tablespoon", "metric_cup", "medium")
AMERICAN = edition("us", "us", "us_teaspoon", "us_tablespoon", "us_cup", "large")
AUSTRALIAN = edition("au", "au", "metric_teaspoon", "australian_tablespoon", "metric_cup", "large")


def eggs(region: str, size: str, whole: int, white: int, yolk: int, shell_from: str) -> EggRow:
    return EggRow(
        region, size, Fraction(whole), Fraction(white), Fraction(yolk), "usda-sr28", Fraction(shell_from)
    )


EGGS = EggTable(
    (
        eggs("uk", "small", 44, 29, 15, "0"),
        eggs("uk", "medium", 51, 34, 17, "53"),
        eggs("uk", "large", 60, 40, 20, "63"),
        eggs("us", "medium", 44, 29, 15, "49.61"),
        eggs("us", "large", 50, 33, 17, "56.7"),
    )
)


def food(key: str, *roles: str, **facts: object) -> Ingredient:
    return Ingredient(key=key, names={}, roles=frozenset(roles), **facts)  # type: ignore[arg-type]


def fills(grams: int, ml: str, source: str) -> tuple[Density, ...]:
    return (Density("level", Fraction(grams), Fraction(ml), source),)


LARDER = Larder.of(
    (
        food("plain flour", "flour", densities=fills(125, "236.5882365", "usda-sr28 20081")),
        food("milk", "liquid", densities=fills(244, "236.5882365", "usda-sr28 01077")),
        food("caster sugar", "sugar"),
        food("butter", "fat"),
        food("egg", "egg", plural="eggs"),
        food("egg white", "egg", plural="egg whites"),
        food("egg yolk", "egg", plural="egg yolks"),
        food("duck egg", "egg", pieces=(Piece(Fraction(70), "usda-sr28 01138"),)),
        food("leaf gelatine", "gelatine", pieces=(Piece(Fraction(2), "trade", size="leaf"),)),
        food("banana", "fruit", pieces=(Piece(Fraction(118), "usda-sr28 09040", size="medium"),)),
        food(
            "lemon",
            "fruit",
            pieces=(
                Piece(Fraction(84), "usda-sr28 09150"),
                Piece(Fraction(6), "common-practice", part="zest"),
            ),
        ),
    )
)


def row(celsius: int, fahrenheit: int, gas: str) -> PrintedRow:
    return PrintedRow(Fraction(celsius), Fraction(fahrenheit), gas)


OVENS = OvenTable(
    gas_marks=(
        GasMark("1/4", Fraction(225)),
        GasMark("1/2", Fraction(250)),
        *(GasMark(str(mark), Fraction(250 + 25 * mark)) for mark in range(1, 10)),
    ),
    printed=(
        row(110, 225, "1/4"),
        row(120, 250, "1/2"),
        row(140, 275, "1"),
        row(150, 300, "2"),
        row(160, 325, "3"),
        row(170, 325, "3"),
        row(180, 350, "4"),
        row(190, 375, "5"),
        row(200, 400, "6"),
        row(220, 425, "7"),
        row(230, 450, "8"),
        row(240, 475, "9"),
    ),
    fan_offset_c=Fraction(20),
    fan_offset_f=Fraction(25),
    lowest_c=Fraction(30),
    highest_c=Fraction(500),
    step_c=Fraction(10),
    step_f=Fraction(25),
)


def shape(
    key: str, solid: str, *words: str, depth: str = "5", core_share: str = "0", keeps: str = "fill"
) -> TinShape:
    names = {"uk": TinWords(f"{{size}} {key} tin", f"{{number}} {{size}} {key} tins")}
    return TinShape(
        key,
        solid,
        words,
        names,
        Fraction(depth),
        "common-practice",
        core_share=Fraction(core_share),
        keeps=keeps,
    )


MUFFIN = Tin(
    shape="muffin",
    width_cm=Fraction(7),
    length_cm=Fraction(7),
    depth_cm=Fraction("3.2"),
    base_width_cm=Fraction(5),
    base_length_cm=Fraction(5),
    holes=12,
)
TINS = TinTable(
    shapes=(
        shape("round", "cylinder", "round", "cake", keeps="depth"),
        shape("square", "box", "square", keeps="depth"),
        shape("rectangle", "box", "rectangle", "traybake", depth="4", keeps="depth"),
        shape("loaf", "prismoid", "loaf", depth="6.5"),
        shape("muffin", "frustum", "muffin"),
        shape("ring", "ring", "ring", core_share="4/11"),
        shape("tube", "tube", "tube", core_share="3/10"),
        shape("tray", "", "tray", "baking tray", depth="1"),
    ),
    named=(NamedTin("muffin", MUFFIN, "common-practice", ("12-hole muffin tin",)),),
    nominal=(NominalLength(Fraction(20), Fraction(8)), NominalLength(Fraction(23), Fraction(9))),
)


def small_tables(cautions: tuple[CautionRow, ...] = ()) -> Tables:
    return Tables(
        measures=Measures.of(DEFINITIONS, UNIT_NAMES),
        larder=LARDER,
        tins=TINS,
        ovens=OVENS,
        eggs=EGGS,
        editions={"uk": BRITISH, "us": AMERICAN, "au": AUSTRALIAN},
        cautions=cautions,
        spelling={},
        sources={},
    )


@pytest.fixture(scope="session")
def tables() -> Tables:
    return small_tables()


@pytest.fixture(scope="session")
def measures(tables: Tables) -> Measures:
    return tables.measures
