"""How long what a step made may wait."""

from fractions import Fraction

import pytest

from sitegen.source.holding import Holding, read_holding
from sitegen.source.misread import Misread


@pytest.mark.parametrize(
    ("text", "minutes", "how"),
    [
        ("2 days chilled", 2880, "chilled"),
        ("2 days", 2880, ""),
        ("8 h, covered", 480, "covered"),
        ("8-12 h", 480, ""),
        ("1 h 30 min in the fridge", 90, "in the fridge"),
        ("½ h", 30, ""),
        ("8 to 12 h chilled", 480, "chilled"),
        ("90 min.", 90, ""),
        ("4 hours, covered, at room temperature", 240, "covered, at room temperature"),
    ],
)
def test_a_time_and_how_it_is_kept(text: str, minutes: int, how: str) -> None:
    """Of a range the shorter time counts: it is safe for all."""
    assert read_holding(text) == Holding(Fraction(minutes), how)


@pytest.mark.parametrize(
    "text",
    ["overnight", "overnight, covered", "chilled", "-2 days", "-2 days chilled", "2-", "3 weeks chilled", ""],
)
def test_what_no_clock_can_take_is_misread(text: str) -> None:
    with pytest.raises(Misread) as fault:
        read_holding(text)
    assert fault.value.code.code == "duration"


def test_overnight_is_told_to_say_how_long() -> None:
    with pytest.raises(Misread) as fault:
        read_holding("overnight, chilled")
    assert fault.value.way_out == "say how long: '8-12 h'"
