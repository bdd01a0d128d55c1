"""Measures are exact, and a spoon is that of the edition."""

import pickle
from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import Amount, Span, single
from sitegen.kitchen.measures import Measures, NotALength, NotAVolume, NotAWeight
from sitegen.kitchen.tables import Tables


def amount(value: str, unit: str) -> Amount:
    return Amount(single(Fraction(value)), unit)


@pytest.mark.parametrize(
    ("value", "unit", "grams"),
    [
        ("1.5", "kg", "1500"),
        ("1", "lb", "453.59237"),  # NIST SP 811
        ("1", "oz", "28.349523125"),  # NIST SP 811
        ("1", "stick", "113.3980925"),  # a quarter of a pound
        ("250", "mg", "0.25"),
    ],
)
def test_a_weight_in_grams(measures: Measures, value: str, unit: str, grams: str) -> None:
    assert measures.grams(amount(value, unit)) == single(Fraction(grams))


@pytest.mark.parametrize(
    ("edition", "unit", "ml"),
    [
        ("uk", "tsp", "5"),
        ("uk", "tbsp", "15"),
        ("uk", "cup", "250"),
        ("au", "tbsp", "20"),  # New South Wales Government conversion chart
        ("us", "cup", "236.5882365"),  # NIST Handbook 44, Appendix C
        ("us", "tbsp", "14.78676478125"),
        ("us", "tsp", "4.92892159375"),
        ("us", "floz", "29.5735295625"),
        ("uk", "floz", "28.4130625"),  # Units of Measurement Regulations 1995
        ("us", "pint", "473.176473"),
        ("uk", "pint", "568.26125"),
        ("uk", "pinch", "0.3125"),
        ("uk", "dash", "0.625"),
        ("uk", "l", "1000"),
    ],
)
def test_a_measure_is_that_of_the_edition(tables: Tables, edition: str, unit: str, ml: str) -> None:
    found = tables.measures.millilitres(amount("1", unit), tables.editions[edition])
    assert found == single(Fraction(ml))


def test_a_range_keeps_both_ends(measures: Measures) -> None:
    ends = Amount(Span(Fraction(1), Fraction(2)), "lb")
    assert measures.grams(ends) == Span(Fraction("453.59237"), Fraction("907.18474"))


@pytest.mark.parametrize(("unit", "cm"), [("in", "2.54"), ("mm", "0.1"), ("cm", "1")])
def test_a_length_in_centimetres(measures: Measures, unit: str, cm: str) -> None:
    assert measures.centimetres(amount("1", unit)) == single(Fraction(cm))


@pytest.mark.parametrize(
    ("word", "unit"),
    [
        ("grams", "g"),
        ("Grams", "g"),
        ("LB", "lb"),
        ("tablespoons", "tbsp"),
        ("leaves", "leaf"),
        ("onion", None),
    ],
)
def test_the_unit_of_a_spelling(measures: Measures, word: str, unit: str | None) -> None:
    assert measures.unit_named(word) == unit


def test_a_spelling_in_its_own_case_wins() -> None:
    measures = Measures.of("gram = [mass] = g", {"tbsp": ("T",), "tsp": ("t",)})
    assert (measures.unit_named("T"), measures.unit_named("t")) == ("tbsp", "tsp")


def test_units_know_what_they_measure(measures: Measures) -> None:
    assert measures.is_weight("oz")
    assert not measures.is_weight("ml")
    assert measures.is_volume("tsp")
    assert not any(measures.is_volume(unit) for unit in ("g", "", "leaf"))


def test_a_refusal_names_the_unit(tables: Tables) -> None:
    with pytest.raises(NotAWeight) as weight:
        tables.measures.grams(amount("1", "cup"))
    with pytest.raises(NotAVolume) as volume:
        tables.measures.millilitres(amount("1", "g"), tables.editions["uk"])
    with pytest.raises(NotALength) as length:
        tables.measures.centimetres(amount("1", "leaf"))
    assert (weight.value.unit, volume.value.unit, length.value.unit) == ("cup", "g", "leaf")


def test_a_bare_cup_of_pint_itself_is_unknown(measures: Measures) -> None:
    with pytest.raises(NotAVolume):
        measures.unit_ml("cup")


def test_measures_cross_a_process_border(measures: Measures) -> None:
    copy = pickle.loads(pickle.dumps(measures))
    assert copy == measures
    assert copy.unit_ml("us_label_cup") == 240
