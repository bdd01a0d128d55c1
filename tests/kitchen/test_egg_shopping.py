"""Eggs to buy: whites and yolks serve each other, whole eggs serve neither."""

from fractions import Fraction

import pytest

from sitegen.kitchen.egg_shopping import EggsToBuy, EggUse, eggs_to_buy


def bought(whole: str = "0", whites: str = "0", yolks: str = "0") -> EggsToBuy:
    return EggsToBuy("medium", Fraction(whole), Fraction(whites), Fraction(yolks))


@pytest.mark.parametrize(
    ("eggs", "number", "spare_whites", "spare_yolks"),
    [
        (bought("3"), 3, 0, 0),
        (bought("3", whites="5", yolks="2"), 8, 0, 3),
        (bought(whites="2", yolks="5"), 5, 3, 0),
        (bought(whites="4", yolks="4"), 4, 0, 0),
        (bought("3.5", whites="2.4"), 7, Fraction("0.6"), 3),
        (bought("3.05"), 3, 0, 0),
        (bought("0.05"), 1, 0, 0),
        (bought(), 0, 0, 0),
    ],
)
def test_eggs_are_counted_whole_yolks_and_whites_together(
    eggs: EggsToBuy, number: int, spare_whites: Fraction, spare_yolks: Fraction
) -> None:
    assert (eggs.number, eggs.spare_whites, eggs.spare_yolks) == (number, spare_whites, spare_yolks)


def test_a_row_for_each_size_adds_up_before_anything_is_rounded() -> None:
    half = Fraction(1, 2)
    uses = [
        EggUse("medium", "", half, Fraction(25)),
        EggUse("large", "yolk", Fraction(2), Fraction(40)),
        EggUse("medium", "", half, Fraction(26)),
    ]
    medium, large = eggs_to_buy(uses)
    assert (medium.number, medium.grams) == (1, 51)
    assert (large.size, large.number, large.spare_whites) == ("large", 2, 2)
