"""Worked formulas and bands of trade schools and handbooks, held against the project's own tables.

'Common practice' marks what schools and handbooks agree on without a single standard.
"""

from collections.abc import Mapping
from fractions import Fraction

import pytest

from sitegen.kitchen.balances import Finding, unusual
from sitegen.kitchen.contents import Contents, Held
from sitegen.kitchen.dough_temperature import ice_share, measured_friction, water_temperature
from sitegen.kitchen.doughs import DoughTable
from sitegen.kitchen.formulas import DoughFormula, dough_formula
from sitegen.kitchen.pieces import flour_for_pieces
from sitegen.kitchen.recipe import Choice
from sitegen.kitchen.tables import Tables
from sitegen.source.tables import read_tables

PRACTICE = "common practice"
POINT = Fraction(1, 1000)
"""A tenth of a percentage point."""


@pytest.fixture(scope="module")
def tables() -> Tables:
    return read_tables()[0]


@pytest.fixture(scope="module")
def doughs(tables: Tables) -> DoughTable:
    assert tables.doughs is not None
    return tables.doughs


def held(tables: Tables, weights: Mapping[str, str | int], brought_by: str = "") -> Contents:
    """'plain flour': 100 -> what the larder knows as that, 100 g of it."""
    found = []
    for name, grams in weights.items():
        row = tables.larder.find(name)
        assert row is not None, name
        found.append(Held(Choice(name, row.key), row, Fraction(grams), brought_by))
    return tuple(found)


def near(figure: Fraction, percent: str) -> bool:
    return abs(figure - Fraction(percent) / 100) <= POINT / 2 + Fraction(1, 10**9)


# ------------------------------------------------------------------------------ baker's percentages
HONEY_DOUGH: Mapping[str, str | int] = {
    "strong white flour": 325, "wholemeal flour": 50, "whole milk": 140, "egg": 51,
}  # fmt: skip


def honey_dough(tables: Tables, doughs: DoughTable, more: Mapping[str, str | int]) -> DoughFormula:
    """Poolish of 125 g flour and 125 g water, in a dough with milk and egg."""
    poolish = held(tables, {"strong white flour": 125, "water": 125}, "Poolish")
    kinds = {"Poolish": tables.balances.kind("poolish")}
    formula = dough_formula(
        (*poolish, *held(tables, {**HONEY_DOUGH, **more})), kinds, tables.balances, doughs.water
    )
    assert formula is not None
    return formula


def test_the_worked_dough_has_500_g_of_flour_a_quarter_of_it_pre_fermented(
    tables: Tables, doughs: DoughTable
) -> None:
    formula = honey_dough(tables, doughs, {})
    assert formula.flour_g == 500
    assert formula.prefermented == Fraction(1, 4)
    assert near(formula.hydration, "53")


@pytest.mark.parametrize(
    ("more", "all_water"),
    [({}, "57.4"), ({"honey": 30, "unsalted butter": 60}, "60.6")],
    ids=["egg and milk", "honey and butter too"],
)
def test_the_water_really_present(
    tables: Tables, doughs: DoughTable, more: Mapping[str, str | int], all_water: str
) -> None:
    """Milk x 0.88, whole egg x 0.76, butter x 0.18, honey x 0.17: USDA SR, water, rounded."""
    formula = honey_dough(tables, doughs, more)
    assert abs(formula.all_water - Fraction(all_water) / 100) <= POINT


@pytest.mark.parametrize(
    ("name", "percent", "source"),
    [
        ("whole milk", "88", "USDA SR28 01077: 88.13"),
        ("egg", "76", "USDA SR28 01123: 76.15"),
        ("egg white", "88", "USDA SR28 01124: 87.57"),
        ("egg yolk", "52", "USDA SR28 01125: 52.31"),
        ("unsalted butter", "18", "USDA SR28 01145: 17.94"),
        ("honey", "17", "USDA SR28 19296: 17.10"),
        ("whipping cream", "58", "USDA SR28 01053: 57.71"),
        ("natural yoghurt", "88", "USDA SR28 01116: 87.90"),
    ],
)
def test_the_share_of_water(tables: Tables, doughs: DoughTable, name: str, percent: str, source: str) -> None:
    (one,) = held(tables, {name: 100})
    assert abs(doughs.water.grams(one) - Fraction(percent)) <= Fraction(1, 2), source


