"""What holds for any recipe, at any batch, in any edition, from the lines to the printed sheet.

The recipes are drawn at random: any ingredients of the larder by weight, spoon, jug and count, eggs, ranges,
alternatives, optional lines and lines without an amount, components that take of each other by share, and a
base recipe by share or by weight.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from sitegen.kitchen.amounts import Amount, Span, single
from sitegen.kitchen.larder import Ingredient
from sitegen.kitchen.method import Step, Words
from sitegen.kitchen.recipe import (
    BatchAsk,
    BatchKind,
    Choice,
    Component,
    IngredientLine,
    Line,
    Makes,
    PartLine,
    Recipe,
)
from sitegen.kitchen.weighing import grams_of, is_hens_egg
from sitegen.sheet.build import build_sheet
from sitegen.sheet.drift import DRIFT_LIMIT, drift_points
from sitegen.sheet.lines import printed_lines
from sitegen.sheet.setting import Setting
from sitegen.sheet.values import Sheet, SheetLine
from sitegen.source.tables import read_tables

TABLES = read_tables()[0]
WRITTEN = TABLES.editions["british-metric"]
EDITIONS = st.sampled_from(list(TABLES.editions))
FACTORS = st.fractions(Fraction(1, 3), Fraction(8), max_denominator=12)
ROWS = st.sampled_from(TABLES.larder.ingredients)
SCALE_LIMIT = Fraction(25, 1000)
SCOOP_LIMIT = Fraction(3, 100)
LOOSE_LIMIT = Fraction(5, 100)
TENTH = Fraction(1, 10)
FINEST_G = Fraction(1, 20)
MEASURES = ("cup", "tbsp", "tsp", "stick")
COUNTED = ("leaf", "leaves", "sheet", "packet")
NONE = Fraction(0)


@dataclass(frozen=True)
class Bake:
    """A recipe, and the base recipe that it may take of."""

    recipe: Recipe
    base: Recipe

    def sheet(self, edition: str, factor: Fraction) -> Sheet:
        ask = BatchAsk(BatchKind.TIMES, times=factor)
        bases = {self.base.title: self.base}
        return build_sheet(self.recipe, bases, TABLES, TABLES.editions[edition], WRITTEN, ask)


COUNTED_IN = {"leaf gelatine": ("leaf",), "filo pastry": ("leaf",), "instant yeast": ("packet",)}


def units_of(row: Ingredient) -> tuple[str, ...]:
    """The ways in which a baker can write an amount of it that has a weight."""
    volumes = ("ml", "tsp", "tbsp", "cup") if row.density else ()
    counts = ("",) if row.piece("") or is_hens_egg(row) else ()
    return ("g", *volumes, *counts, *COUNTED_IN.get(row.key, ()))


LARGEST = {"g": 1500, "ml": 900, "tsp": 6, "tbsp": 6, "cup": 5, "": 12, "leaf": 9, "packet": 3}


@st.composite
def amounts(draw: st.DrawFn, unit: str) -> Amount:
    """A figure of that unit, or a range of up to half as much again."""
    whole = unit in ("g", "ml", "", "leaf", "packet")
    smallest = Fraction(1) if whole else Fraction(1, 4)
    low = draw(st.fractions(smallest, LARGEST[unit], max_denominator=1 if whole else 4))
    more = draw(st.sampled_from([NONE, NONE, NONE, Fraction(1, 5), Fraction(1, 2)]))
    high = low + (round(low * more) if whole else low * more)
    return Amount(Span(low, high), unit)


@st.composite
def ingredient_lines(draw: st.DrawFn) -> IngredientLine:
    """One line; one in eight has no amount, one in eight is optional."""
    row = draw(ROWS)
    unit = draw(st.sampled_from(units_of(row)))
    sizes = ("", "medium", "large") if unit == "" and is_hens_egg(row) else ("",)
    choice = Choice(row.plural or row.key, row.key, draw(st.sampled_from(sizes)))
    others = draw(st.lists(ROWS, max_size=1))
    choices = (choice, *(Choice(one.key, one.key) for one in others))
    amount = draw(amounts(unit)) if draw(st.integers(1, 8)) > 1 else None
    return IngredientLine("", amount, choices, optional=draw(st.integers(1, 8)) == 8)


def component(title: str, lines: Iterable[Line]) -> Component:
    return Component(title, tuple(lines), (Step((Words("Stir."),), hands_on_min=single(5)),))


@st.composite
def bakes(draw: st.DrawFn) -> Bake:
    """Batter, divided between two others by share; one of them takes of the base recipe as well."""
    batter, one, other, cream = (
        draw(st.lists(ingredient_lines(), min_size=1, max_size=size)) for size in (5, 3, 3, 3)
    )
    assume(weight(needed(batter)) and weight(needed(cream)))
    base = Recipe("cream", "Cream", "", Makes(Fraction(1), "batch"), (component("Cream", cream),))
    share = draw(st.fractions(Fraction(1, 8), Fraction(7, 8), max_denominator=8))
    by_share = draw(st.booleans())
    of_base = PartLine(
        "",
        "Cream",
        draw(st.fractions(Fraction(1, 4), Fraction(2), max_denominator=4)) if by_share else None,
        None if by_share else Amount(single(draw(st.integers(50, 900))), "g"),
        from_base=True,
    )
    parts = (
        component("Batter", batter),
        component("One", [*one, PartLine("", "Batter", share, None, from_base=False)]),
        component("Other", [*other, PartLine("", "Batter", 1 - share, None, from_base=False), of_base]),
    )
    return Bake(Recipe("cake", "Cake", "", Makes(Fraction(8), "slices"), parts), base)


def line_grams(line: IngredientLine) -> Fraction:
    """What a line weighs as written; 0 without an amount."""
    row = TABLES.larder.find(line.chosen.ingredient)
    span = grams_of(line.amount, line.chosen, row, WRITTEN, TABLES)
    assert span is not None or line.amount is None
    return span.middle if span else NONE


def weight(lines: Iterable[Line]) -> Fraction:
    return sum((line_grams(line) for line in lines if isinstance(line, IngredientLine)), NONE)


def lines_of(sheet: Sheet) -> list[SheetLine]:
    return [line for part in sheet.components for line in part.lines]


def needed(lines: Iterable[IngredientLine]) -> list[IngredientLine]:
    """What a component weighs: an optional line is no part of what others take of it."""
    return [line for line in lines if not line.optional]


def exact(lines: Iterable[SheetLine]) -> Fraction:
    return sum((line.exact_g or NONE for line in lines), NONE)


def limit_g(line: SheetLine) -> Fraction:
    """How far what is printed may be off, grams: by scale, by scoop, by a tenth of an egg."""
    grams = line.exact_g or NONE
    if "egg" in line.name:
        return max(LOOSE_LIMIT * grams, TENTH * 70)
    is_counted = line.amount.replace("\N{EN DASH}", "").isnumeric() or any(
        word in line.amount for word in COUNTED
    )
    if is_counted or line.amount.startswith(("scant", "generous")):
        return max(LOOSE_LIMIT * grams, FINEST_G)
    share = SCOOP_LIMIT if any(word in line.amount for word in MEASURES) else SCALE_LIMIT
    return max(share * grams, FINEST_G)


@settings(max_examples=60, deadline=None)
@given(bakes(), EDITIONS, FACTORS)
def test_nothing_is_lost(bake: Bake, edition: str, factor: Fraction) -> None:
    """Every line is there, and what goes into the components adds up to the batch."""
    sheet = bake.sheet(edition, factor)
    own = [part for part in sheet.components if not part.base_slug]
    assert [len(part.lines) for part in own] == [len(part.lines) for part in bake.recipe.components]
    for part, written in zip(own, bake.recipe.components, strict=True):
        going_in = [line for line in part.lines if not line.is_part]
        assert exact(going_in) == weight(written.lines) * factor
    (batter, one, other) = own
    taken = [line for part in (one, other) for line in part.lines if line.name == "Batter"]
    assert exact(taken) == exact(line for line in batter.lines if not line.optional)
    (cream,) = (part for part in sheet.components if part.base_slug)
    made = exact(line for line in cream.lines if not line.optional)
    assert exact(line for line in other.lines if line.name == "Cream") == made


@settings(max_examples=60, deadline=None)
@given(bakes(), EDITIONS, FACTORS)
def test_ratios_are_kept_by_batch_and_by_edition(bake: Bake, edition: str, factor: Fraction) -> None:
    """Line by line, what is meant grows by the factor, and is the same weight in every region's words."""
    tested = bake.sheet("british-metric", Fraction(1))
    for line, more in zip(lines_of(tested), lines_of(bake.sheet(edition, factor)), strict=True):
        if line.exact_g is None:
            assert more.exact_g is None
        else:
            assert more.exact_g == line.exact_g * factor


