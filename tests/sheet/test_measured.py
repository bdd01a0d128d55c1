"""One amount in one edition."""

import pytest

from sitegen.kitchen.amounts import Amount
from sitegen.sheet.asks import Ask, Measured
from sitegen.sheet.measured import measured
from tests.sheet.pantry import Fraction, amount, choice, setting, tables


def printed(
    how_much: Amount, name: str, edition: str, times: str | int = 1, size: str = "", part: str = ""
) -> Measured:
    one = choice(name, size, part)
    return measured(Ask(how_much, one, tables().larder.find(name), Fraction(times)), setting(edition))


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("how_much", "name", "times", "first", "beside"),
    [
        (amount(165), "plain flour", 1, "165 g", ""),
        (amount(165), "plain flour", "1/2", "83 g", ""),
        (amount(600), "plain flour", 3, "1.8 kg", ""),
        (amount("3/4", "tsp"), "bicarbonate of soda", 1, "¾ tsp", "3.5 g"),
        (amount("3/4", "tsp"), "bicarbonate of soda", 2, "1½ tsp", "7 g"),
        (amount(10, "g", 12), "fine salt", 1, "10–12 g", ""),
        (amount(250, "ml"), "whole milk", 1, "250 ml", ""),
        (amount(1, ""), "lemon", 1, "1", ""),
        (amount(1, ""), "lemon", "6/5", "1½", ""),
    ],
)
def test_british_metric_weighs_and_keeps_spoons(
    how_much: Amount, name: str, times: str | int, first: str, beside: str
) -> None:
    found = printed(how_much, name, "british-metric", times)
    assert (plain(found.amount), plain(found.beside)) == (first, beside)


@pytest.mark.parametrize(
    ("how_much", "name", "first", "beside"),
    [
        (amount(125), "plain flour", "1 cup", "125 g"),
        (amount(200), "caster sugar", "1 cup", "200 g"),
        (amount(227), "unsalted butter", "2 sticks", "227 g"),
        (amount(160), "unsalted butter", "1 stick + 3½ tbsp", "160 g"),
        (amount(100), "dark chocolate", "100 g", "3½ oz"),
        (amount(1, "tsp"), "baking powder", "1 tsp", "4.7 g"),
    ],
)
def test_us_cups_scoops_with_the_weight_beside(how_much: Amount, name: str, first: str, beside: str) -> None:
    """USDA SR28: a cup of flour is 125 g, of sugar 200 g, of butter 227 g."""
    found = printed(how_much, name, "us-cups")
    assert (plain(found.amount), plain(found.beside)) == (first, beside)


def test_two_uk_medium_eggs_are_two_us_large_ones() -> None:
    """51 g against 50 g out of the shell (Reg. (EC) 589/2008 mid-grade less shell; USDA SR28 01123)."""
    found = printed(amount(2, ""), "egg", "us-cups", size="medium")
    assert plain(found.amount) == "2 large"
    assert found.printed_g == 100


def test_an_egg_and_a_half_is_an_egg_and_a_weighed_part() -> None:
    found = printed(amount(1, ""), "egg", "british-metric", "3/2", size="medium")
    assert plain(found.amount) == "1 medium"
    assert plain(found.rest) == "plus 26 g of another, beaten"


def test_half_an_egg_is_weighed() -> None:
    found = printed(amount(1, ""), "egg", "british-metric", "1/2", size="medium")
    assert plain(found.amount) == "26 g"
    assert found.rest == "from 1\u00a0medium\u00a0egg, beaten"


def test_what_the_larder_lacks_keeps_its_weight_in_any_edition() -> None:
    one = choice("moonberry jam")
    found = measured(Ask(amount(80), one, None, Fraction(1)), setting("us-cups"))
    assert plain(found.amount) == "80 g"


def test_a_spoon_of_something_unknown_stays_a_spoon() -> None:
    one = choice("moonberry jam")
    found = measured(Ask(amount(2, "tbsp"), one, None, Fraction(2)), setting("us-cups"))
    assert plain(found.amount) == "¼ cup"
    assert found.exact_g is None
