"""What is in the finished dish: everything once, nothing that is left over."""

from dataclasses import replace
from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import Amount, Span, single
from sitegen.kitchen.dish import Dish, dish_of
from sitegen.kitchen.larder import Composition
from sitegen.kitchen.method import OvenSetting, Step, Words
from sitegen.kitchen.nutrition_table import AlcoholLeft, BakeLoss, NutritionTable
from sitegen.kitchen.recipe import BaseUse, Choice, Component, IngredientLine, Line, Makes, PartLine, Recipe
from sitegen.kitchen.shares import made_components

NONE = Fraction(0)
HOT = OvenSetting(Fraction(160), "celsius", True)
BAKE = Step((Words("Bake."),), oven=HOT)
STIR = Step((Words("Stir."),))
TABLE = NutritionTable(
    bake_losses=(BakeLoss("other bakes", "oven", (), Fraction(1, 10), "common-practice"),),
    alcohol_left=AlcoholLeft(oven=Fraction(45, 100), hob=Fraction(85, 100)),
    taken_out=frozenset({"bay leaf"}),
)


def holding(**grams: int) -> Composition:
    zero = dict.fromkeys(("fat", "saturates", "carbohydrate", "sugars", "fibre", "protein", "salt"), NONE)
    given = {name: Fraction(value) for name, value in grams.items()}
    return Composition(**{**zero, "water": NONE, **given}, source="own-scales")


FOODS = {
    "butter": holding(fat=80, water=16),
    "sugar": holding(carbohydrate=100, sugars=100),
    "egg": holding(fat=10, protein=12, water=76),
    "brandy": holding(alcohol=33, water=67),
    "water": holding(water=100),
}


def line(value: int | None, name: str, *, unit: str = "g", optional: bool = False) -> IngredientLine:
    amount = None if value is None else Amount(single(value), unit)
    return IngredientLine(name, amount, (Choice(name, name),), optional=optional)


def all_of(source: str, share: str = "1", *, base: bool = False) -> PartLine:
    return PartLine(f"all of {source}", source, Fraction(share), None, base)


def weight(value: int, source: str, *, base: bool = True) -> PartLine:
    return PartLine(f"{value} g of {source}", source, None, Amount(single(value), "g"), base)


def part(title: str, *lines: Line, step: Step = STIR) -> Component:
    return Component(title, lines, (step,))


def recipe(title: str, *components: Component, makes_g: int | None = None) -> Recipe:
    makes = Makes(
        Fraction(makes_g or 12), "" if makes_g else "slices", Fraction(makes_g) if makes_g else None
    )
    return Recipe(title.casefold(), title, "", makes, components)


def weigh(one: IngredientLine) -> Span | None:
    return one.amount.span if one.amount and one.amount.unit == "g" else None


def dish(cake: Recipe, *bases: Recipe, factor: str = "1") -> Dish:
    made = made_components(cake, {base.title: base for base in bases}, Fraction(factor), weigh)
    return dish_of(cake, made, lambda choice: FOODS.get(choice.ingredient), TABLE)


def test_all_that_goes_in_is_in_it() -> None:
    found = dish(recipe("Cake", part("Cream", line(100, "butter"), line(200, "sugar"))))
    assert (found.nutrients.fat, found.nutrients.sugars, found.grams) == (80, 200, 300)
    assert found.known_share == 1


def test_what_is_steeped_and_taken_out_is_neither_weighed_nor_missing() -> None:
    cake = recipe(
        "Cake", part("Cream", line(100, "butter"), line(10, "bay leaf"), line(2, "bay leaf", unit=""))
    )
    found = dish(cake)
    assert (found.grams, found.known_share, found.missing, found.unweighed) == (100, 1, (), ())


def test_a_component_that_others_take_whole_is_counted_once() -> None:
    cake = recipe(
        "Cake",
        part("Batter", line(100, "sugar")),
        part("One", all_of("Batter", "1/3"), line(50, "butter")),
        part("Other", all_of("Batter", "2/3")),
        part("Assembly", all_of("One"), all_of("Other")),
    )
    assert (dish(cake).nutrients.sugars, dish(cake).grams) == (100, 150)


def test_what_is_left_of_a_component_is_no_part_of_it() -> None:
    cake = recipe("Cake", part("Cream", line(100, "sugar")), part("Top", weight(75, "Cream", base=False)))
    assert (dish(cake).nutrients.sugars, dish(cake).grams) == (75, 75)


