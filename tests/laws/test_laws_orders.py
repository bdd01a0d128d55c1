"""What holds for any order of the demo's recipes: nothing lost, nothing bought twice, nothing made twice."""

from collections.abc import Mapping
from fractions import Fraction
from functools import cache
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as some

from sitegen.kitchen.amounts import Span
from sitegen.kitchen.orders import Ordered, order_as_recipe
from sitegen.kitchen.recipe import IngredientLine, Recipe
from sitegen.kitchen.shares import MadeComponent, made_components
from sitegen.kitchen.shopping import Shopping, shopping_of
from sitegen.kitchen.weighing import Scales
from sitegen.source.library import read_content
from sitegen.source.school import Content

DEMO = Path(__file__).parents[2]
NOTHING = Fraction(0)
FACTORS = some.fractions(min_value=Fraction(1, 8), max_value=12, max_denominator=12)


@cache
def content() -> Content:
    found = read_content(DEMO)
    assert not [fault for fault in found.faults if fault.severity == "error"]
    return found


def scales() -> Scales:
    return Scales(content().tables, content().tables.editions["british-metric"])


def weigh(line: IngredientLine) -> Span | None:
    return scales().grams(line)


def bases() -> Mapping[str, Recipe]:
    return {recipe.title: recipe for recipe in content().recipes}


def made(recipe: Recipe, factor: Fraction = Fraction(1)) -> tuple[MadeComponent, ...]:
    return made_components(recipe, bases(), factor, weigh)


def made_for(order: Mapping[str, Fraction]) -> tuple[MadeComponent, ...]:
    ordered = [Ordered(bases()[title], factor) for title, factor in order.items()]
    return made(order_as_recipe("The order", ordered))


def bought(components: tuple[MadeComponent, ...]) -> Shopping:
    return shopping_of(components, scales(), scales().written, content().prices)


def ingredient_grams(components: tuple[MadeComponent, ...]) -> Fraction:
    """All ingredient lines of all components; part lines are other components' weights."""
    return sum(
        (
            grams
            for one in components
            for line, grams in zip(one.component.lines, one.line_grams, strict=True)
            if isinstance(line, IngredientLine) and grams is not None
        ),
        NOTHING,
    )


ORDERS = some.dictionaries(
    some.sampled_from(sorted(recipe.title for recipe in content().recipes)), FACTORS, min_size=1, max_size=5
)


@settings(max_examples=60, deadline=None)
@given(ORDERS)
def test_what_is_bought_is_what_goes_into_all_components(order: Mapping[str, Fraction]) -> None:
    components = made_for(order)
    assert bought(components).grams == ingredient_grams(components)


@settings(max_examples=60, deadline=None)
@given(ORDERS)
def test_an_order_takes_what_its_products_would_take_one_by_one(order: Mapping[str, Fraction]) -> None:
    alone = sum((ingredient_grams(made(bases()[title], factor)) for title, factor in order.items()), NOTHING)
    assert bought(made_for(order)).grams == alone


@settings(max_examples=30, deadline=None)
@given(ORDERS, some.integers(min_value=2, max_value=5))
def test_so_many_times_the_order_is_so_many_times_the_shopping(
    order: Mapping[str, Fraction], times: int
) -> None:
    more = {title: factor * times for title, factor in order.items()}
    assert bought(made_for(more)).grams == times * bought(made_for(order)).grams


@settings(max_examples=60, deadline=None)
@given(ORDERS)
def test_packs_hold_what_is_needed_and_one_less_would_not(order: Mapping[str, Fraction]) -> None:
    for one in bought(made_for(order)).to_buy:
        if one.packs is None or one.grams is None or one.pieces is not None:
            continue
        pack = scales().weigh(one.packs.each, one.choice)
        assert pack is not None
        assert (one.packs.number - 1) * pack.middle < one.grams <= one.packs.number * pack.middle


@settings(max_examples=60, deadline=None)
@given(ORDERS)
def test_the_eggs_to_crack_give_every_white_and_yolk_and_never_one_more_than_needed(
    order: Mapping[str, Fraction],
) -> None:
    for eggs in bought(made_for(order)).eggs:
        tenth = Fraction(1, 10)
        assert eggs.separated + tenth >= max(eggs.whites, eggs.yolks)
        assert eggs.number - eggs.separated + tenth >= eggs.whole
        assert eggs.number < eggs.whole + max(eggs.whites, eggs.yolks) + 2


@settings(max_examples=30, deadline=None)
@given(ORDERS)
def test_no_component_is_made_twice(order: Mapping[str, Fraction]) -> None:
    titles = [one.title for one in made_for(order)]
    assert len(titles) == len(set(titles))
