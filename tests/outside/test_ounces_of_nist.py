"""Ounces and pounds against NIST Handbook 44, Appendix C: pound 453.59237 g, ounce a sixteenth of it."""

from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import Span, single
from sitegen.kitchen.rounding import quarter_ounces
from sitegen.sheet.amounts import ounces_text
from sitegen.sheet.weights import weight_texts
from sitegen.source.tables import read_tables

POUND_G = Fraction("453.59237")
OUNCE_G = POUND_G / 16


@pytest.mark.parametrize(
    ("grams", "ounces"),
    [
        (POUND_G, "16"),
        (POUND_G / 2, "8"),
        (POUND_G / 4, "4"),  # a stick of butter
        (OUNCE_G, "1"),
        (OUNCE_G / 4, "1/4"),
        (Fraction(100), "3.5"),  # 3.527 oz
        (Fraction(150), "5.25"),  # 5.291 oz
        (Fraction(165), "5.75"),  # 5.820 oz
        (Fraction(200), "7"),  # 7.055 oz
        (Fraction(250), "8.75"),  # 8.818 oz
        (Fraction(300), "10.5"),  # 10.582 oz
        (Fraction(500), "17.75"),  # 17.637 oz
        (Fraction(1000), "35.25"),  # 35.274 oz
    ],
)
def test_a_weight_to_the_quarter_ounce(grams: Fraction, ounces: str) -> None:
    assert quarter_ounces(grams) == Fraction(ounces)
    assert abs(quarter_ounces(grams) * OUNCE_G - grams) <= OUNCE_G / 8


@pytest.mark.parametrize(
    ("grams", "first", "beside"),
    [
        ("500", "1 lb 1¾ oz", "500 g"),
        ("453.59237", "1 lb", "455 g"),
        ("510", "1 lb 2 oz", "510 g"),
        ("525", "1 lb 2½ oz", "525 g"),
        ("907", "2 lb", "905 g"),
        ("200", "7 oz", "200 g"),
        ("95", "95 g", ""),  # 3 1/4 oz would be 3 % less
        ("40", "40 g", ""),  # 1 1/2 oz would be 6 % more
    ],
)
def test_an_american_scale_shows_pounds_and_ounces_and_grams_where_these_are_too_coarse(
    grams: str, first: str, beside: str
) -> None:
    found = weight_texts(Fraction(grams), read_tables()[0].editions["us-weights"])
    assert (found.amount.replace("\u00a0", " "), found.beside.replace("\u00a0", " ")) == (first, beside)


@pytest.mark.parametrize("grams", range(15, 3000, 7))
def test_ounces_are_never_over_2_and_a_half_percent_off(grams: int) -> None:
    found = weight_texts(Fraction(grams), read_tables()[0].editions["us-weights"])
    assert found.printed_g is not None
    assert abs(found.printed_g - grams) <= Fraction(25, 1000) * grams


@pytest.mark.parametrize(
    ("low", "high", "text"),
    [
        ("3.5", "4", "3½–4 oz"),
        ("14", "18", "14–18 oz"),
        ("18", "20", "1 lb 2 oz – 1 lb 4 oz"),
        ("16", "32", "1 lb – 2 lb"),
    ],
)
def test_a_range_of_ounces(low: str, high: str, text: str) -> None:
    assert ounces_text(Span(Fraction(low), Fraction(high))).replace("\u00a0", " ") == text


def test_the_ounce_on_a_nutrition_label_is_another() -> None:
    """21 CFR 101.9(b)(5)(viii) counts 28 g; a scale does not."""
    assert quarter_ounces(Fraction(28) * 16) == Fraction("15.75")
    assert ounces_text(single(16)) == "1\u00a0lb"
