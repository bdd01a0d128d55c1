"""A cost in words: rounded once, a price always up, and 'at least' where anything is missing."""

from fractions import Fraction

import pytest

from sitegen.kitchen.costing import Cost, LineCost, WhyNoCost
from sitegen.kitchen.prices import Charge
from sitegen.sheet.cost_words import CostSheet, cost_sheet, money_text, price_text
from tests.sheet.pantry import line, recipe

FLOUR = LineCost("Dough", line(500, "g", "plain flour"), Fraction(500), Fraction("0.4166"))
SAFFRON = LineCost("Dough", line(1, "g", "saffron"), Fraction(1), None, WhyNoCost.NO_PRICE)
DUSTING = LineCost("Dough", line(None, "", "rye flour"), None, None, WhyNoCost.NO_AMOUNT)


def told(*lines: LineCost, margin: str = "", labour: str = "") -> CostSheet:
    cost = Cost(
        currency="GBP",
        lines=lines,
        per_piece=(Charge("case", Fraction("0.48")),),
        per_batch=(),
        labour=Fraction(labour) if labour else None,
        hands_on_min=Fraction(40),
        pieces=Fraction(12),
    )
    return cost_sheet(recipe(), "12 cakes", cost, Fraction(margin) if margin else None)


@pytest.mark.parametrize(
    ("money", "text"),
    [
        ("0", "0.00"),
        ("0.004", "<0.01"),
        ("0.005", "0.01"),
        ("0.125", "0.13"),
        ("1.2", "1.20"),
        ("1234.5", "1234.50"),
    ],
)
def test_a_cost_is_rounded_to_the_nearest_hundredth(money: str, text: str) -> None:
    assert money_text(Fraction(money)) == text


@pytest.mark.parametrize(("price", "text"), [("0.85", "0.85"), ("0.8501", "0.86"), ("2", "2.00")])
def test_a_price_is_rounded_up_so_that_the_margin_is_kept(price: str, text: str) -> None:
    assert price_text(Fraction(price)) == text


def test_the_whole_is_told_from_the_line_to_the_price() -> None:
    sheet = told(FLOUR, margin="0.65", labour="10")
    assert sheet.title == "Test cakes, 12 cakes"
    assert [(row.part, row.what.replace("\u00a0", " "), row.money) for row in sheet.rows] == [
        ("Dough", "500 g plain flour", "0.42"),
        ("", "case", "0.48"),
        ("", "hands-on time, 40 min", "10.00"),
    ]
    assert sheet.totals == (
        ("ingredients", "0.42"),
        ("the batch", "10.90"),
        ("a cake", "0.91"),
        ("price of a cake at a margin of 65 %", "2.60"),
    )
    assert sheet.missing == ()


def test_the_part_that_is_taken_of_a_fruit_is_said() -> None:
    zest = LineCost("Dough", line(1, "", "lemon", part="zest"), Fraction(6), Fraction("0.26"))
    (row, _) = told(zest).rows
    assert row.what.replace("\u00a0", " ") == "6 g lemon zest"


def test_what_is_missing_is_named_and_makes_every_sum_at_least_that() -> None:
    sheet = told(FLOUR, SAFFRON, margin="0.5")
    assert sheet.missing == ("saffron (no price)",)
    assert [money.startswith("at least ") for _, money in sheet.totals] == [True] * 4


def test_without_a_margin_there_is_no_price() -> None:
    assert [what for what, _ in told(FLOUR).totals] == ["ingredients", "the batch", "a cake"]


def test_what_is_left_to_the_cook_is_said_and_no_sum_is_at_least() -> None:
    sheet = told(FLOUR, DUSTING)
    assert "rye flour" in sheet.notes[0]
    assert not any("at least" in money for _, money in sheet.totals)
