"""Laws of substitution: for every row of the table and any amount."""

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from sitegen.kitchen.substitutions import Original, Substitute, Swap, substitutes
from sitegen.source.tables import read_tables

ROWS = st.sampled_from(read_tables()[0].swaps)
AMOUNTS = st.fractions(min_value=Fraction(1, 10), max_value=10_000, max_denominator=100)


def use(row: Swap, amount: Fraction) -> tuple[Substitute, ...]:
    found = substitutes(row, Original(grams=amount, pieces=amount))
    assert found is not None
    return found


@given(ROWS, AMOUNTS)
def test_nothing_is_replaced_by_nothing(row: Swap, amount: Fraction) -> None:
    assert all(one.grams > 0 for one in use(row, amount))


@given(ROWS, AMOUNTS, AMOUNTS)
def test_two_amounts_are_replaced_by_what_replaces_their_sum(row: Swap, one: Fraction, two: Fraction) -> None:
    together = [each.grams for each in use(row, one + two)]
    apart = [a.grams + b.grams for a, b in zip(use(row, one), use(row, two), strict=True)]
    assert together == apart
