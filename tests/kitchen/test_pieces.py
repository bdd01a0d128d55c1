"""Dough by the piece."""

from fractions import Fraction

import pytest

from sitegen.kitchen.balances import BalanceTable, Kind
from sitegen.kitchen.pieces import (
    baked_g,
    baking_loss,
    dough_in_piece_g,
    flour_for_pieces,
    loss_of_recipe,
    wanted_piece,
)
from sitegen.kitchen.recipe import Component, Makes, PartLine, PieceWeight, Recipe

ROLL = Kind("soft roll", "dough", (), (Fraction(12, 100), Fraction(18, 100)))
DOUGH = Component("Dough", (), ())
ROLLS = Component("Rolls", (), (), bake_loss=Fraction(1, 10))
TWELVE = Makes(Fraction(12), "rolls", Fraction(1020), "dough")


def test_the_bakers_own_loss_goes_before_that_of_the_kind() -> None:
    assert baking_loss(DOUGH, [ROLLS], ROLL) == Fraction(1, 10)
    assert baking_loss(DOUGH, [], ROLL) == Fraction(15, 100)
    assert baking_loss(DOUGH, [], None) is None


def test_a_roll_of_85_g_dough_is_74_g_baked_where_an_eighth_goes_off() -> None:
    assert round(baked_g(Fraction(85), Fraction(1, 8))) == 74


@pytest.mark.parametrize(
    ("piece", "loss", "grams"),
    [
        (PieceWeight(Fraction(85)), None, "85"),
        (PieceWeight(Fraction(85), "dough"), "0.15", "85"),
        (PieceWeight(Fraction(85), "baked"), "0.15", "100"),
        (PieceWeight(Fraction(85), "baked"), None, None),
    ],
)
def test_a_piece_as_dough(piece: PieceWeight, loss: str | None, grams: str | None) -> None:
    found = dough_in_piece_g(piece, Fraction(loss) if loss else None)
    assert found == (Fraction(grams) if grams else None)


@pytest.mark.parametrize(
    ("each", "wanted"),
    [
        (None, PieceWeight(Fraction(85), "dough")),
        (PieceWeight(Fraction(60)), PieceWeight(Fraction(60), "dough")),
        (PieceWeight(Fraction(60), "baked"), PieceWeight(Fraction(60), "baked")),
    ],
)
def test_a_piece_that_says_no_more_is_weighed_as_the_recipes_own(
    each: PieceWeight | None, wanted: PieceWeight
) -> None:
    assert wanted_piece(each, TWELVE) == wanted


@pytest.mark.parametrize("makes", [Makes(Fraction(12), "rolls"), Makes(Fraction(900), "", Fraction(900))])
def test_a_yield_without_a_weight_of_pieces_has_no_piece(makes: Makes) -> None:
    assert wanted_piece(None, makes) is None


def dough(title: str, kind: str = "soft roll") -> Component:
    return Component(title, (), (), kind=kind)


def takes(title: str, source: str, loss: str | None = None) -> Component:
    line = PartLine(source, source, Fraction(1), None, from_base=False)
    return Component(title, (line,), (), bake_loss=Fraction(loss) if loss else None)


@pytest.mark.parametrize(
    ("components", "loss"),
    [
        ((dough("Dough"), takes("Rolls", "Dough")), "0.15"),
        ((dough("Dough"), takes("Rolls", "Dough", "0.1")), "0.1"),
        ((dough("Dough"), takes("Rolls", "Other dough", "0.1")), "0.15"),
        ((dough("Dough"), dough("Other dough")), None),
        ((dough("Dough", ""),), None),
    ],
)
def test_what_a_recipe_loses_is_what_its_one_dough_loses(
    components: tuple[Component, ...], loss: str | None
) -> None:
    recipe = Recipe("it", "It", "", TWELVE, components)
    assert loss_of_recipe(recipe, BalanceTable(kinds=(ROLL,))) == (Fraction(loss) if loss else None)


def test_flour_for_24_rolls_of_60_g_at_168_percent_with_2_percent_that_sticks() -> None:
    flour = flour_for_pieces(Fraction(24), Fraction(60), Fraction("1.68"), Fraction("0.02"))
    assert flour * Fraction("1.68") == 24 * 60 * Fraction("1.02")