@pytest.mark.parametrize(
    ("name", "flour", "source"),
    [
        ("sourdough starter", "1/2", "common practice: 100 % hydration, as much water as flour"),
        ("stiff sourdough starter", "2/3", "common practice: 50 % hydration, half as much water as flour"),
    ],
)
def test_a_starter_splits_into_flour_and_water(tables: Tables, name: str, flour: str, source: str) -> None:
    starter = held(tables, {name: 90})
    assert tables.balances.weight(starter, "flour") == 90 * Fraction(flour), source
    assert tables.balances.weight(starter, "flour", "liquid") == 90


@pytest.mark.parametrize(
    ("name", "instant", "source"),
    [
        ("fresh yeast", "1/3", "published conversions: fresh 1 to instant 0.33"),
        ("active dry yeast", "4/5", "common practice: instant x 1.25 is active dry"),
        ("instant yeast", "1", "by definition"),
    ],
)
def test_yeast_is_counted_as_instant(tables: Tables, name: str, instant: str, source: str) -> None:
    assert tables.balances.weight(held(tables, {name: 30}), "yeast") == 30 * Fraction(instant), source


def test_flour_for_a_wanted_piece() -> None:
    """Common practice: pieces x weight / sum of percentages; 10 of 85 g at 170 %, 500 g of flour."""
    assert flour_for_pieces(Fraction(10), Fraction(85), Fraction("1.7"), Fraction(0)) == 500


# ----------------------------------------------------------------------------- dough temperature
@pytest.mark.parametrize(
    ("wanted", "room", "flour", "friction", "others", "water", "source"),
    [
        (26, 22, 21, 8, (20,), 33, "published notes of baking schools, worked with a preferment"),
        (25, 21, 20, 9, (), 25, "published notes of baking schools, three factors"),
        (24, 20, 20, 10, (20, 20), 30, "common practice: one more factor for each large part"),
        (78, 72, 70, 24, (), 68, "published notes in Fahrenheit: the rule holds in either scale"),
    ],
)
def test_the_water_of_a_dough(
    wanted: int, room: int, flour: int, friction: int, others: tuple[int, ...], water: int, source: str
) -> None:
    parts = tuple(map(Fraction, others))
    found = water_temperature(Fraction(wanted), Fraction(room), Fraction(flour), Fraction(friction), *parts)
    assert found == water, source
    assert measured_friction(Fraction(wanted), Fraction(room), Fraction(flour), found, *parts) == friction


@pytest.mark.parametrize(
    ("mixer", "fahrenheit", "source"),
    [
        ("by hand", 5, "published figure"),
        ("stand mixer", 20, "published figure"),
        ("food processor", 25, "published figure"),
    ],
)
def test_friction_to_begin_with(doughs: DoughTable, mixer: str, fahrenheit: int, source: str) -> None:
    """A friction in degrees F over 1.8 is one in degrees C; a stand mixer has 8 to 12 C."""
    assert abs(doughs.temperatures.friction[mixer] - Fraction(fahrenheit) / Fraction("1.8")) <= Fraction(
        3, 2
    ), source


def test_melting_ice_takes_80_kcal_a_kilogram() -> None:
    """Tap 20 C to 0 C: a fifth of the water as ice, (20 - 0) / (20 + 80)."""
    assert ice_share(Fraction(20), Fraction(0)) == Fraction(1, 5)


