"""Yields as a card prints them."""

import pytest

from sitegen.kitchen.recipe import Makes
from sitegen.sheet.batches import counted
from tests.sheet.pantry import Fraction


@pytest.mark.parametrize(
    ("makes", "count", "text"),
    [
        (Makes(Fraction(12), "cupcakes"), "24", "24 cupcakes"),
        (Makes(Fraction(12), "cupcakes"), "84/5", "about 17 cupcakes"),
        (Makes(Fraction(12), "cupcakes"), "1", "1 cupcake"),
        (Makes(Fraction(1), "loaf"), "3/2", "1½ loaves"),
        (Makes(Fraction(1), "loaf"), "2", "2 loaves"),
        (Makes(Fraction(880), "", Fraction(880)), "1232", "1.232 kg"),
    ],
)
def test_a_yield_is_counted_in_whole_pieces(makes: Makes, count: str, text: str) -> None:
    assert counted(makes, Fraction(count)).replace("\N{NO-BREAK SPACE}", " ") == text
