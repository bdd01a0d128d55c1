"""What a kitchen scale, jug, ruler and clock show."""

from fractions import Fraction

import pytest

from sitegen.kitchen.rounding import (
    rounded_cm,
    rounded_grams,
    rounded_inches,
    rounded_minutes,
    rounded_ml,
    rounded_ounces,
)


@pytest.mark.parametrize(
    ("grams", "printed"),
    [
        ("2.34", "2.3"),
        ("4.96", "5"),
        ("6.3", "6.3"),  # 6.5 would be over 2.5 % off: a tenth is shown
        ("12.3", "12.5"),
        ("33.4", "33"),
        ("150.7", "150"),  # five grams, where that is within 1 %
        ("127", "127"),
        ("333.3", "335"),
        ("1248", "1250"),
        ("2346", "2350"),
        ("0", "0"),
        ("0.01", "0.05"),  # never nothing
    ],
)
def test_weights(grams: str, printed: str) -> None:
    assert rounded_grams(Fraction(grams), fine=False) == Fraction(printed)


@pytest.mark.parametrize(
    ("grams", "printed"), [("3.45", "3.45"), ("7.23", "7.2"), ("20.3", "20.5"), ("101", "101")]
)
def test_salt_and_leavening_keep_within_1_percent(grams: str, printed: str) -> None:
    assert rounded_grams(Fraction(grams), fine=True) == Fraction(printed)


@pytest.mark.parametrize(
    ("ml", "printed"),
    [("238", "240"), ("473.2", "470"), ("12", "12"), ("2.53", "2.5"), ("5/3", "1.7"), ("0", "0")],
)
def test_volumes(ml: str, printed: str) -> None:
    assert rounded_ml(Fraction(ml)) == Fraction(printed)


@pytest.mark.parametrize(
    ("grams", "ounces"),
    [("113.4", "4"), ("150", "5.25"), ("250", "9"), ("28.35", "1"), ("500", "17.5"), ("10", "0"), ("1", "0")],
)
def test_ounces_or_none_at_all(grams: str, ounces: str) -> None:
    assert rounded_ounces(Fraction(grams)) == Fraction(ounces)


@pytest.mark.parametrize(
    ("minutes", "printed"),
    [
        ("0", 0),
        ("0.2", 1),
        ("7.4", 7),
        ("14.4", 14),
        ("16.6", 18),
        ("23.9", 25),
        ("31", 30),
        ("43", 45),
        ("122", 120),
    ],
)
def test_times_without_false_exactness(minutes: str, printed: int) -> None:
    assert rounded_minutes(Fraction(minutes)) == printed


@pytest.mark.parametrize(
    ("cm", "printed"), [("20.32", "20.5"), ("2.54", "2.5"), ("1.2", "1.2"), ("0.3", "0.3")]
)
def test_centimetres(cm: str, printed: str) -> None:
    assert rounded_cm(Fraction(cm)) == Fraction(printed)


@pytest.mark.parametrize(
    ("cm", "inches"),
    [("0.3", "1/8"), ("0.1", "1/16"), ("1", "3/8"), ("2", "3/4"), ("5", "2"), ("30", "11 3/4")],
)
def test_inches(cm: str, inches: str) -> None:
    expected = sum(map(Fraction, inches.split()))
    assert rounded_inches(Fraction(cm) / Fraction("2.54")) == expected
