"""Ovens and exact temperatures as each edition prints them."""

import pytest

from sitegen.kitchen.method import OvenSetting
from sitegen.sheet.heat_words import exact_temperature_text, oven_text
from tests.sheet.pantry import Fraction, amount, tables


def oven(degrees: str, scale: str, *, fan: bool, edition: str) -> str:
    setting = OvenSetting(Fraction(degrees), scale, fan)
    return oven_text(setting, tables().editions[edition], tables().ovens).replace("\u00a0", " ")


# Published household charts: the figures that stand beside one another in print.
@pytest.mark.parametrize(
    ("degrees", "scale", "fan", "british", "american", "australian"),
    [
        (
            "160",
            "celsius",
            True,
            "160 °C fan (180 °C conventional, 350 °F, gas 4)",
            "350 °F (325 °F convection, 180 °C conventional)",
            "180 °C conventional (160 °C fan)",
        ),
        (
            "6",
            "gas",
            False,
            "180 °C fan (200 °C conventional, 400 °F, gas 6)",
            "400 °F (375 °F convection, 200 °C conventional)",
            "200 °C conventional (180 °C fan)",
        ),
        (
            "425",
            "fahrenheit",
            False,
            "200 °C fan (220 °C conventional, 425 °F, gas 7)",
            "425 °F (400 °F convection, 220 °C conventional)",
            "220 °C conventional (200 °C fan)",
        ),
        (  # 170 C is 338 F, between two marks: the charts print the lower one
            "150",
            "celsius",
            True,
            "150 °C fan (170 °C conventional, 325 °F, gas 3)",
            "325 °F (300 °F convection, 170 °C conventional)",
            "170 °C conventional (150 °C fan)",
        ),
        (  # below the lowest gas mark
            "80",
            "celsius",
            True,
            "80 °C fan (100 °C conventional, 200 °F)",
            "200 °F (175 °F convection, 100 °C conventional)",
            "100 °C conventional (80 °C fan)",
        ),
    ],
)
def test_an_oven_is_printed_as_the_trade_rounds_it(
    degrees: str, scale: str, fan: bool, british: str, american: str, australian: str
) -> None:
    assert oven(degrees, scale, fan=fan, edition="british-metric") == british
    assert oven(degrees, scale, fan=fan, edition="us-cups") == american
    assert oven(degrees, scale, fan=fan, edition="australian") == australian


@pytest.mark.parametrize(
    ("low", "high", "unit", "british"),
    [
        (82, 82, "celsius", "82 °C (180 °F)"),
        (118, 121, "celsius", "118–121 °C (244–250 °F)"),
        (160, 160, "fahrenheit", "71 °C (160 °F)"),
    ],
)
def test_a_temperature_keeps_its_degree_in_both_scales(low: int, high: int, unit: str, british: str) -> None:
    found = exact_temperature_text(amount(low, unit, high), tables().editions["british-metric"])
    assert found.replace("\u00a0", " ") == british
