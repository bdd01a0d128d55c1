"""What an amount weighs, whichever way it is measured."""

from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import Amount, Span, single
from sitegen.kitchen.recipe import Choice
from sitegen.kitchen.tables import Tables
from sitegen.kitchen.weighing import grams_of


def weigh(
    tables: Tables, edition: str, value: str, unit: str, food: str, size: str = "", part: str = ""
) -> Span | None:
    choice = Choice(food, food, size, part)
    amount = Amount(single(Fraction(value)), unit)
    return grams_of(amount, choice, tables.larder.find(food), tables.editions[edition], tables)


@pytest.mark.parametrize(
    ("edition", "value", "unit", "food", "grams"),
    [
        ("uk", "1/4", "lb", "plain flour", "113.3980925"),  # NIST SP 811
        ("us", "1", "cup", "plain flour", "125"),  # USDA SR28, NDB 20081
        ("us", "1/2", "cup", "milk", "122"),  # USDA SR28, NDB 01077
        ("us", "1", "stick", "butter", "113.3980925"),
        ("uk", "2", "", "egg", "102"),
        ("us", "2", "", "egg", "100"),  # USDA SR28, NDB 01123: large
        ("uk", "3", "", "egg yolk", "51"),
        ("uk", "3", "", "egg white", "102"),
        ("uk", "1", "", "duck egg", "70"),  # USDA SR28, NDB 01138
        ("uk", "4", "leaf", "leaf gelatine", "8"),
        ("uk", "1", "", "lemon", "84"),  # USDA SR28, NDB 09150
        ("uk", "2", "", "banana", "236"),  # no size written: the medium one
    ],
)
def test_grams(tables: Tables, edition: str, value: str, unit: str, food: str, grams: str) -> None:
    assert weigh(tables, edition, value, unit, food) == single(Fraction(grams))


def test_a_written_size_goes_before_the_usual_one(tables: Tables) -> None:
    assert weigh(tables, "uk", "2", "", "egg", size="large") == single(120)


def test_a_written_part_is_weighed(tables: Tables) -> None:
    assert weigh(tables, "uk", "2", "", "lemon", part="zest") == single(12)
    assert weigh(tables, "uk", "2", "", "egg", part="yolk") == single(34)


def test_a_metric_cup_holds_more_than_a_us_one(tables: Tables) -> None:
    metric, us = (weigh(tables, edition, "1", "cup", "plain flour") for edition in ("uk", "us"))
    assert metric is not None
    assert us is not None
    assert metric.middle / us.middle == Fraction(250) / Fraction("236.5882365")


@pytest.mark.parametrize(
    ("value", "unit", "food", "size", "part"),
    [
        ("1", "cup", "caster sugar", "", ""),  # no density in the small larder
        ("1", "", "caster sugar", "", ""),
        ("1", "", "egg", "enormous", ""),
        ("1", "tbsp", "lemon", "", "zest"),  # a spoon of zest has not the density of a lemon
        ("1", "tsp", "moon dust", "", ""),
        ("1", "packet", "leaf gelatine", "", ""),
    ],
)
def test_none_where_it_cannot_be_known(
    tables: Tables, value: str, unit: str, food: str, size: str, part: str
) -> None:
    assert weigh(tables, "uk", value, unit, food, size, part) is None


def test_a_weight_needs_no_larder(tables: Tables) -> None:
    assert weigh(tables, "uk", "20", "g", "moon dust") == single(20)


def test_what_is_not_measured_weighs_nothing_known(tables: Tables) -> None:
    assert grams_of(None, Choice("flour", "plain flour"), None, tables.editions["uk"], tables) is None
