"""What holds for any amount, any batch and any tin."""

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from sitegen.kitchen.amounts import Amount, Span, single
from sitegen.kitchen.balance import drift
from sitegen.kitchen.eggs import whole_and_beaten
from sitegen.kitchen.method import OvenSetting
from sitegen.kitchen.ovens import GasMark, OvenTable, read_oven
from sitegen.kitchen.recipe import Choice, Component, IngredientLine, Makes, PartLine, Recipe
from sitegen.kitchen.rounding import rounded_grams, rounded_minutes, rounded_ml
from sitegen.kitchen.shares import made_components, part_grams
from sitegen.kitchen.temperatures import to_celsius, to_fahrenheit

WEIGHTS = st.fractions(Fraction("0.2"), Fraction(20000), max_denominator=1000)
FACTORS = st.fractions(Fraction(1, 20), Fraction(20), max_denominator=50)
FINEST_SCALE_STEP = Fraction(1, 20)


@given(WEIGHTS, st.booleans())
def test_a_printed_weight_is_within_its_budget(grams: Fraction, fine: bool) -> None:
    printed = rounded_grams(grams, fine)
    budget = grams * (Fraction(1, 100) if fine else Fraction(25, 1000))
    assert abs(printed - grams) <= max(budget, FINEST_SCALE_STEP / 2)
    assert printed > 0


@given(WEIGHTS, WEIGHTS, st.booleans())
def test_a_heavier_weight_is_never_printed_lighter(one: Fraction, other: Fraction, fine: bool) -> None:
    lighter, heavier = sorted((one, other))
    assert rounded_grams(lighter, fine) <= rounded_grams(heavier, fine)


@given(st.fractions(Fraction(10), Fraction(20000), max_denominator=1000))
def test_a_printed_volume_is_within_its_budget(ml: Fraction) -> None:
    assert abs(rounded_ml(ml) - ml) <= ml * Fraction(25, 1000)


@given(st.fractions(0, 3000, max_denominator=60), st.fractions(0, 3000, max_denominator=60))
def test_a_longer_time_is_never_printed_shorter(one: Fraction, other: Fraction) -> None:
    shorter, longer = sorted((one, other))
    assert rounded_minutes(shorter) <= rounded_minutes(longer)


@given(st.fractions(Fraction(1), Fraction(3000), max_denominator=50), st.integers(15, 70))
def test_eggs_give_back_the_mass_within_a_tenth_of_an_egg(grams: Fraction, one_egg_g: int) -> None:
    count = whole_and_beaten(grams, Fraction(one_egg_g))
    assert abs(count.whole * one_egg_g + count.beaten_g - grams) <= Fraction(one_egg_g, 10)
    assert 0 <= count.beaten_g <= Fraction(9 * one_egg_g, 10)
    assert count.whole or count.beaten_g


@given(st.lists(WEIGHTS, min_size=1, max_size=8), FACTORS, st.data())
def test_balance_does_not_change_with_the_factor(
    weights: list[Fraction], factor: Fraction, data: st.DataObject
) -> None:
    flour = data.draw(st.lists(st.booleans(), min_size=len(weights), max_size=len(weights)))
    assert set(drift(weights, [weight * factor for weight in weights], flour)) == {0}


@given(st.fractions(-300, 600, max_denominator=90))
def test_degrees_there_and_back(degrees: Fraction) -> None:
    assert to_celsius(to_fahrenheit(degrees, "celsius"), "fahrenheit") == degrees


OVENS = OvenTable(
    gas_marks=tuple(GasMark(str(mark), Fraction(250 + 25 * mark)) for mark in range(1, 10)),
    printed=(),
    fan_offset_c=Fraction(20),
    fan_offset_f=Fraction(25),
    lowest_c=Fraction(30),
    highest_c=Fraction(500),
    step_c=Fraction(10),
    step_f=Fraction(25),
)


@given(st.integers(60, 280), st.booleans())
def test_the_written_figure_of_an_oven_is_never_changed(degrees: int, fan: bool) -> None:
    reading = read_oven(OvenSetting(Fraction(degrees), "celsius", fan), OVENS)
    assert (reading.fan_c if fan else reading.conventional_c) == degrees
    assert reading.conventional_c - reading.fan_c == 20
    assert abs(to_fahrenheit(reading.conventional_c, "celsius") - reading.fahrenheit) <= Fraction(25, 2)


def line(grams: Fraction) -> IngredientLine:
    return IngredientLine("", Amount(single(grams), "g"), (Choice("sugar", "sugar"),))


def weigh(line: IngredientLine) -> Span | None:
    return line.amount.span if line.amount else None


@st.composite
def cakes(draw: st.DrawFn) -> tuple[Recipe, Recipe]:
    """A cake that divides its dough and takes a weight of a base recipe, and that base recipe."""
    base_lines = tuple(map(line, draw(st.lists(WEIGHTS, min_size=1, max_size=3))))
    base = Recipe("b", "Base", "", Makes(Fraction(1), "batch"), (Component("Cream", base_lines, ()),))
    share = draw(st.fractions(Fraction(1, 20), Fraction(19, 20), max_denominator=20))
    dough = Component("Dough", tuple(map(line, draw(st.lists(WEIGHTS, min_size=1, max_size=4)))), ())
    of_base = Amount(single(draw(WEIGHTS)), "g")
    one = Component("One", (PartLine("", "Dough", share, None, from_base=False),), ())
    two_lines = (
        PartLine("", "Dough", 1 - share, None, from_base=False),
        PartLine("", "Base", None, of_base, from_base=True),
    )
    cake = Recipe("c", "Cake", "", Makes(Fraction(1), "cake"), (dough, one, Component("Two", two_lines, ())))
    return cake, base


@given(cakes(), FACTORS, FACTORS)
def test_scaling_twice_is_scaling_once_by_the_product(
    recipes: tuple[Recipe, Recipe], first: Fraction, second: Fraction
) -> None:
    cake, base = recipes
    once = made_components(cake, {"Base": base}, first * second, weigh)
    twice = made_components(cake, {"Base": base}, first, weigh)
    for whole, part in zip(once, twice, strict=True):
        assert whole.factor == part.factor * second
        assert whole.line_grams == tuple(grams and grams * second for grams in part.line_grams)


@given(cakes(), FACTORS)
def test_nothing_is_lost_in_dividing(recipes: tuple[Recipe, Recipe], factor: Fraction) -> None:
    cake, base = recipes
    dough, one, cream, two = made_components(cake, {"Base": base}, factor, weigh)
    taken = [grams for grams in (*part_grams(one), *part_grams(two)) if grams is not None]
    assert sum(taken) == (dough.grams or 0) + (cream.grams or 0)
