"""Laws of the readers: what is printed is read back, junk gives faults and nothing else, and soon."""

from collections.abc import Callable
from fractions import Fraction
from time import perf_counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.kitchen.amounts import NOWHERE, Amount, Span, single
from sitegen.kitchen.recipe import IngredientLine, PartLine
from sitegen.source.context import Context
from sitegen.source.durations import read_span_of_minutes
from sitegen.source.lines import read_line
from sitegen.source.misread import Misread
from sitegen.source.numbers import number_at
from sitegen.source.phrases import read_batch, read_fill, read_oven
from sitegen.source.prose import read_prose
from sitegen.source.references import read_reference
from sitegen.source.stretches import Stretch
from sitegen.source.tables import read_tables
from sitegen.source.vessels import read_tin
from sitegen.source.yields import read_makes

CONTEXT = Context(read_tables(None)[0], components=("Vanilla batter",), recipes=("Base buttercream",))
LINES = tuple(read_line(text, NOWHERE, CONTEXT) for text in ("150 g plain flour", "half of Vanilla batter"))
READERS: dict[str, Callable[[str], object]] = {
    "line": lambda text: read_line(text, NOWHERE, CONTEXT),
    "prose": lambda text: read_prose(text, NOWHERE, LINES, CONTEXT),
    "reference": lambda text: read_reference(Stretch(text or "x", 0), LINES, CONTEXT),
    "minutes": read_span_of_minutes,
    "makes": lambda text: read_makes(text, NOWHERE, CONTEXT),
    "oven": lambda text: read_oven(text, NOWHERE, CONTEXT),
    "fill": read_fill,
    "batch": lambda text: read_batch(text, NOWHERE, CONTEXT),
    "tin": lambda text: read_tin(text, NOWHERE, CONTEXT),
    "number": number_at,
}
SECONDS = 2.0
"""Far above what a slow machine needs for ten thousand letters, far below what a quadratic reader takes."""

MEASURED = ("g", "kg", "ml", "l", "oz", "lb", "tsp", "tbsp", "cup")
WORDS = (
    *MEASURED,
    *("150", "1/2", "½", "1-2", "0", "-3", "1,5", "half", "a", "of", "or", "the rest of", "zest", "juice"),
    *("eggs", "medium", "plain flour", "caster sugar", "Vanilla batter", "Base buttercream", "optional"),
    *(",", "(", ")", "{", "}", "%", "x", "only", "for", "C", "F", "fan", "gas", "cm", "round", "muffin"),
    *("loaf", "min", "h", "to", "times", "using", "plus", "deep", "é", "\u00a0", "\u2028"),
)

numbers = st.one_of(
    st.integers(1, 5000).map(Fraction),
    st.builds(
        lambda whole, hundredths: whole + Fraction(hundredths, 100), st.integers(0, 900), st.integers(1, 99)
    ),
    st.builds(lambda under, over: Fraction(over, under), st.integers(2, 16), st.integers(1, 15)),
)
spans = st.one_of(
    numbers.map(single),
    st.tuples(numbers, numbers).filter(lambda ends: ends[0] != ends[1]).map(lambda ends: Span(*sorted(ends))),
)
texts = st.one_of(
    st.text(max_size=120), st.lists(st.sampled_from(WORDS), max_size=12).map(lambda words: " ".join(words))
)


def as_written(number: Fraction) -> str:
    """A number as a baker writes it: '3', '1/3', '1 1/2'."""
    whole, rest = divmod(number, 1)
    parts = ([str(whole)] if whole or not rest else []) + ([str(rest)] if rest else [])
    return " ".join(parts)


def span_as_written(span: Span) -> str:
    ends = (span.low, span.high) if span.is_range else (span.low,)
    return " to ".join(as_written(end) for end in ends)


@given(spans, st.sampled_from(MEASURED), st.sampled_from(["plain flour", "caster sugar", "whole milk"]))
def test_a_line_that_is_printed_and_read_again_has_the_same_amount(span: Span, unit: str, name: str) -> None:
    line = read_line(f"{span_as_written(span)} {unit} {name}, sifted", NOWHERE, CONTEXT)
    assert isinstance(line, IngredientLine)
    assert (line.amount, line.chosen.name, line.preparation) == (Amount(span, unit), name, "sifted")


@given(spans)
def test_a_count_that_is_printed_and_read_again_is_the_same(span: Span) -> None:
    line = read_line(f"{span_as_written(span)} medium eggs", NOWHERE, CONTEXT)
    assert isinstance(line, IngredientLine)
    assert (line.amount, line.chosen.size) == (Amount(span, ""), "medium")


@given(st.integers(2, 40).flatmap(lambda under: st.tuples(st.integers(1, under - 1), st.just(under))))
def test_a_share_that_is_printed_and_read_again_is_the_same(share: tuple[int, int]) -> None:
    line = read_line(f"{share[0]}/{share[1]} of Vanilla batter", NOWHERE, CONTEXT)
    assert isinstance(line, PartLine)
    assert line.share == Fraction(*share)


def misread(reader: str, text: str) -> Misread | None:
    """What a reader says against a text; None where it can read it."""
    try:
        READERS[reader](text)
    except Misread as problem:
        return problem
    return None


@pytest.mark.parametrize("reader", READERS)
@given(text=texts)
def test_any_text_is_read_or_misread_and_the_mark_lies_inside_it(reader: str, text: str) -> None:
    problem = misread(reader, text.strip())
    if problem is not None:
        assert 0 <= problem.start < problem.end <= max(len(text.strip()), 1)
        assert problem.sentence


@pytest.mark.parametrize("reader", READERS)
@pytest.mark.parametrize(
    "piece",
    [
        "1",
        "1 ",
        "a",
        "a ",
        "(",
        "()",
        ",",
        "1/",
        "½",
        "-",
        "{",
        "{a}",
        " or ",
        "of ",
        "half of ",
        "20 cm ",
        "1 x ",
        "1-",
    ],
)
def test_ten_thousand_letters_of_junk_are_read_at_once(reader: str, piece: str) -> None:
    text = (piece * (10_000 // len(piece))).strip()
    begun = perf_counter()
    problem = misread(reader, text)
    assert perf_counter() - begun < SECONDS
    assert problem is None or problem.end <= len(text)
