"""Shares, points and weights as texts."""

from fractions import Fraction

from sitegen.sheet.drift_words import percent_text, points_text, scale_text


def test_texts_of_a_drift() -> None:
    assert percent_text(Fraction(160, 3)) == "53.3 %"
    assert [points_text(Fraction(one, 4)) for one in (-1, 0, 1)] == ["-0.25", "+0.00", "+0.25"]
    weights = (Fraction(61, 20), Fraction(1522, 10), Fraction(12345, 10))
    assert [scale_text(one) for one in weights] == ["3.05 g", "152.2 g", "1,234.5 g"]
