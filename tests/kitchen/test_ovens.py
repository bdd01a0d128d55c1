"""An oven in all scales, as the trade's charts print them."""

from fractions import Fraction

import pytest

from sitegen.kitchen.method import OvenSetting
from sitegen.kitchen.ovens import OvenOutOfRange, OvenReading, read_oven
from sitegen.kitchen.tables import Tables

# fan C, conventional C, F, gas: published UK gas-mark charts
CHART = [
    (90, 110, 225, "1/4"),
    (100, 120, 250, "1/2"),
    (120, 140, 275, "1"),
    (130, 150, 300, "2"),
    (140, 160, 325, "3"),
    (150, 170, 325, "3"),
    (160, 180, 350, "4"),
    (170, 190, 375, "5"),
    (180, 200, 400, "6"),
    (200, 220, 425, "7"),
    (210, 230, 450, "8"),
    (220, 240, 475, "9"),
]


def fan(degrees: int, scale: str = "celsius") -> OvenSetting:
    return OvenSetting(Fraction(degrees), scale, fan=True)


def conventional(degrees: int | str, scale: str = "celsius") -> OvenSetting:
    return OvenSetting(Fraction(degrees), scale, fan=False)


def printed(reading: OvenReading) -> tuple[object, ...]:
    return reading.fan_c, reading.conventional_c, reading.fahrenheit, reading.gas


@pytest.mark.parametrize(("fan_c", "conventional_c", "fahrenheit", "gas"), CHART)
def test_the_charts_come_out_of_either_celsius(
    tables: Tables, fan_c: int, conventional_c: int, fahrenheit: int, gas: str
) -> None:
    line = (fan_c, conventional_c, fahrenheit, gas)
    assert printed(read_oven(fan(fan_c), tables.ovens)) == line
    assert printed(read_oven(conventional(conventional_c), tables.ovens)) == line


@pytest.mark.parametrize(
    ("mark", "line"),
    [("4", (160, 180, 350, "4")), ("1/2", (100, 120, 250, "1/2")), ("3", (140, 160, 325, "3"))],
)
def test_a_gas_mark_prints_what_stands_beside_it(
    tables: Tables, mark: str, line: tuple[int, int, int, str]
) -> None:
    assert printed(read_oven(conventional(mark, "gas"), tables.ovens)) == line


@pytest.mark.parametrize(
    ("fahrenheit", "conventional_c"),
    [
        (300, 150),
        (325, 160),
        (350, 180),
        (375, 190),
        (400, 200),
        (425, 220),
        (450, 230),
        (475, 250),
        (500, 260),
    ],
)
def test_celsius_from_fahrenheit_is_the_nearest_ten_of_the_exact_figure(
    tables: Tables, fahrenheit: int, conventional_c: int
) -> None:
    reading = read_oven(conventional(fahrenheit, "fahrenheit"), tables.ovens)
    assert reading.fahrenheit == fahrenheit
    assert reading.conventional_c == conventional_c


@pytest.mark.parametrize("degrees", [155, 163, 175])
def test_the_written_figure_stays_as_it_is(tables: Tables, degrees: int) -> None:
    assert read_oven(fan(degrees), tables.ovens).fan_c == degrees
    assert read_oven(conventional(degrees), tables.ovens).conventional_c == degrees


def test_a_convection_setting_is_25_f_below(tables: Tables) -> None:
    reading = read_oven(fan(325, "fahrenheit"), tables.ovens)
    assert reading.fahrenheit_fan == 325
    assert printed(reading) == (160, 180, 350, "4")


def test_an_oven_colder_than_the_lowest_mark_has_no_mark(tables: Tables) -> None:
    assert read_oven(conventional(80), tables.ovens).gas == ""


@pytest.mark.parametrize(
    "setting",
    [conventional(20), conventional(520), conventional(1000, "fahrenheit"), conventional("12", "gas")],
)
def test_no_oven_is_set_so(tables: Tables, setting: OvenSetting) -> None:
    with pytest.raises(OvenOutOfRange) as refused:
        read_oven(setting, tables.ovens)
    assert refused.value.degrees == setting.degrees
