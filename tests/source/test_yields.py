"""Yields."""

from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import NOWHERE
from sitegen.kitchen.recipe import Makes
from sitegen.source.context import Context
from sitegen.source.misread import Misread
from sitegen.source.yields import is_same_noun, read_makes


@pytest.mark.parametrize(
    ("text", "makes"),
    [
        ("12 cupcakes", Makes(Fraction(12), "cupcakes")),
        ("1 loaf", Makes(Fraction(1), "loaf")),
        ("1/2 loaf", Makes(Fraction(1, 2), "loaf")),
        ("24 mini-muffins", Makes(Fraction(24), "mini-muffins")),
        ("12 slices of cake", Makes(Fraction(12), "slices of cake")),
        ("12 rolls of 85 g", Makes(Fraction(12), "rolls", Fraction(1020))),
        ("12 rolls of 85 g dough", Makes(Fraction(12), "rolls", Fraction(1020), "dough")),
        ("12 rolls of 75 g baked", Makes(Fraction(12), "rolls", Fraction(900), "baked")),
        ("2 loaves of 1/2 lb", Makes(Fraction(2), "loaves", Fraction(45359237, 100000))),
        ("900 g", Makes(Fraction(900), "", Fraction(900))),
        ("1.2 kg", Makes(Fraction(1200), "", Fraction(1200))),
    ],
)
def test_a_yield_is_a_count_or_a_weight(text: str, makes: Makes, context: Context) -> None:
    assert read_makes(text, NOWHERE, context) == makes


@pytest.mark.parametrize(
    "text",
    [
        "plenty",
        "12",
        "900",
        "12-14 cupcakes",
        "500 ml",
        "2 cups",
        "12 rolls of 85",
        "1 20 cm cake",
        "12 rolls of 85 g raw",
        "",
    ],
)
def test_what_is_neither_is_a_fault(text: str, context: Context) -> None:
    with pytest.raises(Misread) as fault:
        read_makes(text, NOWHERE, context)
    assert fault.value.code.code == "yield"


def test_loaves_by_weight_are_turned_round(context: Context) -> None:
    with pytest.raises(Misread) as fault:
        read_makes("2 x 450 g loaves", NOWHERE, context)
    assert fault.value.way_out == "write '2 loaves of 450 g'"


@pytest.mark.parametrize(
    ("one", "other", "same"),
    [
        ("loaf", "loaves", True),
        ("buns", "bun", True),
        ("boxes", "box", True),
        ("pastries", "pastry", True),
        ("Cupcakes", "cupcake", True),
        ("cookies", "cupcakes", False),
        ("bars", "baps", False),
    ],
)
def test_one_and_many_are_the_same_noun(one: str, other: str, same: bool) -> None:
    assert is_same_noun(one, other) is same
    assert is_same_noun(other, one) is same
