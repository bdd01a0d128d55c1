"""Components taken apart into ingredients, those of their parts among them."""

from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import Amount, Span, single
from sitegen.kitchen.contents import Contents, Unpacking
from sitegen.kitchen.larder import Ingredient
from sitegen.kitchen.part_errors import BaseCircle
from sitegen.kitchen.part_weights import PartScale
from sitegen.kitchen.recipe import Choice, Component, IngredientLine, Line, Makes, PartLine, Recipe


def grams(number: int | None, name: str, optional: bool = False) -> IngredientLine:
    amount = None if number is None else Amount(single(number), "g")
    return IngredientLine(name, amount, (Choice(name, name),), optional=optional)


def part(source: str, share: str | None = None, weight: int | None = None, base: bool = False) -> PartLine:
    amount = Amount(single(weight), "g") if weight else None
    return PartLine(source, source, Fraction(share) if share else None, amount, from_base=base)


def recipe(title: str, *components: Component, makes_g: int | None = None) -> Recipe:
    makes = Makes(Fraction(makes_g), "", Fraction(makes_g)) if makes_g else Makes(Fraction(1), "cake")
    return Recipe(title, title, "", makes, components)


def component(title: str, *lines: Line, bake_loss: str | None = None) -> Component:
    return Component(title, lines, (), bake_loss=Fraction(bake_loss) if bake_loss else None)


def weigh(line: IngredientLine) -> Span | None:
    return line.amount.span if line.amount and line.chosen.name != "feathers" else None


def taken_apart(owner: Recipe, title: str, *bases: Recipe) -> Contents:
    scale = PartScale({base.title: base for base in bases}, weigh)
    wanted = owner.component(title)
    assert wanted is not None
    return Unpacking(scale, lambda choice: Ingredient(choice.name, {})).component(owner, wanted)


def told(contents: Contents) -> list[tuple[str, Fraction | None, str]]:
    return [(held.choice.name, held.grams, held.brought_by) for held in contents]


def test_what_is_not_measured_or_left_to_the_cook_is_left_out() -> None:
    cake = component("Cake", grams(100, "flour"), grams(None, "oil"), grams(5, "seeds", optional=True))
    assert told(taken_apart(recipe("R", cake), "Cake")) == [("flour", 100, "")]


def test_what_cannot_be_weighed_stays_without_a_weight() -> None:
    cake = component("Cake", grams(100, "flour"), grams(1, "feathers"))
    assert told(taken_apart(recipe("R", cake), "Cake")) == [("flour", 100, ""), ("feathers", None, "")]


def test_a_share_of_a_part_brings_its_share_of_everything() -> None:
    starter = component("Starter", grams(100, "flour"), grams(80, "water"))
    dough = component("Dough", part("Starter", "1/2"), grams(300, "flour"))
    assert told(taken_apart(recipe("R", starter, dough), "Dough")) == [
        ("flour", 50, "Starter"), ("water", 40, "Starter"), ("flour", 300, ""),
    ]  # fmt: skip


def test_a_weight_of_a_part_is_taken_once_it_is_baked() -> None:
    """100 g of flour and 100 g of water, a tenth of which bakes off: 90 g are half of it."""
    crumb = component("Crumb", grams(100, "flour"), grams(100, "water"), bake_loss="1/10")
    top = component("Top", part("Crumb", weight=90))
    assert told(taken_apart(recipe("R", crumb, top), "Top")) == [
        ("flour", 50, "Crumb"),
        ("water", 50, "Crumb"),
    ]


def test_a_base_recipe_is_held_against_the_weight_that_it_says_it_makes() -> None:
    base = recipe("Cream", component("Cream", grams(500, "milk"), grams(100, "sugar")), makes_g=500)
    filling = component("Filling", part("Cream", weight=250, base=True))
    assert told(taken_apart(recipe("R", filling), "Filling", base)) == [
        ("milk", 250, "Cream"),
        ("sugar", 50, "Cream"),
    ]


def test_a_part_of_a_part_is_named_by_the_one_that_was_taken() -> None:
    inner = component("Inner", grams(100, "flour"))
    outer = component("Outer", part("Inner", "1"), grams(50, "water"))
    base = recipe("Base", inner, outer)
    top = component("Top", part("Base", "1/2", base=True))
    assert told(taken_apart(recipe("R", top), "Top", base)) == [("flour", 50, "Base"), ("water", 25, "Base")]


def test_components_that_are_made_of_each_other_are_a_circle() -> None:
    one, two = component("One", part("Two", "1")), component("Two", part("One", "1"))
    with pytest.raises(BaseCircle):
        taken_apart(recipe("R", one, two), "One")


def test_base_recipes_that_are_made_of_each_other_are_a_circle() -> None:
    one = recipe("One", component("A", part("Two", weight=5, base=True)))
    two = recipe("Two", component("A", part("One", weight=5, base=True)))
    with pytest.raises(BaseCircle):
        taken_apart(one, "A", one, two)