def test_leftovers_of_a_component_keep_their_parts_out_too() -> None:
    cake = recipe(
        "Cake",
        part("Syrup", line(100, "sugar")),
        part("Cream", all_of("Syrup"), line(100, "butter")),
        part("Top", weight(100, "Cream", base=False)),
    )
    assert (dish(cake).nutrients.sugars, dish(cake).nutrients.fat) == (50, 40)


def test_a_base_recipe_brings_the_share_that_is_taken() -> None:
    base = recipe("Base", part("Cream", line(400, "butter"), line(600, "sugar")))
    cake = recipe("Cake", part("Top", weight(250, "Base")))
    assert (dish(cake, base).nutrients.sugars, dish(cake, base).grams) == (150, 250)


def test_a_base_of_several_components_brings_all_of_them() -> None:
    base = recipe("Base", part("Cream", line(100, "butter")), part("Syrup", line(100, "sugar")))
    cake = recipe("Cake", part("Top", weight(100, "Base")))
    assert (dish(cake, base).nutrients.sugars, dish(cake, base).nutrients.fat) == (50, 40)


def test_what_is_spare_of_a_base_recipe_is_no_part_of_it() -> None:
    base = recipe("Base", part("Cream", line(1000, "sugar")))
    cake = replace(
        recipe("Cake", part("Top", weight(200, "Base"))), base_uses=(BaseUse("Base", spare=Fraction(1, 10)),)
    )
    assert (dish(cake, base).nutrients.sugars, dish(cake, base).grams) == (200, 200)


def test_what_stays_in_the_bowl_of_a_base_recipe_takes_its_nutrients_along() -> None:
    base = recipe("Base", part("Cream", line(1000, "sugar")), makes_g=950)
    cake = recipe("Cake", part("Top", weight(95, "Base")))
    assert (dish(cake, base).nutrients.sugars, dish(cake, base).grams) == (95, 95)


def test_the_oven_takes_water_and_nothing_else() -> None:
    found = dish(recipe("Cake", part("Sponge", line(100, "egg"), line(100, "sugar"), step=BAKE)))
    assert (found.grams, found.nutrients.sugars, found.nutrients.protein) == (180, 100, 12)


def test_no_more_goes_off_than_there_is_water() -> None:
    assert dish(recipe("Cake", part("Crumb", line(100, "sugar"), line(2, "water"), step=BAKE))).grams == 100


def test_a_bake_takes_of_the_parts_that_are_in_it() -> None:
    cake = recipe("Cake", part("Batter", line(200, "egg")), part("Cake", all_of("Batter"), step=BAKE))
    assert dish(cake).grams == 180


def test_a_part_that_joins_after_the_bake_keeps_its_water() -> None:
    cake = recipe(
        "Cake",
        part("Sponge", line(200, "egg"), step=BAKE),
        part("Assembly", all_of("Sponge"), line(100, "egg")),
    )
    assert dish(cake).grams == 280


def test_alcohol_that_is_baked_goes_off_in_part() -> None:
    cake = recipe("Cake", part("Prunes", line(100, "brandy")), part("Cake", all_of("Prunes"), step=BAKE))
    assert dish(cake).nutrients.alcohol == Fraction(33) * 45 / 100


@pytest.mark.parametrize("factor", ["1/2", "1", "24"])
def test_a_batch_has_the_same_in_100_g(factor: str) -> None:
    cake = recipe("Cake", part("Sponge", line(100, "egg"), line(100, "sugar"), step=BAKE))
    found = dish(cake, factor=factor)
    assert found.nutrients.protein / found.grams == Fraction(12, 180)


def test_the_missing_are_named_with_their_share_the_heaviest_first() -> None:
    found = dish(recipe("Cake", part("Cream", line(90, "butter"), line(2, "myrtle"), line(8, "rose syrup"))))
    assert found.known_share == Fraction(9, 10)
    assert [(one.choice.name, one.share) for one in found.missing] == [
        ("rose syrup", Fraction(8, 100)),
        ("myrtle", Fraction(2, 100)),
    ]


def test_what_cannot_be_weighed_is_named() -> None:
    found = dish(recipe("Cake", part("Cream", line(90, "butter"), line(1, "sugar", unit="handful"))))
    assert [choice.name for choice in found.unweighed] == ["sugar"]


def test_what_is_optional_or_has_no_amount_does_not_count() -> None:
    lines = (line(100, "butter"), line(50, "sugar", optional=True), line(None, "sugar"))
    found = dish(recipe("Cake", part("Cream", *lines)))
    assert (found.nutrients.sugars, found.grams, found.unweighed) == (0, 100, ())
