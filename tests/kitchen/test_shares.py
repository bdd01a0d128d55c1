"""Base recipes and divided components: what is made, and how much of it."""

from dataclasses import replace
from fractions import Fraction

import pytest

from sitegen.kitchen.recipe import (
    Amount,
    Choice,
    Component,
    IngredientLine,
    Line,
    Makes,
    PartLine,
    Recipe,
    Span,
    single,
)
from sitegen.kitchen.shares import (
    BaseCircle,
    MadeComponent,
    MoreThanIsMade,
    NoWeight,
    SharesDontAddUp,
    UnknownPart,
    made_components,
    part_grams,
)


def grams(value: int, name: str = "sugar") -> IngredientLine:
    return IngredientLine(f"{value} g {name}", Amount(single(value), "g"), (Choice(name, name),))


def handful(name: str) -> IngredientLine:
    return IngredientLine(f"a handful of {name}", Amount(single(1), "handful"), (Choice(name, name),))


def share(value: str, source: str, *, base: bool = False) -> PartLine:
    return PartLine(f"{value} of {source}", source, Fraction(value), None, base)


def weight(value: int, source: str, *, base: bool = True) -> PartLine:
    return PartLine(f"{value} g of {source}", source, None, Amount(single(value), "g"), base)


def part(title: str, *lines: Line) -> Component:
    return Component(title, lines, ())


def recipe(title: str, *components: Component, makes_g: int | None = None) -> Recipe:
    makes = Makes(Fraction(makes_g or 1), "" if makes_g else "cake", Fraction(makes_g) if makes_g else None)
    return Recipe(title.casefold(), title, "", makes, components)


def weigh(line: IngredientLine) -> Span | None:
    return line.amount.span if line.amount and line.amount.unit == "g" else None


def made(cake: Recipe, *bases: Recipe, factor: str = "1") -> tuple[MadeComponent, ...]:
    return made_components(cake, {base.title: base for base in bases}, Fraction(factor), weigh)


def titles(components: tuple[MadeComponent, ...]) -> list[str]:
    return [one.component.title for one in components]


BUTTERCREAM = recipe("Base buttercream", part("Buttercream", grams(300, "butter"), grams(600)), makes_g=900)


def test_a_base_recipe_stands_just_before_the_first_component_that_needs_it() -> None:
    cake = recipe("Cake", part("Sponge", grams(500)), part("Filling", weight(450, "Base buttercream")))
    sponge, base, filling = made(cake, BUTTERCREAM)
    assert titles((sponge, base, filling)) == ["Sponge", "Buttercream", "Filling"]
    assert base.factor == Fraction(1, 2)
    assert base.grams == 450
    assert base.base == BUTTERCREAM
    assert base.needed_by == ("Filling",)
    assert filling.factor == 1
    assert filling.base is None


def test_a_base_recipe_is_made_once_for_all_that_use_it() -> None:
    cake = recipe(
        "Cake",
        part("Filling", weight(300, "Base buttercream")),
        part("Coat", weight(600, "Base buttercream"), grams(50, "puree")),
    )
    components = made(cake, BUTTERCREAM, factor="2")
    assert titles(components) == ["Buttercream", "Filling", "Coat"]
    assert components[0].factor == 2
    assert components[0].needed_by == ("Filling", "Coat")
    assert part_grams(components[2]) == (Fraction(1200), None)
    assert components[2].grams == 1300


def test_base_recipes_nest_to_any_depth() -> None:
    custard = recipe("Base custard", part("Custard", grams(400, "milk")))
    half = share("1/2", "Base custard", base=True)
    mousseline = recipe("Mousseline", part("Cream", half, grams(100, "butter")))
    filling = part("Filling", share("2", "Mousseline", base=True))
    cake = recipe("Cake", filling, part("Top", weight(200, "Base custard")))
    components = made(cake, custard, mousseline)
    assert titles(components) == ["Custard", "Cream", "Filling", "Top"]
    assert [one.factor for one in components] == [Fraction(3, 2), 2, 1, 1]
    assert [one.grams for one in components] == [600, 600, 600, 200]


def test_a_share_of_a_base_recipe_needs_no_weight() -> None:
    jam = recipe("Base jam", part("Jam", handful("plums")))
    base, filling = made(recipe("Cake", part("Filling", share("1/3", "Base jam", base=True))), jam)
    assert base.factor == Fraction(1, 3)
    assert (base.grams, base.unknown) == (None, ("plums",))
    assert part_grams(filling) == (None,)


