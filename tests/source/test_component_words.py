"""What a component says of itself: its kind, and how warm its dough is to be."""

from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import NOWHERE
from sitegen.source.component_words import read_degrees, read_friction, read_kind
from sitegen.source.context import Context
from sitegen.source.misread import Misread


@pytest.mark.parametrize(
    ("text", "kind"), [("creamed cake", "creamed cake"), ("swiss Meringue", "Swiss meringue")]
)
def test_a_kind_of_the_table(text: str, kind: str, context: Context) -> None:
    assert read_kind(text, NOWHERE, context) == kind


@pytest.mark.parametrize(
    ("text", "way_out"),
    [
        ("cremed cake", "did you mean 'creamed cake'"),
        ("ganache", "'ganache glaze'"),
        ("xyzzy", "Use a kind of the table"),
    ],
)
def test_an_unknown_kind_is_answered_with_its_neighbours(text: str, way_out: str, context: Context) -> None:
    with pytest.raises(Misread) as fault:
        read_kind(text, NOWHERE, context)
    assert fault.value.code.code == "unknown-kind"
    assert way_out in fault.value.way_out


@pytest.mark.parametrize(
    ("text", "celsius"), [("25 C", "25"), ("25°C", "25"), ("77 F", "25"), ("24.5 c", "24.5"), ("-2 C", "-2")]
)
def test_a_temperature_is_read_in_either_scale(text: str, celsius: str) -> None:
    assert read_degrees(text) == Fraction(celsius)


@pytest.mark.parametrize("text", ["25", "warm", "250 C", "25 K", ""])
def test_what_no_dough_has_is_a_fault(text: str) -> None:
    with pytest.raises(Misread) as fault:
        read_degrees(text)
    assert fault.value.code.code == "dough-temperature"


@pytest.mark.parametrize(
    ("text", "celsius"), [("9 C", "9"), ("18 F", "10"), ("by hand", "3"), ("Stand mixer", "10")]
)
def test_friction_is_a_difference_or_a_mixer(text: str, celsius: str, context: Context) -> None:
    assert read_friction(text, NOWHERE, context) == Fraction(celsius)


@pytest.mark.parametrize("text", ["a robot", "80 C", "-3 C"])
def test_no_mixer_adds_that(text: str, context: Context) -> None:
    with pytest.raises(Misread) as fault:
        read_friction(text, NOWHERE, context)
    assert fault.value.code.code == "dough-temperature"
