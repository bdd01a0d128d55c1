"""Base recipes and divided components: what is made, and how much of it."""

from dataclasses import replace
from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import Amount, Span, single
from sitegen.kitchen.part_errors import BaseCircle, MoreThanIsMade, NoWeight, SharesDontAddUp, UnknownPart
from sitegen.kitchen.recipe import BaseUse, Choice, Component, IngredientLine, Line, Makes, PartLine, Recipe
from sitegen.kitchen.shares import MadeComponent, made_components, part_grams


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


def using(cake: Recipe, *uses: BaseUse) -> Recipe:
    return replace(cake, base_uses=uses)


TWO_USERS = recipe(
    "Cake",
    part("Filling", weight(300, "Base buttercream")),
    part("Coat", weight(600, "Base buttercream"), grams(50, "puree")),
)


def test_a_base_recipe_is_made_for_each_where_the_baker_says_so() -> None:
    cake = using(TWO_USERS, BaseUse("Base buttercream", made_once=False))
    components = made(cake, BUTTERCREAM)
    assert [one.title for one in components] == [
        "Base buttercream, for Filling",
        "Filling",
        "Base buttercream, for Coat",
        "Coat",
    ]
    assert [one.factor for one in components] == [Fraction(1, 3), 1, Fraction(2, 3), 1]
    assert [one.needed_by for one in components] == [("Filling",), (), ("Coat",), ()]
    assert components[1].calls["Base buttercream"] == "Base buttercream, for Filling"
    assert components[3].calls["Base buttercream"] == "Base buttercream, for Coat"


def test_made_for_each_or_once_the_same_goes_in() -> None:
    once = made(TWO_USERS, BUTTERCREAM)
    each = made(using(TWO_USERS, BaseUse("Base buttercream", made_once=False)), BUTTERCREAM)
    assert sum(one.grams or 0 for one in each) == sum(one.grams or 0 for one in once)


def test_five_per_cent_more_is_made_and_left_over() -> None:
    cake = using(TWO_USERS, BaseUse("Base buttercream", spare=Fraction(1, 20)))
    base, filling, coat = made(cake, BUTTERCREAM, factor="2")
    assert base.grams == 1800 + 90
    assert (base.left_share, base.left_g) == (Fraction(1, 10), 90)
    assert (filling.left_g, coat.left_g) == (0, 0)
    assert part_grams(filling) == (Fraction(600),)


CUSTARD = recipe("Base custard", part("Custard", grams(300, "milk"), grams(100, "sugar")))
MOUSSELINE = recipe("Mousseline", part("Cream", weight(200, "Base custard"), grams(100, "butter")))
GATEAU = recipe(
    "Gateau",
    part("Layers", weight(150, "Mousseline")),
    part("Rosettes", weight(300, "Mousseline"), weight(40, "Base custard")),
)


def test_three_levels_deep_each_making_answers_for_its_own_users() -> None:
    components = made(GATEAU, CUSTARD, MOUSSELINE)
    assert [one.title for one in components] == ["Base custard", "Mousseline", "Layers", "Rosettes"]
    custard, mousseline, _, _ = components
    assert mousseline.grams == 450
    assert custard.grams == 300 + 40
    assert custard.needed_by == ("Mousseline", "Rosettes")


def test_what_is_spared_at_one_level_is_made_of_more_at_the_next() -> None:
    gateau = using(GATEAU, BaseUse("Mousseline", spare=Fraction(1, 10)))
    mousseline = using(MOUSSELINE, BaseUse("Base custard", spare=Fraction(1, 5)))
    custard, cream, _, _ = made(gateau, CUSTARD, mousseline)
    assert cream.grams == 495
    assert cream.left_g == 45
    assert custard.grams == 330 * Fraction(6, 5) + 40
    assert custard.left_g == 66


def test_a_base_made_for_each_may_share_its_own_base() -> None:
    gateau = using(GATEAU, BaseUse("Mousseline", made_once=False))
    titles_made = [one.title for one in made(gateau, CUSTARD, MOUSSELINE)]
    assert titles_made == [
        "Base custard",
        "Mousseline, for Layers",
        "Layers",
        "Mousseline, for Rosettes",
        "Rosettes",
    ]


def test_bases_made_for_each_to_any_depth_are_told_apart() -> None:
    gateau = using(GATEAU, BaseUse("Mousseline", made_once=False))
    mousseline = using(MOUSSELINE, BaseUse("Base custard", made_once=False))
    components = made(gateau, CUSTARD, mousseline)
    bases = [one.title for one in components if one.base is not None]
    assert bases == [
        "Base custard, for Mousseline, for Layers",
        "Mousseline, for Layers",
        "Base custard, for Mousseline, for Rosettes",
        "Mousseline, for Rosettes",
        "Base custard",
    ]
    assert components[0].grams == 100
    assert components[3].grams == 200


def test_components_of_one_title_bear_the_name_of_their_base_recipe() -> None:
    tart = recipe("Base tart", part("Filling", grams(200)), part("Shell", share("1", "Filling")))
    cake = recipe("Cake", part("Filling", grams(100)), part("Top", share("1/2", "Base tart", base=True)))
    assert [one.title for one in made(cake, tart)] == ["Filling", "Filling of Base tart", "Shell", "Top"]
    assert made(cake, tart)[2].needed_by == ("Top",)
    assert made(cake, tart)[0].needed_by == ()


def test_what_a_weight_leaves_of_a_component_is_left_over() -> None:
    tart = recipe("Tart", part("Curd", grams(400)), part("Top", weight(250, "Curd", base=False)))
    curd, top = made(tart, factor="3")
    assert (curd.left_g, curd.left_share) == (450, Fraction(9, 8))
    assert top.left_g == 0


def test_what_boils_off_is_not_left_over() -> None:
    curd = replace(part("Curd", grams(400)), bake_loss=Fraction(1, 10))
    taken = part("Top", share("1/2", "Curd")), part("Base", weight(150, "Curd", base=False))
    assert made(recipe("Tart", curd, *taken))[0].left_g == 30


def test_more_than_is_there_once_it_is_boiled_down() -> None:
    curd = replace(part("Curd", grams(400)), bake_loss=Fraction(1, 10))
    with pytest.raises(MoreThanIsMade) as refused:
        made(recipe("Tart", curd, part("Top", weight(380, "Curd", base=False))))
    assert refused.value.made_g == 360


def test_what_is_left_over_inside_a_base_recipe_is_no_part_of_what_it_makes() -> None:
    tart = recipe("Base top", part("Curd", grams(400)), part("Top", weight(250, "Curd", base=False)))
    cake = recipe("Cake", part("Filling", weight(125, "Base top")))
    curd, top, _ = made(cake, tart)
    assert top.grams == 125
    assert curd.left_g == 75
