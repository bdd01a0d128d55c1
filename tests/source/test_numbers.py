"""Numbers as bakers write them."""

from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import Span
from sitegen.source.misread import Misread
from sitegen.source.numbers import GLYPHS, number_at, whole_number

HALF = Fraction(1, 2)


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("150", Fraction(150)),
        ("1.5", Fraction(3, 2)),
        (".5", HALF),
        ("3/4", Fraction(3, 4)),
        ("3⁄4", Fraction(3, 4)),
        ("½", HALF),
        ("1 1/2", Fraction(3, 2)),
        ("1½", Fraction(3, 2)),
        ("1 ½", Fraction(3, 2)),
        ("0.1", Fraction(1, 10)),
    ],
)
def test_a_number_is_read_exactly(text: str, value: Fraction) -> None:
    assert whole_number(text) == value


@pytest.mark.parametrize(("glyph", "value"), GLYPHS.items())
def test_every_printed_fraction_is_read(glyph: str, value: Fraction) -> None:
    assert whole_number(f"2{glyph}") == 2 + value


@pytest.mark.parametrize("text", ["22-24", "22–24", "22 - 24", "22 to 24"])
def test_a_range_may_be_written_with_any_dash_or_with_to(text: str) -> None:
    found = number_at(text)
    assert found is not None
    assert found.span == Span(Fraction(22), Fraction(24))
    assert found.end == len(text)


def test_a_range_may_run_between_mixed_numbers() -> None:
    found = number_at("1 to 1 1/2 tsp")
    assert found is not None
    assert found.span == Span(Fraction(1), Fraction(3, 2))


def test_the_number_ends_where_the_unit_begins() -> None:
    found = number_at("150g flour")
    assert found is not None
    assert found.end == 3


@pytest.mark.parametrize("text", ["", "flour", "a 2", "²", "-", "/2"])
def test_what_does_not_begin_with_a_number_has_none(text: str) -> None:
    assert number_at(text) is None


@pytest.mark.parametrize("text", ["1 2", "22-24", "2 g", "", "1/2/3"])
def test_a_whole_number_is_one_number_and_nothing_else(text: str) -> None:
    assert whole_number(text) is None


@pytest.mark.parametrize(
    ("text", "code", "marked"),
    [
        ("0 g", "not-a-number", "0"),
        ("1/0 tsp", "not-a-number", "1/0"),
        ("0/4 tsp", "not-a-number", "0/4"),
        ("-5 g", "not-a-number", "-5"),
        ("− 5 g", "not-a-number", "− 5"),
        ("12345678901 g", "not-a-number", "1234567890"),
        ("24-22 min", "backwards-range", "24-22"),
        ("1,5 kg", "comma-decimal", "1,5"),
    ],
)
def test_a_number_at_fault_is_marked(text: str, code: str, marked: str) -> None:
    with pytest.raises(Misread) as fault:
        number_at(text)
    assert (fault.value.code.code, text[fault.value.start : fault.value.end]) == (code, marked)


@pytest.mark.parametrize(
    ("text", "way_out"),
    [
        ("1,5 kg", "write '1.5'"),
        ("1,500 g", "write '1500', or '1.500' if that is meant"),
        ("24-22 min", "write '22-24'"),
    ],
)
def test_a_number_at_fault_comes_with_a_way_out(text: str, way_out: str) -> None:
    with pytest.raises(Misread) as fault:
        number_at(text)
    assert fault.value.way_out == way_out


def test_a_fault_further_on_in_a_text_is_marked_there() -> None:
    with pytest.raises(Misread) as fault:
        whole_number("times 0", 6)
    assert (fault.value.start, fault.value.end) == (6, 7)
