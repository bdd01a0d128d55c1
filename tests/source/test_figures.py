"""Figures as they stand in tables."""

from fractions import Fraction

import pytest

from sitegen.source.figures import centimetres_in, grams_in, millilitres_in, number_in
from sitegen.source.tables import read_tables

MEASURES = read_tables()[0].measures


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("4", "4"),
        ("4.6", "23/5"),
        ("1/4", "1/4"),
        ("30/12", "5/2"),
        ("2 1/4", "9/4"),
        (" 7 ", "7"),
    ],
)
def test_a_number_is_exact(text: str, number: str) -> None:
    assert number_in(text) == Fraction(number)


@pytest.mark.parametrize("text", ["", "four", "1/0", "-3", "1,5", "1/2/3", "1e3"])
def test_what_is_no_number(text: str) -> None:
    assert number_in(text) is None


@pytest.mark.parametrize(
    ("text", "grams"), [("125 g", "125"), ("0.5 kg", "500"), ("1 oz", "28.349523125"), ("125g", "125")]
)
def test_a_weight_in_grams(text: str, grams: str) -> None:
    assert grams_in(text, MEASURES) == Fraction(grams)


def test_a_volume_in_millilitres() -> None:
    assert millilitres_in("1/4 us_cup", MEASURES) == Fraction("236.5882365") / 4
    assert millilitres_in("100 ml", MEASURES) == 100


def test_a_length_in_centimetres() -> None:
    assert centimetres_in("2 in", MEASURES) == Fraction("5.08")


@pytest.mark.parametrize("text", ["125", "125 ml", "g", "125 grms", "1 cup"])
def test_what_is_no_weight(text: str) -> None:
    assert grams_in(text, MEASURES) is None


@pytest.mark.parametrize("text", ["1 cup", "1 tsp", "1 g", "ml"])
def test_a_bare_cup_or_spoon_is_no_measure_of_the_table(text: str) -> None:
    assert millilitres_in(text, MEASURES) is None
