"""Bands of times and groups of allergens, by which readers choose recipes."""

from fractions import Fraction

import pytest

from sitegen.kitchen.finding import AllergenGroup, TimeBand
from sitegen.kitchen.larder import Ingredient

HOUR = TimeBand("hour", "in an hour", Fraction(0), Fraction(60))
LONG = TimeBand("long", "over an hour", Fraction(60), None)
NUTS = AllergenGroup(
    "nuts",
    "nuts",
    {"eu": ("almonds", "hazelnuts"), "us": ("almond", "hazelnut", "pine nut")},
    {"us": "tree nuts"},
    frozenset({"nut"}),
)


@pytest.mark.parametrize(
    ("minutes", "bands"), [(0, []), (1, [HOUR]), (60, [HOUR]), (61, [LONG]), (10_000, [LONG])]
)
def test_a_band_ends_with_its_last_minute_and_no_time_belongs_nowhere(
    minutes: int, bands: list[TimeBand]
) -> None:
    assert [band for band in (HOUR, LONG) if band.holds(Fraction(minutes))] == bands


def test_an_ingredient_is_in_a_group_by_the_law_of_its_region() -> None:
    almonds = Ingredient("almonds", {}, allergens_eu=("almonds",), allergens_us=("almond",))
    assert NUTS.is_in(almonds, "eu")
    assert NUTS.is_in(almonds, "us")
    assert not NUTS.is_in(Ingredient("butter", {}, allergens_eu=("milk",)), "eu")


def test_what_a_law_passes_over_is_in_the_group_by_its_role() -> None:
    """The EU's law lists no pine nut."""
    pine_nuts = Ingredient("pine nuts", {}, allergens_us=("pine nut",), roles=frozenset({"nut"}))
    assert NUTS.is_in(pine_nuts, "eu")


def test_a_regime_may_have_a_word_of_its_own() -> None:
    assert (NUTS.title_in("us"), NUTS.title_in("eu")) == ("tree nuts", "nuts")