@settings(max_examples=60, deadline=None)
@given(bakes(), EDITIONS, FACTORS)
def test_what_is_printed_weighs_what_is_meant(bake: Bake, edition: str, factor: Fraction) -> None:
    for line in lines_of(bake.sheet(edition, factor)):
        if line.exact_g is not None and line.printed_g is not None:
            assert abs(line.printed_g - line.exact_g) <= limit_g(line), (line.amount, line.name)


@settings(max_examples=60, deadline=None)
@given(bakes(), EDITIONS, FACTORS)
def test_no_line_is_nothing_or_less(bake: Bake, edition: str, factor: Fraction) -> None:
    for line in lines_of(bake.sheet(edition, factor)):
        assert line.name
        assert not line.amount.startswith(("0\u00a0", "0.0\u00a0", "-", "\N{MINUS SIGN}"))
        assert line.exact_g is None or line.exact_g > 0
        assert line.printed_g is None or line.printed_g > 0


@settings(max_examples=60, deadline=None)
@given(bakes(), EDITIONS, FACTORS)
def test_every_other_choice_stays_a_choice(bake: Bake, edition: str, factor: Fraction) -> None:
    sheet = bake.sheet(edition, factor)
    own = [part for part in sheet.components if not part.base_slug]
    for part, written in zip(own, bake.recipe.components, strict=True):
        for line, meant in zip(part.lines, written.lines, strict=True):
            if isinstance(meant, IngredientLine):
                assert len(line.others) == len(meant.choices) - 1
                assert line.optional == meant.optional


