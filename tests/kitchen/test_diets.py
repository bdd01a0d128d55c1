"""Dietary words: what claims them, and what gives them the lie."""

import pytest

from sitegen.kitchen.diets import Diet, claimed_by, disagrees
from sitegen.kitchen.larder import Ingredient

VEGAN = Diet("vegan", ("vegan",), frozenset({"milk"}), frozenset({"honey"}), frozenset({"lard"}), ("vegan",))
NUT_FREE = Diet("nut-free", ("nut-free", "nut free"), roles=frozenset({"nut"}), promises=True)
BUTTER = Ingredient("butter", {}, allergens_eu=("milk",))
HONEY = Ingredient("honey", {}, roles=frozenset({"honey"}))
LARD = Ingredient("lard", {})
OIL = Ingredient("oil", {})


@pytest.mark.parametrize(
    ("text", "claimed"),
    [
        ("Vegan lemon cake", ("vegan",)),
        ("nut-free and vegan", ("vegan", "nut-free")),
        ("Nut free buns", ("nut-free",)),
        ("Lemon cake", ()),
        ("Las Vegans", ()),
    ],
)
def test_a_claim_is_a_whole_word(text: str, claimed: tuple[str, ...]) -> None:
    assert tuple(diet.key for diet in claimed_by(text, (VEGAN, NUT_FREE))) == claimed


@pytest.mark.parametrize(
    ("line", "row", "denied"),
    [
        ("50 g butter", BUTTER, True),  # by its allergen
        ("50 g honey", HONEY, True),  # by its role
        ("50 g lard", LARD, True),  # by its name
        ("50 g vegan butter", BUTTER, False),  # the line says that it is another kind
        ("50 g oil", OIL, False),
    ],
)
def test_an_ingredient_denies_a_claim(line: str, row: Ingredient, denied: bool) -> None:
    assert disagrees(VEGAN, line, row) is denied
