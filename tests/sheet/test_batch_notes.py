"""What another tin does to the bake, in words."""

from dataclasses import replace

from sitegen.kitchen.method import OvenSetting
from sitegen.kitchen.recipe import BatchAsk, BatchKind, Component, IngredientLine, Recipe, Tin
from sitegen.kitchen.scaling import batch_of
from sitegen.sheet.batch_notes import batch_notes
from tests.sheet.pantry import Fraction, line, minutes, recipe, says, setting, tables

OVEN = OvenSetting(Fraction(160), "celsius", fan=True)
FLOUR, POWDER = line(200, "g", "plain flour"), line(8, "g", "baking powder")


def loaf(depth: str, width: int = 11) -> Tin:
    top = (Fraction(width), Fraction(21))
    return Tin("loaf", *top, Fraction(depth), *top)


def baked(*lines: IngredientLine, tin: Tin) -> Recipe:
    bake = says("Bake.", oven=OVEN, wait_min=minutes(40, 44))
    return replace(recipe(Component("Cake", lines, (bake,))), tin=tin)


def notes(one: Recipe, wanted: Tin, edition: str = "british-metric") -> str:
    ask = BatchAsk(BatchKind.TIN, tin=wanted)
    batch = batch_of(ask, one, {}, tables(), tables().editions["british-metric"])
    return " ".join(batch_notes(one, batch, setting(edition))).replace("\u00a0", " ")


def test_a_deeper_tin_gives_a_window_a_first_look_and_a_lower_oven() -> None:
    """A quarter deeper: 40 to 44 minutes become 50 to 69, looked at from 40."""
    said = notes(baked(FLOUR, tin=loaf("6")), loaf("7.5", width=13))
    assert "as full as the tested one" in said
    assert "lies about 25 % deeper: where the recipe bakes for 40–44 min, expect 50 min – 1 h 10 min" in said
    assert "Begin to look after 40 min" in said
    assert "10–15 °C (20–25 °F) lower" in said


def test_a_shallower_tin_is_looked_at_sooner() -> None:
    said = notes(baked(FLOUR, tin=loaf("8")), loaf("6"))
    assert "25 % shallower" in said
    assert "expect 22–35 min. Begin to look after 18 min" in said
    assert "lower." not in said


def test_a_tin_half_as_deep_again_asks_for_less_leavening_where_there_is_some() -> None:
    warning = "take a tenth off the leavening"
    assert warning in notes(baked(FLOUR, POWDER, tin=loaf("5")), loaf("8"))
    assert warning not in notes(baked(FLOUR, tin=loaf("5")), loaf("8"))
    assert warning not in notes(baked(FLOUR, POWDER, tin=loaf("5")), loaf("6"))


def test_a_tin_of_nearly_the_same_size_says_so() -> None:
    assert "within a tenth of each other" in notes(baked(FLOUR, tin=loaf("6")), loaf("6", width=12))


def test_an_american_reads_of_pans() -> None:
    assert "In this pan the mixture lies" in notes(baked(FLOUR, tin=loaf("8")), loaf("6"), "us-cups")
