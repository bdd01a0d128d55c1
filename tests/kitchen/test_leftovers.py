"""What is left over, named once and in grams where it can be weighed."""

from fractions import Fraction

from sitegen.kitchen.amounts import Amount, Span, single
from sitegen.kitchen.leftovers import Leftover, leftovers
from sitegen.kitchen.recipe import BaseUse, Choice, Component, IngredientLine, Makes, PartLine, Recipe
from sitegen.kitchen.shares import made_components


def weigh(line: IngredientLine) -> Span | None:
    return line.amount.span if line.amount and line.amount.unit == "g" else None


def recipe(title: str, *components: Component, spare: str = "0", base: str = "") -> Recipe:
    uses = (BaseUse(base, spare=Fraction(spare)),) if base else ()
    return Recipe(title, title, "", Makes(Fraction(1), "cake"), components, base_uses=uses)


def of(amount: int, name: str, unit: str = "g") -> IngredientLine:
    return IngredientLine(name, Amount(single(amount), unit), (Choice(name, name),))


def left(cake: Recipe, *bases: Recipe) -> tuple[Leftover, ...]:
    titles = {base.title: base for base in bases}
    return leftovers(made_components(cake, titles, Fraction(1), weigh))


HALF_OF_JAM = Component("Filling", (PartLine("", "Base jam", Fraction(1, 2), None, True),), ())


def test_nothing_is_left_where_nothing_is_spared() -> None:
    jam = recipe("Base jam", Component("Jam", (of(800, "fruit"),), ()))
    assert left(recipe("Cake", HALF_OF_JAM), jam) == ()


def test_a_base_recipe_of_several_components_is_left_over_as_a_whole() -> None:
    rest = PartLine("", "Fruit", Fraction(1), None, False)
    parts = Component("Fruit", (of(600, "fruit"),), ()), Component("Jam", (rest, of(400, "sugar")), ())
    found = left(recipe("Cake", HALF_OF_JAM, spare="1/10", base="Base jam"), recipe("Base jam", *parts))
    assert found == (Leftover("Base jam", Fraction(1, 20), Fraction(50)),)


def test_what_cannot_be_weighed_is_left_over_as_a_share() -> None:
    jam = recipe("Base jam", Component("Jam", (of(3, "plums", "handful"),), ()))
    found = left(recipe("Cake", HALF_OF_JAM, spare="1/5", base="Base jam"), jam)
    assert found == (Leftover("Base jam", Fraction(1, 10), None),)


def test_a_component_leaves_what_no_weight_takes() -> None:
    curd = Component("Curd", (of(400, "lemon"),), ())
    top = Component("Top", (PartLine("", "Curd", None, Amount(single(250), "g"), False),), ())
    assert left(recipe("Tart", curd, top)) == (Leftover("Curd", Fraction(3, 8), Fraction(150)),)