# ------------------------------------------------------------------------------------- balances
CLASSICS: tuple[tuple[str, Mapping[str, str | int], str], ...] = (
    ("creamed cake", {"plain flour": 100, "caster sugar": 100, "unsalted butter": 100, "egg": 100},
     "common practice: equal weights (pound cake)"),
    ("creamed cake", {"self-raising flour": 200, "caster sugar": 200, "unsalted butter": 200, "egg": 204},
     "common practice: four eggs and their weight in each (UK sandwich)"),
    ("high-ratio cake", {"cake flour": 100, "caster sugar": 130, "unsalted butter": 55, "egg": 65,
                         "whole milk": 80}, "trade schools: more sugar than flour, eggs than fat"),
    ("whisked sponge", {"plain flour": 100, "caster sugar": 100, "egg": 175, "unsalted butter": 30},
     "common practice: genoise"),
    ("shortbread", {"plain flour": 300, "unsalted butter": 200, "caster sugar": 100},
     "common practice: 1 : 2 : 3"),
    ("shortcrust", {"plain flour": 200, "unsalted butter": 100, "water": 40}, "common practice: half fat"),
    ("shortcrust", {"plain flour": 300, "unsalted butter": 200, "water": 100}, "common practice: 3 : 2 : 1"),
    ("choux", {"water": 250, "unsalted butter": 100, "plain flour": 150, "egg": 250}, PRACTICE),
    ("puff pastry", {"plain flour": 500, "unsalted butter": 450, "water": 250}, PRACTICE),
    ("simple buttercream", {"unsalted butter": 250, "icing sugar": 500, "whole milk": 30},
     "common practice: one to two"),
    ("Swiss meringue buttercream", {"egg white": 150, "caster sugar": 250, "unsalted butter": 375},
     PRACTICE),
    ("pouring ganache", {"dark chocolate": 200, "double cream": 200}, "common practice: one to one"),
    ("ganache glaze", {"dark chocolate": 200, "double cream": 200}, "common practice: one to one"),
    ("ganache glaze", {"dark chocolate": 200, "double cream": 270}, "common practice: 1 : 1.2 to 1.5"),
    ("ganache drip", {"dark chocolate": 200, "double cream": 200}, "common practice: one to one"),
    ("truffle ganache", {"dark chocolate": 400, "double cream": 200}, "common practice: two to one"),
    ("firm white ganache", {"white chocolate": 600, "double cream": 200}, "common practice: three to one"),
    ("whipped ganache", {"white chocolate": 100, "double cream": 225}, PRACTICE),
    ("pastry cream", {"whole milk": 500, "egg yolk": 80, "caster sugar": 100, "cornflour": 40},
     "common practice: on 1,000 of milk, 120 to 240 yolk, 150 to 280 sugar, 60 to 100 cornflour"),
    ("pouring custard", {"whole milk": 500, "egg yolk": 100, "caster sugar": 100}, PRACTICE),
    ("baked custard", {"double cream": 500, "egg yolk": 100, "caster sugar": 80}, PRACTICE),
    ("curd", {"lemon juice": 100, "caster sugar": 125, "egg": 150, "unsalted butter": 90}, PRACTICE),
    ("French meringue", {"egg white": 100, "caster sugar": 200}, "common practice: twice the sugar"),
    ("Italian meringue", {"egg white": 100, "caster sugar": 200, "water": 60}, PRACTICE),
    ("almond shells", {"ground almonds": 150, "icing sugar": 150, "caster sugar": 150, "egg white": 110},
     PRACTICE),
    ("royal icing", {"egg white": 40, "icing sugar": 240}, PRACTICE),
    ("caramel sauce", {"caster sugar": 200, "double cream": 160, "unsalted butter": 80, "fine salt": 4},
     PRACTICE),
    ("praline", {"hazelnuts": 200, "caster sugar": 150}, PRACTICE),
    ("scone", {"plain flour": 250, "baking powder": 14, "caster sugar": 30, "unsalted butter": 60,
               "whole milk": 150}, "common practice: baking powder 4 to 7 %"),
    ("tin loaf", {"strong white flour": 500, "water": 320, "fine salt": 10, "instant yeast": 5},
     "common practice: 58 to 68 % water, 2 % salt, 1 % instant yeast"),
    ("baguette", {"strong white flour": 500, "water": 350, "fine salt": 10, "fresh yeast": 10}, PRACTICE),
    ("brioche", {"strong white flour": 500, "egg": 250, "whole milk": 60, "unsalted butter": 250,
                 "caster sugar": 60, "fine salt": 10, "instant yeast": 9}, PRACTICE),
    ("bagel", {"strong white flour": 500, "water": 270, "fine salt": 10, "instant yeast": 4}, PRACTICE),
    ("poolish", {"strong white flour": 100, "water": 100, "instant yeast": "0.2"}, PRACTICE),
    ("biga", {"strong white flour": 100, "water": 55, "instant yeast": "0.3"}, PRACTICE),
)  # fmt: skip


def found(tables: Tables, kind: str, weights: Mapping[str, str | int]) -> list[Finding]:
    known = tables.balances.kind(kind)
    assert known is not None or not kind, kind
    contents = held(tables, weights)
    return list(unusual(contents, contents, known, tables.balances))


@pytest.mark.parametrize(("kind", "weights", "source"), CLASSICS)
def test_a_classic_is_in_balance(
    tables: Tables, kind: str, weights: Mapping[str, str | int], source: str
) -> None:
    assert found(tables, kind, weights) == [], source


