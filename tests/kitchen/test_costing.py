"""What a batch costs: nothing counted twice, nothing left out in silence."""

from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import Amount, Span, single
from sitegen.kitchen.costing import Cost, NoMargin, WhyNoCost, cost_of, margin_of, price_at_margin
from sitegen.kitchen.method import Step
from sitegen.kitchen.prices import Charge, Price, PriceList
from sitegen.kitchen.recipe import BaseUse, Choice, Component, IngredientLine, Makes, PartLine, Recipe
from sitegen.kitchen.shares import made_components

PIECES = {
    ("egg", ""): 50,
    ("egg", "large"): 60,
    ("egg white", ""): 33,
    ("egg yolk", ""): 17,
    ("lemon", ""): 100,
}


def weigh(amount: Amount | None, choice: Choice) -> Span | None:
    if amount is None:
        return None
    if amount.unit == "g":
        return amount.span
    one = PIECES.get((choice.ingredient, choice.size)) or PIECES.get((choice.ingredient, ""))
    return amount.span.times(Fraction(one)) if one and not amount.unit and not choice.part else None


def line(
    number: int | None, unit: str, name: str, size: str = "", part: str = "", optional: bool = False
) -> IngredientLine:
    amount = None if number is None else Amount(single(number), unit)
    return IngredientLine(name, amount, (Choice(name, name, size, part),), optional=optional)


def price(money: str, number: int, unit: str, name: str, size: str = "") -> Price:
    return Price(Choice(name, name, size), Fraction(money), Amount(single(number), unit))


FLOUR, EGGS = price("1.20", 1500, "g", "flour"), price("2.40", 12, "", "egg")
LIST = PriceList("GBP", (FLOUR, EGGS))


def cost(
    *lines: IngredientLine, prices: PriceList = LIST, factor: int = 1, pieces: int = 12, minutes: int = 0
) -> Cost:
    steps = (Step((), hands_on_min=single(minutes)),) if minutes else ()
    recipe = Recipe("r", "R", "", Makes(Fraction(12), "buns"), (Component("Dough", lines, steps),))
    made = made_components(recipe, {}, Fraction(factor), lambda one: weigh(one.amount, one.chosen))
    return cost_of(made, Fraction(pieces), prices, weigh)


def test_a_weight_costs_its_share_of_what_is_bought() -> None:
    assert cost(line(500, "g", "flour")).ingredients == Fraction("0.40")


def test_a_count_costs_its_share_of_a_dozen() -> None:
    assert cost(line(3, "", "egg")).ingredients == Fraction("0.60")


def test_eggs_by_weight_cost_what_they_weigh() -> None:
    assert cost(line(150, "g", "egg")).ingredients == Fraction("0.60")


def test_another_size_is_held_against_the_price_by_weight() -> None:
    large = PriceList("GBP", (price("3.00", 10, "", "egg", "large"),))
    assert cost(line(3, "", "egg", "large"), prices=large).ingredients == Fraction("0.90")
    assert cost(line(6, "", "egg", "small"), prices=large).ingredients == Fraction(300, 600) * 3


def test_yolks_and_whites_share_the_cost_of_the_egg() -> None:
    whites, yolks = cost(line(5, "", "egg white")), cost(line(5, "", "egg yolk"))
    assert whites.ingredients + yolks.ingredients == cost(line(5, "", "egg")).ingredients


def test_whites_with_a_price_of_their_own_cost_that() -> None:
    carton = PriceList("GBP", (EGGS, price("3.30", 330, "g", "egg white")))
    assert cost(line(100, "g", "egg white"), prices=carton).ingredients == 1


def test_a_lemon_is_bought_whole_for_its_zest() -> None:
    lemons = PriceList("GBP", (price("1.50", 5, "", "lemon"),))
    assert cost(line(2, "", "lemon", part="zest"), prices=lemons).ingredients == Fraction("0.60")
    by_weight = PriceList("GBP", (price("3.00", 1000, "g", "lemon"),))
    assert cost(line(2, "", "lemon", part="zest"), prices=by_weight).ingredients == Fraction("0.60")