def test_the_weight_that_a_base_recipe_makes_counts_the_water_boiled_off() -> None:
    jam = recipe("Base jam", part("Jam", grams(1000, "fruit"), grams(600)), makes_g=1200)
    base, _ = made(recipe("Cake", part("Filling", weight(300, "Base jam"))), jam)
    assert base.factor == Fraction(1, 4)
    assert base.grams == 300


def test_a_component_is_divided_by_share() -> None:
    bread = recipe(
        "Plait",
        part("Dough", grams(700, "flour"), grams(300, "milk")),
        part("Plain", share("3/5", "Dough")),
        part("Cocoa", share("2/5", "Dough"), grams(20, "cocoa")),
    )
    dough, plain, cocoa = made(bread, factor="3")
    assert dough.needed_by == ("Plain", "Cocoa")
    assert part_grams(plain) == (Fraction(1800),)
    assert part_grams(cocoa) == (Fraction(1200), None)
    assert cocoa.grams == 1260


def test_lines_without_a_measure_weigh_nothing_and_are_not_missing() -> None:
    dusting = IngredientLine("flour, for dusting", None, (Choice("flour", "flour"),))
    almonds = replace(grams(20, "almonds"), optional=True)
    (only,) = made(recipe("Buns", part("Dough", grams(500, "flour"), dusting, almonds)))
    assert only.grams == 500
    assert only.unknown == ()
    assert only.line_grams == (Fraction(500), None, None)


def test_what_cannot_be_weighed_is_named_once() -> None:
    (only,) = made(recipe("Buns", part("Dough", grams(5), handful("mint"), handful("mint"))))
    assert (only.grams, only.unknown) == (None, ("mint",))


@pytest.mark.parametrize("shares", [("1/2", "1/3"), ("1/2", "2/3"), ("1/4",)])
def test_shares_of_a_component_make_one_whole(shares: tuple[str, ...]) -> None:
    parts = (part(f"Part {index}", share(value, "Dough")) for index, value in enumerate(shares))
    with pytest.raises(SharesDontAddUp) as refused:
        made(recipe("Buns", part("Dough", grams(600)), *parts))
    assert refused.value.title == "Dough"
    assert refused.value.total == sum(map(Fraction, shares))


def test_no_more_is_taken_of_a_component_than_it_weighs() -> None:
    taken = (part("Filling", weight(200, "Curd", base=False)), part("Top", weight(150, "Curd", base=False)))
    with pytest.raises(MoreThanIsMade) as refused:
        made(recipe("Tart", part("Curd", grams(300)), *taken))
    assert refused.value.taken_g == 350
    assert refused.value.made_g == 300


def test_some_of_a_component_may_be_left_over_where_it_is_taken_by_weight() -> None:
    assert (
        len(made(recipe("Tart", part("Curd", grams(300)), part("Top", weight(150, "Curd", base=False))))) == 2
    )


def test_base_recipes_in_a_circle_name_the_way_round() -> None:
    one = recipe("One", part("A", share("1/2", "Two", base=True)))
    two = recipe("Two", part("B", share("1/2", "One", base=True)))
    with pytest.raises(BaseCircle) as refused:
        made(one, one, two)
    assert refused.value.titles == ("One", "Two", "One")


def test_components_in_a_circle_name_the_way_round() -> None:
    knot = recipe("Knot", part("A", share("1", "B")), part("B", share("1", "A")))
    with pytest.raises(BaseCircle) as refused:
        made(knot)
    assert refused.value.titles == ("A", "B", "A")


@pytest.mark.parametrize(
    "line", [share("1", "Nothing"), weight(20, "Nothing"), share("1", "Nothing", base=True)]
)
def test_a_part_of_nothing_known(line: PartLine) -> None:
    with pytest.raises(UnknownPart) as refused:
        made(recipe("Cake", part("Filling", line)))
    assert refused.value.title == "Nothing"


def test_a_weight_of_a_base_recipe_that_cannot_be_weighed() -> None:
    jam = recipe("Base jam", part("Jam", handful("plums"), grams(100)))
    with pytest.raises(NoWeight) as refused:
        made(recipe("Cake", part("Filling", weight(50, "Base jam"))), jam)
    assert (refused.value.title, refused.value.unknown) == ("Base jam", ("plums",))
