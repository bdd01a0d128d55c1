"""Gas marks against the program GNU units, whose table of them is its own."""

import shutil
import subprocess
from fractions import Fraction

import pytest

from sitegen.kitchen.method import OvenSetting
from sitegen.kitchen.ovens import OvenTable, read_oven
from sitegen.source.tables import read_tables

MARKS = ["1/4", "1/2", "1", "2", "3", "4", "5", "6", "7", "8", "9", "10"]


@pytest.fixture(scope="module")
def ovens() -> OvenTable:
    return read_tables()[0].ovens


def fahrenheit_of_mark(mark: str) -> float:
    program = shutil.which("units")
    if program is None:
        pytest.fail("GNU units is missing: install the package 'units'")
    asked = f"gasmark({float(Fraction(mark))})"
    said = subprocess.run([program, "--terse", asked, "tempF"], capture_output=True, text=True, check=True)
    return float(said.stdout)


@pytest.mark.parametrize("mark", MARKS)
def test_a_mark_is_that_many_degrees_fahrenheit(ovens: OvenTable, mark: str) -> None:
    row = ovens.mark_named(Fraction(mark))
    assert row is not None
    assert float(row.fahrenheit) == pytest.approx(fahrenheit_of_mark(mark), abs=0.01)


@pytest.mark.parametrize("mark", MARKS)
def test_the_celsius_printed_for_a_mark_is_within_10_degrees(ovens: OvenTable, mark: str) -> None:
    """Published charts spread by up to 10 C at marks 1/2, 3 and 9."""
    reading = read_oven(OvenSetting(Fraction(mark), "gas", fan=False), ovens)
    exact = (fahrenheit_of_mark(mark) - 32) / 1.8
    assert float(reading.conventional_c) == pytest.approx(exact, abs=10)


@pytest.mark.parametrize("mark", MARKS)
def test_a_mark_read_back_from_its_fahrenheit_is_the_same(ovens: OvenTable, mark: str) -> None:
    fahrenheit = Fraction(round(fahrenheit_of_mark(mark)))
    reading = read_oven(OvenSetting(fahrenheit, "fahrenheit", fan=False), ovens)
    assert reading.gas == mark