@settings(max_examples=60, deadline=None)
@given(bakes(), EDITIONS, FACTORS)
def test_a_range_stays_a_range(bake: Bake, edition: str, factor: Fraction) -> None:
    """Unless it is less than a spoon, or one measure is near enough to both of its ends."""
    sheet = bake.sheet(edition, factor)
    own = [part for part in sheet.components if not part.base_slug]
    for part, written in zip(own, bake.recipe.components, strict=True):
        for line, meant in zip(part.lines, written.lines, strict=True):
            if isinstance(meant, PartLine) or meant.amount is None or meant.amount.span.low < 2:
                continue
            span = meant.amount.span
            if span.high >= span.low * Fraction(7, 5) and not line.amount.endswith("pinch of"):
                assert any(mark in f"{line.amount} {line.beside}" for mark in ("\N{EN DASH}", " to ")), line


FLOURS = st.sampled_from([row for row in TABLES.larder.ingredients if "flour" in row.roles])


@st.composite
def balanced(draw: st.DrawFn) -> Component:
    """Flour, and up to five things beside it, none heavier than it by half."""
    flour = draw(st.integers(120, 900))
    row = draw(FLOURS)
    lines = [IngredientLine("", Amount(single(flour), "g"), (Choice(row.key, row.key),))]
    for other in draw(st.lists(ROWS, min_size=1, max_size=5)):
        grams = draw(st.integers(2, flour * 3 // 2))
        lines.append(IngredientLine("", Amount(single(grams), "g"), (Choice(other.key, other.key),)))
    return component("Dough", lines)


@settings(max_examples=100, deadline=None)
@given(balanced(), EDITIONS, FACTORS)
def test_the_balance_of_any_formula_holds(dough: Component, edition: str, factor: Fraction) -> None:
    """No ingredient moves by over 4 % of the flour (common practice), in any words and at any batch."""
    setting = Setting(TABLES, WRITTEN, TABLES.editions[edition])
    lines = printed_lines(dough, factor, [None] * len(dough.lines), setting).lines
    for line, points in zip(lines, drift_points(lines), strict=True):
        assert points is None or abs(points) <= DRIFT_LIMIT, (line.amount, line.name, float(points))
