"""What is counted, in print: to the half, and by weight where a half would spoil the setting or the rise."""

import pytest

from sitegen.sheet.asks import Ask
from sitegen.sheet.measured import measured
from tests.sheet.pantry import Fraction, amount, choice, setting, tables


@pytest.mark.parametrize(
    ("count", "unit", "name", "times", "first", "beside"),
    [
        ("1", "", "lemon", "6/5", "1½", ""),
        ("3", "", "bay leaf", "7/5", "4½", ""),
        ("2", "", "banana", "1", "2", ""),
        ("2", "", "banana", "7/5", "3", "330 g"),  # 2.8 of them
        ("4", "leaf", "leaf gelatine", "7/10", "2¾ leaves", "5.6 g"),
        ("1", "leaf", "leaf gelatine", "3/5", "1.2 g", ""),  # neither ½ nor ¾ of a leaf will do
        ("1", "packet", "instant yeast", "1", "1 packet", "7 g"),
        ("2", "packet", "instant yeast", "3/5", "8.4 g", ""),
    ],
)
def test_a_count_that_is_scaled(
    count: str, unit: str, name: str, times: str, first: str, beside: str
) -> None:
    row = tables().larder.find(name)
    figures = measured(Ask(amount(count, unit), choice(name), row, Fraction(times)), setting())
    texts = (figures.amount.replace("\u00a0", " "), figures.beside.replace("\u00a0", " "))
    assert texts == (first, beside)
