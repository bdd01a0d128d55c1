"""Ovens and exact temperatures in an edition's words."""

from fractions import Fraction

from sitegen.kitchen.amounts import Amount
from sitegen.kitchen.editions import Edition
from sitegen.kitchen.method import OvenSetting
from sitegen.kitchen.ovens import OvenReading, OvenTable, read_oven
from sitegen.kitchen.temperatures import to_celsius, to_fahrenheit
from sitegen.sheet.amounts import NO_BREAK, decimal_text


def oven_text(setting: OvenSetting, edition: Edition, table: OvenTable) -> str:
    """An oven as the edition prints it, its own scale first: '150 °C fan (170 °C conventional, gas 3)'."""
    reading = read_oven(setting, table)
    texts = [_SCALE_WORDS[scale](reading) for scale in edition.oven_scales]
    first, *others = [text for text in texts if text]
    return f"{first} ({', '.join(others)})" if others else first


_SCALE_WORDS = {
    "fan": lambda reading: _degrees(reading.fan_c, "C", "fan"),
    "conventional": lambda reading: _degrees(reading.conventional_c, "C", "conventional"),
    "fahrenheit": lambda reading: _degrees(reading.fahrenheit, "F", ""),
    "convection": lambda reading: _degrees(reading.fahrenheit_fan, "F", "convection"),
    "gas": lambda reading: _gas(reading),
}


def _degrees(value: Fraction, scale: str, word: str) -> str:
    return NO_BREAK.join(part for part in (decimal_text(value), f"°{scale}", word) if part)


def _gas(reading: OvenReading) -> str:
    return f"gas{NO_BREAK}{reading.gas}" if reading.gas else ""


def exact_temperature_text(amount: Amount, edition: Edition, stage: str = "") -> str:
    """A temperature of sugar or custard in both scales, to a whole degree: '118 °C (244 °F, firm ball)'.

    stage: of boiled sugar, '' for none. A range keeps both ends. Source: common practice; a slip of
    5 degrees is a stage of sugar.
    """
    celsius = tuple(to_celsius(end, amount.unit) for end in (amount.span.low, amount.span.high))
    fahrenheit = tuple(to_fahrenheit(end, amount.unit) for end in (amount.span.low, amount.span.high))
    texts = {"C": _whole_degrees(celsius, "C"), "F": _whole_degrees(fahrenheit, "F")}
    first, second = ("F", "C") if edition.oven_scales[0] == "fahrenheit" else ("C", "F")
    beside = ", ".join(part for part in (texts[second], stage) if part)
    return f"{texts[first]} ({beside})"


def _whole_degrees(ends: tuple[Fraction, ...], scale: str) -> str:
    low, high = (int(end + Fraction(1, 2)) for end in ends)
    number = str(low) if low == high else f"{low}–{high}"
    return f"{number}{NO_BREAK}°{scale}"
