"""What a sheet prints can be written into a recipe again: printed and read, a line has the same amount.

Each edition is read in its own measures. A sum ('1 cup + 1 tbsp', '1 cup less 1 tbsp') is no way to write a
line, so its figures are read one by one; 'scant' and 'generous' are left to the weight beside them.
"""

import re
from dataclasses import replace
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from sitegen.kitchen.amounts import NOWHERE, Amount, Span, single
from sitegen.kitchen.editions import Edition, Measuring
from sitegen.kitchen.recipe import Choice, IngredientLine
from sitegen.kitchen.weighing import grams_of, is_hens_egg
from sitegen.sheet.asks import Measured
from sitegen.sheet.lines import measured_line, printed_name
from sitegen.sheet.setting import Setting
from sitegen.source.context import Context
from sitegen.source.lines import read_line
from sitegen.source.tables import read_tables

TABLES = read_tables()[0]
BRITISH = TABLES.editions["british-metric"]
CONTEXT = Context(TABLES)
SCALE_LIMIT = Fraction(25, 1000)
SCOOP_LIMIT = Fraction(3, 100)
FINEST_G = Fraction(1, 10)
ROWS = tuple(row for row in TABLES.larder.ingredients if not is_hens_egg(row))
WEIGHED = tuple(row.key for row in ROWS)
SPOONED = tuple(row.key for row in ROWS if row.density)
COUNTED = tuple(row.key for row in ROWS if row.plural and row.piece(""))
SUM = re.compile(r" (\+|less) ")

weights = st.fractions(Fraction(1), Fraction(3000), max_denominator=10)
spoonfuls = st.fractions(Fraction(1, 4), Fraction(6), max_denominator=4)
editions = st.sampled_from(list(TABLES.editions.values()))


def spans(numbers: st.SearchStrategy[Fraction]) -> st.SearchStrategy[Span]:
    """Single figures, and ranges up to half as much again."""
    return st.one_of(
        numbers.map(single),
        st.builds(lambda low, more: Span(low, low + low * more / 10), numbers, st.integers(1, 5)),
    )


def written(span: Span, unit: str, name: str, size: str = "") -> IngredientLine:
    row = TABLES.larder.find(name)
    assert row is not None
    return IngredientLine("", Amount(span, unit), (Choice(name, row.key, size),))


def printed(line: IngredientLine, edition: Edition, factor: Fraction = Fraction(1)) -> tuple[Measured, str]:
    """The figures, and the name behind them, as that edition prints the line."""
    setting = Setting(TABLES, BRITISH, edition)
    figures = measured_line(line, factor, SCOOP_LIMIT, setting)
    return figures, printed_name(line.chosen, setting.row(line.chosen), figures, setting)


def read(text: str) -> IngredientLine:
    found = read_line(text.replace("\u00a0", " "), NOWHERE, CONTEXT)
    assert isinstance(found, IngredientLine)
    return found


def grams(text: str, edition: Edition) -> Span:
    """What a line weighs for a baker who writes in that edition."""
    line = read(text)
    weight = grams_of(line.amount, line.chosen, TABLES.larder.find(line.chosen.name), edition, TABLES)
    assert weight is not None, text
    return weight


def summed_grams(amount: str, name: str, edition: Edition) -> Span:
    """The weight of '1 cup + 1 tbsp' or '1 cup less 1 tbsp' of an ingredient."""
    first, *others = SUM.split(amount)
    total = grams(f"{first} {name}", edition)
    for sign, figure in zip(others[::2], others[1::2], strict=True):
        more = grams(f"{figure} {name}", edition).times(Fraction(1 if sign == "+" else -1))
        total = Span(total.low + more.low, total.high + more.low)
    return total


def is_near(found: Fraction, meant: Fraction, limit: Fraction) -> bool:
    return abs(found - meant) <= max(limit * meant, FINEST_G)


@given(spans(weights), st.sampled_from(WEIGHED))
def test_the_tested_batch_is_read_again_as_it_was_written(span: Span, name: str) -> None:
    to_the_gram = Span(Fraction(round(span.low)), Fraction(round(span.high)))
    figures, shown = printed(written(to_the_gram, "g", name), BRITISH)
    line = read(f"{figures.amount} {shown}")
    assert line.amount is not None
    assert TABLES.measures.grams(line.amount) == to_the_gram
    assert line.chosen.name == name


