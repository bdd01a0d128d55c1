"""Prices at a margin against the trade's own ways to say the same thing.

Retail arithmetic, common practice: a margin is a share of the price, a markup a share of the cost; what
caterers call a food cost of 30 % is a margin of 70 % on the food alone.
"""

from fractions import Fraction

import pytest

from sitegen.kitchen.costing import margin_of, price_at_margin


@pytest.mark.parametrize(
    ("margin", "markup"),
    [
        ("1/10", "1/9"),
        ("1/6", "1/5"),
        ("1/5", "1/4"),
        ("1/4", "1/3"),
        ("1/3", "1/2"),
        ("2/5", "2/3"),
        ("1/2", "1"),
        ("3/5", "3/2"),
        ("2/3", "2"),
        ("3/4", "3"),
        ("4/5", "4"),
    ],
)
def test_a_margin_and_its_markup(margin: str, markup: str) -> None:
    cost = Fraction(100)
    assert price_at_margin(cost, Fraction(margin)) == cost * (1 + Fraction(markup))


@pytest.mark.parametrize(
    ("cost", "food_cost_percent", "price"),
    [
        ("0.90", 30, "3.00"),
        ("1.05", 35, "3.00"),
        ("0.70", 28, "2.50"),
        ("6.00", 25, "24.00"),
        ("1.32", 33, "4.00"),
    ],
)
def test_a_food_cost_of_so_many_per_cent(cost: str, food_cost_percent: int, price: str) -> None:
    margin = 1 - Fraction(food_cost_percent, 100)
    assert price_at_margin(Fraction(cost), margin) == Fraction(price)
    assert margin_of(Fraction(price), Fraction(cost)) == margin
