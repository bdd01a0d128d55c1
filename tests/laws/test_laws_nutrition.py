"""Laws of nutrition: nothing lost in adding up, and no rounding that turns an order round."""

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from sitegen.kitchen.larder import Ingredient
from sitegen.kitchen.nutrition import Nutrients, nutrients_of, quantities
from sitegen.kitchen.nutrition_table import LabelFigure
from sitegen.source.tables import read_tables

TABLES, _ = read_tables()
FIGURES = tuple(figure for label in TABLES.nutrition.labels for row in label.rows for figure in row.figures)
KNOWN = tuple(row for row in TABLES.larder.ingredients if row.composition is not None)

ingredients = st.sampled_from(KNOWN)
grams = st.integers(0, 5000).map(lambda tenths: Fraction(tenths, 10))
amounts = st.fractions(0, 3000, max_denominator=1000)


def held(row: Ingredient, weight: Fraction) -> Nutrients:
    assert row.composition is not None
    return nutrients_of(row.composition, weight)


@given(ingredients, grams, ingredients, grams)
def test_energy_of_a_mixture_is_the_sum_of_its_parts(
    one: Ingredient, one_g: Fraction, other: Ingredient, other_g: Fraction
) -> None:
    factors = TABLES.nutrition.factors
    first, second = held(one, one_g), held(other, other_g)
    together = quantities(first.plus(second), factors)
    for quantity, value in together.items():
        assert value == quantities(first, factors)[quantity] + quantities(second, factors)[quantity]


@given(ingredients, grams, st.fractions(Fraction(1, 20), 20, max_denominator=60))
def test_a_batch_holds_as_many_times_as_much(row: Ingredient, weight: Fraction, factor: Fraction) -> None:
    assert held(row, weight * factor) == held(row, weight).times(factor)


@given(st.sampled_from(FIGURES), amounts, amounts)
def test_the_larger_is_never_declared_the_smaller(
    figure: LabelFigure, one: Fraction, other: Fraction
) -> None:
    low, high = sorted((one, other))
    if not figure.rule.rounded(low).is_less_than:
        assert figure.rule.rounded(low).figure <= figure.rule.rounded(high).figure


@given(st.sampled_from(FIGURES), amounts)
def test_a_figure_is_off_by_no_more_than_half_its_step(figure: LabelFigure, value: Fraction) -> None:
    rounded = figure.rule.rounded(value)
    if rounded.step is not None:
        assert abs(rounded.figure - value) <= rounded.step / 2


@given(st.sampled_from(FIGURES), amounts)
def test_what_is_declared_less_than_a_figure_is_less(figure: LabelFigure, value: Fraction) -> None:
    rounded = figure.rule.rounded(value)
    if rounded.is_less_than:
        assert value <= rounded.figure * Fraction(5, 4)
