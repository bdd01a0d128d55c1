"""Allergens by the law of the region."""

from sitegen.kitchen.allergens import allergens
from sitegen.kitchen.larder import Ingredient


def food(key: str, eu: tuple[str, ...], us: tuple[str, ...]) -> Ingredient:
    return Ingredient(key=key, names={}, allergens_eu=eu, allergens_us=us)


FLOUR = food("plain flour", ("wheat",), ("wheat",))
RYE = food("rye flour", ("rye",), ())
BUTTER = food("butter", ("milk",), ("milk",))
ALMONDS = food("ground almonds", ("almonds",), ("almond",))
PINE_NUTS = food("pine nuts", (), ("pine nut",))
SULTANAS = food("sultanas", ("sulphites",), ())


def test_the_order_of_the_regulation_not_of_the_recipe() -> None:
    basket = (SULTANAS, ALMONDS, BUTTER, FLOUR, BUTTER, RYE)
    assert allergens(basket, "eu") == ("wheat", "rye", "milk", "almonds", "sulphites")


def test_the_us_names_nine_and_no_rye() -> None:
    assert allergens((FLOUR, RYE, BUTTER, PINE_NUTS, SULTANAS), "us") == ("milk", "pine nut", "wheat")


def test_pine_nuts_are_none_of_the_eu_nuts() -> None:
    assert allergens((PINE_NUTS,), "eu") == ()


def test_a_name_outside_the_regulation_is_not_lost() -> None:
    assert allergens((food("odd", ("zinc",), ()), BUTTER), "eu") == ("milk", "zinc")
