"""`content/prices.yaml`: what is read, and what is refused at its word."""

from fractions import Fraction

import pytest

from sitegen.faults import Fault
from sitegen.kitchen.prices import Charge, PriceList
from sitegen.source.prices import prices_from
from sitegen.source.reader import parse_document
from sitegen.source.tables import read_tables


def read(text: str) -> tuple[PriceList | None, tuple[Fault, ...]]:
    document, faults = parse_document(text, "content/prices.yaml")
    assert document is not None
    assert faults == ()
    return prices_from(document, read_tables()[0])


def prices(text: str) -> PriceList:
    found, faults = read(text)
    assert faults == ()
    assert found is not None
    return found


def row(written: str) -> tuple[str, str, Fraction, Fraction, str]:
    (price,) = prices(f"currency: GBP\nprices:\n  {written}\n").prices
    return (
        price.choice.ingredient,
        price.choice.size,
        price.money,
        price.amount.span.middle,
        price.amount.unit,
    )


@pytest.mark.parametrize(
    ("written", "ingredient", "size", "money", "number", "unit"),
    [
        ("plain flour: 1.20 per 1.5 kg", "plain flour", "", "1.20", "3/2", "kg"),
        ("all-purpose flour: 3 for 5 lb", "plain flour", "", "3", "5", "lb"),
        ("eggs: 2.80 per 12", "egg", "", "2.80", "12", ""),
        ("large eggs: 3.10 per 12", "egg", "large", "3.10", "12", ""),
        ("vanilla pod: 2.40 each", "vanilla pod", "", "2.40", "1", ""),
        ("whole milk: 1.55 per 2 l", "whole milk", "", "1.55", "2", "l"),
        ("water: 0 per 1 l", "water", "", "0", "1", "l"),
    ],
)
def test_a_price_says_how_much_money_for_how_much(
    written: str, ingredient: str, size: str, money: str, number: str, unit: str
) -> None:
    assert row(written) == (ingredient, size, Fraction(money), Fraction(number), unit)


def test_the_rest_of_the_list() -> None:
    found = prices(
        "currency: EUR\nmargin: 62.5 %\nlabour: 14.50 per hour\n"
        "portion-costs: {case: 0.04, box: 0.2}\nbatch-costs: {oven: 0.60}\n"
    )
    assert (found.currency, found.margin, found.labour_per_hour) == ("EUR", Fraction(5, 8), Fraction("14.5"))
    assert found.per_piece == (Charge("case", Fraction("0.04")), Charge("box", Fraction("0.2")))
    assert found.per_batch == (Charge("oven", Fraction("0.60")),)


def test_a_list_of_prices_alone_sets_no_margin_and_counts_no_hour() -> None:
    found = prices("currency: GBP\n")
    assert (found.margin, found.labour_per_hour, found.prices) == (None, None, ())


@pytest.mark.parametrize(
    ("line", "code", "marked"),
    [
        ("  plain flor: 1.20 per 1 kg", "unknown-ingredient", "plain flor"),
        ("  plain flour: 1.20", "bad-price", "1.20"),
        ("  plain flour: 1.20 per", "bad-price", "1.20 per"),
        ("  plain flour: 1.20 per 1-2 kg", "bad-price", "1.20 per 1-2 kg"),
        ("  plain flour: 1.20 per 1 kilgo", "bad-price", "1.20 per 1 kilgo"),
        ("  plain flour: £1.20 per 1 kg", "bad-money", "£1.20 per 1 kg"),
        ("  plain flour: 1,20 per 1 kg", "bad-money", "1,20 per 1 kg"),
        ("  plain flour: -1 per 1 kg", "bad-money", "-1 per 1 kg"),
        ("  plain flour: 1.20 per 0 kg", "not-a-number", "1.20 per 0 kg"),
    ],
)
def test_a_price_at_fault_is_marked(line: str, code: str, marked: str) -> None:
    text = f"currency: GBP\nprices:\n{line}\n"
    found, (fault,) = read(text)
    assert found is None
    assert fault.code == code
    shown = text.split("\n")[fault.place.line - 1]
    assert shown[fault.place.column - 1 :][: fault.place.length] == marked


@pytest.mark.parametrize(
    ("written", "code"),
    [
        ("margin: 100 %", "margin-too-high"),
        ("margin: 0.65", "percent"),
        ("margin: 120 %", "percent"),
        ("labour: 14.50", "bad-money"),
        ("labour: 14.50 per hour and a half", "bad-money"),
        ("portion-costs: {case: 4p}", "bad-money"),
        ("portion-cost: {case: 0.04}", "unknown-key"),
    ],
)
def test_the_other_keys_are_refused_too(written: str, code: str) -> None:
    found, faults = read(f"currency: GBP\n{written}\n")
    assert found is None
    assert [fault.code for fault in faults] == [code]


@pytest.mark.parametrize("currency", ["gbp", "£", "pounds"])
def test_a_currency_is_named_by_its_three_letters(currency: str) -> None:
    assert [fault.code for fault in read(f"currency: {currency}\n")[1]] == ["wrong-form"]


def test_one_ingredient_has_one_price_unless_it_comes_in_sizes() -> None:
    text = "currency: GBP\nprices:\n  eggs: 2.80 per 12\n  large eggs: 3.10 per 12\n  egg: 1 per 4\n"
    _, (fault,) = read(text)
    assert (fault.code, fault.place.line) == ("price-twice", 5)


def test_every_fault_of_the_list_comes_in_one_run() -> None:
    text = "currency: GBP\nmargin: 100 %\nprices:\n  plain flor: 1 per 1 kg\n  eggs: 2.80\n"
    assert sorted(fault.code for fault in read(text)[1]) == [
        "bad-price",
        "margin-too-high",
        "unknown-ingredient",
    ]
