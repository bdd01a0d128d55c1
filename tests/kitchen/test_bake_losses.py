"""What heat takes of a component."""

from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import Amount, single
from sitegen.kitchen.bake_losses import Heat, Loss, alcohol_kept, heat_of, loss_of
from sitegen.kitchen.method import OvenSetting, Step, Words
from sitegen.kitchen.nutrition_table import AlcoholLeft, BakeLoss, NutritionTable
from sitegen.kitchen.recipe import Choice, Component, IngredientLine, Makes, Recipe
from sitegen.kitchen.shares import MadeComponent

HOT = OvenSetting(Fraction(160), "celsius", True)
TABLE = NutritionTable(
    bake_losses=(
        BakeLoss("choux", "oven", ("choux",), Fraction(40, 100), "common-practice"),
        BakeLoss("other bakes", "oven", (), Fraction(9, 100), "common-practice"),
        BakeLoss("saucepan", "hob", (), Fraction(5, 100), "from-memory"),
    ),
    alcohol_left=AlcoholLeft(oven=Fraction(45, 100), hob=Fraction(85, 100)),
    hob_words=("boil", "simmer"),
    not_hob_words=("simmering water",),
    taken_out=frozenset({"bay leaf"}),
)


def step(text: str, oven: OvenSetting | None = None) -> Step:
    return Step((Words(text),), oven=oven)


def line(name: str) -> IngredientLine:
    return IngredientLine(name, Amount(single(100), "g"), (Choice(name, name),))


def component(title: str, *steps: Step, kind: str = "", bake_loss: str | None = None) -> Component:
    loss = None if bake_loss is None else Fraction(bake_loss)
    return Component(title, (line("cream"),), steps, kind=kind, bake_loss=loss)


def made(one: Component, put_in: int = 100) -> MadeComponent:
    return MadeComponent(one, Fraction(1), Fraction(put_in), None, (), (), (Fraction(put_in),))


def cake(*components: Component, makes: Makes | None = None) -> Recipe:
    return Recipe("cake", "Cake", "", makes or Makes(Fraction(12), "slices"), components)


def loss(one: Component, makes: Makes | None = None) -> Loss:
    return loss_of(made(one), cake(one, makes=makes), TABLE)


@pytest.mark.parametrize(
    ("text", "oven", "heat"),
    [
        ("Bake.", HOT, Heat.OVEN),
        ("Bring to the boil.", None, Heat.HOB),
        ("Simmer gently.", None, Heat.HOB),
        ("Melt in a bowl over simmering water.", None, Heat.NONE),
        ("Beat until pale.", None, Heat.NONE),
        ("Boil the syrup, then bake.", HOT, Heat.OVEN),
    ],
)
def test_a_method_tells_which_heat_a_component_meets(text: str, oven: OvenSetting | None, heat: Heat) -> None:
    assert heat_of(component("Sponge", step(text, oven)), TABLE) is heat


@pytest.mark.parametrize(
    ("title", "kind", "share", "row"),
    [
        ("Choux", "", 40, "choux"),
        ("Shells", "choux", 40, "choux"),
        ("Sponge", "creamed cake", 9, "other bakes"),
    ],
)
def test_a_kind_or_a_title_brings_its_row(title: str, kind: str, share: int, row: str) -> None:
    found = loss(component(title, step("Bake.", HOT), kind=kind))
    assert found == Loss(Fraction(share, 100), is_assumed=True, kind=row)


def test_a_title_alone_bakes_nothing() -> None:
    assert loss(component("Choux", step("Pipe."))) == Loss()


def test_the_bakers_own_loss_goes_first() -> None:
    assert loss(component("Choux", step("Bake.", HOT), bake_loss="1/10")) == Loss(Fraction(1, 10))


def test_a_weight_that_is_less_than_what_goes_in_is_water_lost_where_it_was_boiled() -> None:
    custard = component("Custard", step("Boil."))
    assert loss(custard, Makes(Fraction(92), "", Fraction(92))) == Loss(water=Fraction(8, 100))


def test_the_same_of_a_cold_mixture_stays_in_the_bowl() -> None:
    cream = component("Buttercream", step("Beat."))
    assert loss(cream, Makes(Fraction(98), "", Fraction(98))) == Loss(waste=Fraction(2, 100))


def test_the_weight_of_pieces_of_dough_says_nothing_of_the_oven() -> None:
    rolls = Makes(Fraction(2), "rolls", Fraction(90))
    assert loss(component("Rolls", step("Bake.", HOT)), rolls).is_assumed


@pytest.mark.parametrize(
    ("text", "oven", "kept"), [("Bake.", HOT, 45), ("Boil.", None, 85), ("Stir.", None, 100)]
)
def test_heat_drives_alcohol_off(text: str, oven: OvenSetting | None, kept: int) -> None:
    assert alcohol_kept(made(component("Filling", step(text, oven))), TABLE) == Fraction(kept, 100)


def test_what_is_taken_out_is_no_loss_of_weight() -> None:
    """100 g of cream, a bay leaf in it, make 90 g: a tenth went off, whatever the leaf weighs."""
    steeped = Component("Cream", (line("cream"), line("bay leaf")), (step("Boil."),))
    makes = Makes(Fraction(90), "", Fraction(90))
    cream = MadeComponent(steeped, Fraction(1), Fraction(103), None, (), (), (Fraction(100), Fraction(3)))
    assert loss_of(cream, cake(steeped, makes=makes), TABLE).water == Fraction(1, 10)