FLOUR: Mapping[str, str | int] = {"plain flour": 100}


@pytest.mark.parametrize(
    ("kind", "weights", "code", "source"),
    [
        ("creamed cake", {**FLOUR, "caster sugar": 200, "unsalted butter": 100, "egg": 100},
         "balance-unusual", "trade schools: sugar not above flour"),
        ("pouring ganache", {"dark chocolate": 300, "double cream": 100}, "balance-unusual", PRACTICE),
        ("tin loaf", {"strong white flour": 500, "water": 400, "fine salt": 10}, "balance-unusual",
         "common practice: asked about 5 points outside 58 to 68 %"),
        ("", {**FLOUR, "baking powder": 8}, "leavening-unusual", "common practice: asked about above 7 %"),
        ("", {"self-raising flour": 100, "baking powder": 5}, "leavening-unusual",
         "21 CFR 137.180: self-raising flour carries up to 4.5 parts already"),
        ("", {**FLOUR, "bicarbonate of soda": 2, "buttermilk": 100}, "leavening-unusual",
         "common practice: 0.5 to 1.6 % of the flour"),
        ("", {**FLOUR, "bicarbonate of soda": 1}, "acid-missing", "common practice: above 0.5 %"),
        ("", {**FLOUR, "bicarbonate of soda": 1, "alkalised cocoa powder": 20}, "acid-missing",
         "common practice: alkalised cocoa is no acid"),
        ("", {**FLOUR, "baker's ammonia": 2}, "leavening-unusual", "common practice: 0.5 to 1.5 %"),
        ("oil cake", {**FLOUR, "baker's ammonia": 1, "caster sugar": 90, "sunflower oil": 60, "egg": 60,
                      "whole milk": 60}, "leavening-unusual", "common practice: only in thin dry biscuits"),
        ("tin loaf", {"strong white flour": 500, "water": 320, "fine salt": 4}, "salt-unusual",
         "common practice: asked about outside 1.2 to 2.5 %"),
        ("", {**FLOUR, "instant yeast": 1, "fine salt": 3}, "salt-unusual", "common practice: 1.8 to 2.2 %"),
        ("", {**FLOUR, "instant yeast": 3}, "yeast-unusual", "common practice: asked about above 2.5 %"),
        ("", {**FLOUR, "fresh yeast": 9}, "yeast-unusual", "published conversions: fresh 3 to instant 1"),
    ],
)  # fmt: skip
def test_what_is_asked_about(
    tables: Tables, kind: str, weights: Mapping[str, str | int], code: str, source: str
) -> None:
    assert [finding.band.code for finding in found(tables, kind, weights)] == [code], source


@pytest.mark.parametrize(
    "acid",
    ["buttermilk", "natural yoghurt", "lemon juice", "cider vinegar", "black treacle", "honey",
     "light muscovado sugar", "cocoa powder", "cream of tartar", "banana"],
)  # fmt: skip
def test_bicarbonate_is_met_by_an_acid(tables: Tables, acid: str) -> None:
    """Common practice: sour milk, juice, vinegar, treacle, honey, muscovado, fruit, natural cocoa."""
    assert found(tables, "", {**FLOUR, "bicarbonate of soda": 1, acid: 30}) == []


@pytest.mark.parametrize(
    ("weights", "slip", "source"),
    [
        ({**FLOUR, "baking powder": 13}, True, "common practice: above 12 % nothing works"),
        ({**FLOUR, "baking powder": 9}, False, PRACTICE),
        ({**FLOUR, "instant yeast": 7}, True, "common practice: above 6 %"),
    ],
)
def test_what_is_nearly_certainly_a_slip(
    tables: Tables, weights: Mapping[str, str | int], slip: bool, source: str
) -> None:
    assert [finding.is_slip for finding in found(tables, "", weights)] == [slip], source


@pytest.mark.parametrize(
    ("kind", "low", "high", "source"),
    [
        ("tin loaf", 8, 12, "common practice: tin loaf"),
        ("hearth loaf", 12, 16, "common practice: hearth loaf"),
        ("soft roll", 12, 18, "common practice: rolls"),
    ],
)
def test_what_goes_off_in_baking(tables: Tables, kind: str, low: int, high: int, source: str) -> None:
    known = tables.balances.kind(kind)
    assert known is not None
    assert known.loses == (Fraction(low, 100), Fraction(high, 100)), source
