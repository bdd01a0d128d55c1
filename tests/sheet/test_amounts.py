"""Numbers as print sets them."""

import pytest

from sitegen.sheet.amounts import duration_text, fraction_text, grams_text, joined, share_text, word_or_figure
from tests.sheet.pantry import Fraction, minutes


@pytest.mark.parametrize(
    ("value", "text"),
    [("1/2", "½"), ("5/4", "1¼"), ("2", "2"), ("7/3", "2⅓"), ("3/20", "0.15"), ("0", "0"), ("11/8", "1⅜")],
)
def test_fractions_have_their_own_glyphs(value: str, text: str) -> None:
    assert fraction_text(Fraction(value)) == text


@pytest.mark.parametrize(
    ("low", "high", "text"),
    [
        (Fraction(3, 2), Fraction(3, 2), "1.5 min"),
        (Fraction(7, 3), Fraction(7, 3), "2 min"),
        (3, 3, "3 min"),
        (22, 24, "22–24 min"),
        (60, 60, "1 h"),
        (75, 75, "1 h 15 min"),
        (480, 720, "8–12 h"),
        (50, 75, "50 min – 1 h 15 min"),
        (2880, 2880, "2 days"),
        (0, 0, ""),
    ],
)
def test_durations_read_as_on_a_card(low: int, high: int, text: str) -> None:
    assert duration_text(minutes(low, high)).replace("\u00a0", " ") == text


def test_a_kilogram_and_more_is_said_in_kilograms() -> None:
    assert grams_text(minutes(1250)).replace("\u00a0", " ") == "1.25 kg"
    assert grams_text(minutes(995)).replace("\u00a0", " ") == "995 g"


def test_shares_and_counts_are_words_in_running_text() -> None:
    assert share_text(Fraction(2, 3)) == "two-thirds"
    assert share_text(Fraction(3, 8)) == "⅜"
    assert (word_or_figure(2), word_or_figure(12)) == ("two", "12")
    assert joined(("wheat", "milk", "eggs")) == "wheat, milk and eggs"