def test_a_batch_twice_as_large_costs_twice_the_ingredients() -> None:
    once, twice = cost(line(500, "g", "flour")), cost(line(500, "g", "flour"), factor=2, pieces=24)
    assert (twice.ingredients, twice.each) == (once.ingredients * 2, once.each)


def test_what_has_no_price_is_named_and_not_counted_as_nothing() -> None:
    found = cost(line(500, "g", "flour"), line(10, "g", "saffron"), line(2, "handful", "egg"))
    assert [(one.line.chosen.name, one.why_not) for one in found.missing] == [
        ("saffron", WhyNoCost.NO_PRICE),
        ("egg", WhyNoCost.NO_WEIGHT),
    ]
    assert [one.money for one in found.missing] == [None, None]
    assert found.ingredients == Fraction("0.40")


def test_what_is_free_is_no_missing_price() -> None:
    water = PriceList("GBP", (price("0", 1000, "g", "water"),))
    found = cost(line(300, "g", "water"), prices=water)
    assert (found.ingredients, found.missing) == (0, ())


def test_what_is_left_to_the_cook_is_told_apart() -> None:
    found = cost(line(None, "", "flour"), line(20, "g", "flour", optional=True))
    assert [one.why_not for one in found.uncounted] == [WhyNoCost.NO_AMOUNT, WhyNoCost.OPTIONAL]
    assert (found.ingredients, found.missing) == (0, ())


def test_charges_by_the_piece_the_batch_and_the_hour() -> None:
    prices = PriceList(
        "GBP",
        (FLOUR,),
        per_piece=(Charge("case", Fraction("0.05")),),
        per_batch=(Charge("oven", Fraction("0.80")),),
        labour_per_hour=Fraction(15),
    )
    found = cost(line(500, "g", "flour"), prices=prices, pieces=24, minutes=40)
    assert found.per_piece == (Charge("case", Fraction("1.20")),)
    assert found.labour == 10
    assert found.total == Fraction("0.40") + Fraction("1.20") + Fraction("0.80") + 10
    assert found.each == found.total / 24


def test_without_a_rate_no_hour_is_counted() -> None:
    found = cost(line(500, "g", "flour"), minutes=40)
    assert (found.labour, found.hands_on_min) == (None, 40)


def test_a_base_recipe_costs_with_its_spare() -> None:
    base = Recipe(
        "b", "Base", "", Makes(Fraction(1), "bowl"), (Component("B", (line(1000, "g", "flour"),), ()),)
    )
    half = PartLine("", "Base", Fraction(1, 2), None, True)
    uses = (BaseUse("Base", spare=Fraction(1, 10)),)
    cake = Recipe("c", "C", "", Makes(Fraction(1), "cake"), (Component("Top", (half,), ()),), base_uses=uses)
    made = made_components(cake, {"Base": base}, Fraction(1), lambda one: weigh(one.amount, one.chosen))
    assert cost_of(made, Fraction(1), LIST, weigh).ingredients == Fraction("1.20") * 550 / 1500


@pytest.mark.parametrize(
    ("paid", "margin", "price"),
    [("0.35", "0.65", "1"), ("2", "0", "2"), ("3", "0.7", "10"), ("1.50", "0.5", "3")],
)
def test_the_margin_is_a_share_of_the_price(paid: str, margin: str, price: str) -> None:
    assert price_at_margin(Fraction(paid), Fraction(margin)) == Fraction(price)
    assert margin_of(Fraction(price), Fraction(paid)) == Fraction(margin)


@pytest.mark.parametrize("margin", ["1", "1.2", "-0.1"])
def test_no_price_keeps_all_of_itself(margin: str) -> None:
    with pytest.raises(NoMargin) as refused:
        price_at_margin(Fraction(1), Fraction(margin))
    assert refused.value.margin == Fraction(margin)


def test_a_price_of_the_very_size_goes_before_one_of_any() -> None:
    large = price("4.00", 12, "", "egg", "large")
    prices = PriceList("GBP", (EGGS, large))
    assert prices.price_of("egg", "large") == large
    assert prices.price_of("egg", "medium") == EGGS
    assert prices.price_of("saffron") is None