@given(spans(weights), st.sampled_from(WEIGHED), st.fractions(Fraction(1, 3), Fraction(4), max_denominator=6))
def test_a_scaled_weight_is_read_again_within_its_rounding(span: Span, name: str, factor: Fraction) -> None:
    figures, shown = printed(written(span, "g", name), BRITISH, factor)
    line = read(f"{figures.amount} {shown}")
    assert line.amount is not None
    found = TABLES.measures.grams(line.amount)
    assert is_near(found.low, span.low * factor, SCALE_LIMIT)
    assert is_near(found.high, span.high * factor, SCALE_LIMIT)


@given(spans(spoonfuls), st.sampled_from(["tsp", "tbsp"]), st.sampled_from(SPOONED))
def test_spoons_are_read_again_as_what_they_hold(span: Span, unit: str, name: str) -> None:
    line = written(span, unit, name)
    figures, shown = printed(line, BRITISH)
    assert figures.exact_g is not None
    if figures.amount.startswith(("scant", "generous")):
        assert is_near(grams(f"{figures.beside} {shown}", BRITISH).middle, figures.exact_g, SCALE_LIMIT)
    elif " to " not in figures.amount:
        found = summed_grams(figures.amount, shown, BRITISH)
        assert is_near(found.middle, figures.exact_g, SCOOP_LIMIT)


@given(
    st.integers(1, 24),
    st.sampled_from(["medium", "large"]),
    st.sampled_from(["egg", "egg white", "egg yolk"]),
)
def test_eggs_are_read_again_as_so_many(count: int, size: str, name: str) -> None:
    figures, shown = printed(written(single(count), "", name, size), BRITISH)
    line = read(f"{figures.amount} {shown}")
    assert line.amount == Amount(single(count), "")
    assert (line.chosen.size, line.chosen.ingredient) == (size, name)


@given(st.integers(1, 12), st.integers(0, 3), st.sampled_from(COUNTED))
def test_a_count_and_a_range_of_counts_are_read_again_as_they_were(count: int, more: int, name: str) -> None:
    figures, shown = printed(written(Span(Fraction(count), Fraction(count + more)), "", name), BRITISH)
    line = read(f"{figures.amount} {shown}")
    assert line.amount == Amount(Span(Fraction(count), Fraction(count + more)), "")
    assert line.chosen.ingredient == name


@given(weights, st.sampled_from(WEIGHED), editions)
def test_every_edition_is_read_again_in_its_own_measures(
    meant: Fraction, name: str, edition: Edition
) -> None:
    """Its first figures, and the weight beside them."""
    figures, shown = printed(written(single(meant), "g", name), edition)
    if figures.beside and not figures.beside.endswith("oz"):
        assert is_near(grams(f"{figures.beside} {shown}", edition).middle, meant, SCALE_LIMIT)
    if figures.printed_g is None or figures.amount.startswith(("scant", "generous")):
        return
    limit = SCALE_LIMIT if edition.measuring is Measuring.WEIGHT else SCOOP_LIMIT
    found = _pounds(figures.amount, shown, edition) or summed_grams(figures.amount, shown, edition)
    assert is_near(found.middle, meant, limit)
    assert is_near(found.middle, figures.printed_g, Fraction(1, 1000))


def _pounds(amount: str, name: str, edition: Edition) -> Span | None:
    """'1 lb 2½ oz' is two figures, as a sum is."""
    found = re.fullmatch(r"(\d+\u00a0lb)\u00a0(.+oz)", amount)
    return summed_grams(f"{found[1]} + {found[2]}", name, edition) if found else None


@given(st.integers(1, 30), editions)
def test_eggs_of_every_edition_are_read_again_as_their_weight(count: int, edition: Edition) -> None:
    figures, shown = printed(written(single(count), "", "egg", "medium"), edition)
    assert figures.exact_g is not None
    found = grams(f"{figures.amount} {shown}", replace(edition, egg_size="medium")).middle
    beaten = re.search(r"plus (\S+)\u00a0g", figures.rest)
    found += Fraction(beaten[1]) if beaten else 0
    assert is_near(found, figures.exact_g, Fraction(5, 100))
