"""Degrees Celsius and Fahrenheit, exact. Rounding belongs to the sheet."""

from dataclasses import dataclass
from fractions import Fraction

F_IN_C = Fraction(9, 5)
FREEZING_F = 32


@dataclass(eq=False)
class NotATemperature(Exception):
    """A unit that is neither 'celsius' nor 'fahrenheit'."""

    unit: str


def celsius_of(fahrenheit: Fraction) -> Fraction:
    """Degrees C of degrees F, exact."""
    return (fahrenheit - FREEZING_F) / F_IN_C


def fahrenheit_of(celsius: Fraction) -> Fraction:
    """Degrees F of degrees C, exact."""
    return celsius * F_IN_C + FREEZING_F


def to_celsius(degrees: Fraction, unit: str) -> Fraction:
    """Degrees in the named unit ('celsius', 'fahrenheit') as C, exact. Raises NotATemperature."""
    if unit == "celsius":
        return degrees
    if unit == "fahrenheit":
        return celsius_of(degrees)
    raise NotATemperature(unit)


def to_fahrenheit(degrees: Fraction, unit: str) -> Fraction:
    """Degrees in the named unit ('celsius', 'fahrenheit') as F, exact. Raises NotATemperature."""
    return fahrenheit_of(to_celsius(degrees, unit))
