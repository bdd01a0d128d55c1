"""Exact degrees."""

from fractions import Fraction

import pytest

from sitegen.kitchen.temperatures import NotATemperature, to_celsius, to_fahrenheit


@pytest.mark.parametrize(
    ("celsius", "fahrenheit"),
    [("0", "32"), ("100", "212"), ("-40", "-40"), ("118", "244.4"), ("71", "159.8")],
)
def test_both_ways_exact(celsius: str, fahrenheit: str) -> None:
    assert to_fahrenheit(Fraction(celsius), "celsius") == Fraction(fahrenheit)
    assert to_celsius(Fraction(fahrenheit), "fahrenheit") == Fraction(celsius)
    assert to_celsius(Fraction(celsius), "celsius") == Fraction(celsius)


def test_a_unit_that_is_no_temperature() -> None:
    with pytest.raises(NotATemperature) as refused:
        to_fahrenheit(Fraction(4), "gas")
    assert refused.value.unit == "gas"
