"""Will it fit: what is told of a batter that is too much, and what is not."""

from collections.abc import Mapping
from dataclasses import replace

import pytest

from sitegen.faults import Place
from sitegen.kitchen.method import OvenSetting
from sitegen.kitchen.recipe import BatchAsk, BatchKind, Component, Recipe, Tin
from sitegen.sheet.fill_checks import fill_faults
from tests.sheet.pantry import Fraction, line, part, recipe, says, tables

AT = Place("recipe.yaml", 4, 6, 11)
OVEN = OvenSetting(Fraction(160), "celsius", fan=True)
FILL, BAKE, BEAT = says("Pour.", fill=Fraction(1, 2)), says("Bake.", oven=OVEN), says("Beat.")


def tin(shape: str, width: str, depth: str, length: str = "", number: int = 1) -> Tin:
    """Straight sides, inside measures in cm."""
    across, along = Fraction(width), Fraction(length or width)
    return Tin(shape, across, along, Fraction(depth), across, along, number=number, at=AT)


ROUND = tin("round", "20", "5")  # 1,571 ml
SANDWICH_CAKE = Component(  # four eggs' worth: 889 g
    "Sponge",
    (
        line(225, "g", "unsalted butter"),
        line(225, "g", "caster sugar"),
        line(4, "", "eggs", "medium"),
        line(225, "g", "plain flour"),
        line(10, "g", "baking powder"),
    ),
    (FILL, BAKE),
    kind="creamed cake",
)


def told(one: Recipe, bases: Mapping[str, Recipe] | None = None) -> list[tuple[str, str]]:
    """Codes and sentences."""
    written = tables().editions["british-metric"]
    faults = fill_faults(one, bases or {}, tables(), written)
    return [(fault.code, fault.sentence.replace("\u00a0", " ")) for fault in faults]


def test_a_sandwich_cake_fits_its_two_tins() -> None:
    assert told(replace(recipe(SANDWICH_CAKE), tin=replace(ROUND, number=2))) == []


def test_double_the_batter_in_one_tin_runs_over() -> None:
    doubled = replace(SANDWICH_CAKE, lines=(*SANDWICH_CAKE.lines, *SANDWICH_CAKE.lines))
    ((code, sentence),) = told(replace(recipe(doubled), tin=ROUND))
    assert code == "overfilled-tin"
    assert sentence == ("'Sponge' makes about 1.8 kg of batter; a 20 cm round cake tin holds at most 1.35 kg")


def test_it_stands_at_the_tin() -> None:
    doubled = replace(SANDWICH_CAKE, lines=(*SANDWICH_CAKE.lines, *SANDWICH_CAKE.lines))
    written = tables().editions["british-metric"]
    (fault,) = fill_faults(replace(recipe(doubled), tin=ROUND), {}, tables(), written)
    assert fault.place == AT


def test_a_batter_above_the_written_fill_is_advice() -> None:
    ((code, sentence),) = told(replace(recipe(SANDWICH_CAKE), tin=ROUND))
    assert code == "full-tin"
    assert sentence.endswith("a 20 cm round cake tin is full enough with 850 g")


def test_the_parts_of_a_batter_count_together() -> None:
    """A marbled cake: its own component only divides and pours what two others are."""
    light = replace(SANDWICH_CAKE, title="Light", steps=(BEAT,))
    dark = replace(SANDWICH_CAKE, title="Dark", steps=(BEAT,))
    marbled = Component("Cake", (part("Light", share=1), part("Dark", share=1)), (FILL,))
    ((code, _),) = told(replace(recipe(light, dark, marbled), tin=ROUND))
    assert code == "overfilled-tin"


def test_a_base_recipe_says_what_kind_of_batter_it_is() -> None:
    base = recipe(replace(SANDWICH_CAKE, steps=(BEAT,)), title="Base sponge")
    cake = Component("Cake", (part("Base sponge", share=2, base=True),), (FILL,))
    ((code, sentence),) = told(replace(recipe(cake), tin=ROUND), {"Base sponge": base})
    assert code == "overfilled-tin"
    assert "of batter" in sentence


@pytest.mark.parametrize(
    ("grams", "code"),
    [
        (850, []),  # a 900 g loaf tin takes 850 to 950 g of dough
        (940, []),
        (1000, ["full-tin"]),
        (1300, ["overfilled-tin"]),
    ],
)
def test_a_dough_in_a_loaf_tin_goes_by_weight(grams: int, code: list[str]) -> None:
    known = tables().tins.tin_named("900 g loaf")
    assert known is not None
    dough = Component(
        "Dough", (line(grams - 5, "g", "strong white flour"), line(5, "g", "instant yeast")), (FILL, BAKE)
    )
    assert [found for found, _ in told(replace(recipe(dough), tin=known.tin))] == code


def test_what_never_sees_the_tin_is_not_held_against_it() -> None:
    fruit = Component("Roast plums", (line(3000, "g", "plums"),), (BAKE,))
    icing = Component("Icing", (line(3000, "g", "icing sugar"),), (BEAT,))
    assert told(replace(recipe(fruit, icing), tin=ROUND)) == []


def test_a_tray_holds_any_number_of_buns() -> None:
    tray = tin("tray", "30", "1", "40")
    assert told(replace(recipe(SANDWICH_CAKE), tin=tray)) == []


def test_more_of_the_recipe_takes_more_of_the_tins() -> None:
    four_times = BatchAsk(BatchKind.TIMES, times=Fraction(4))
    made = replace(recipe(SANDWICH_CAKE), tin=replace(ROUND, number=2), batches=(four_times,))
    assert told(made) == []


def test_another_tin_of_the_page_is_checked_too() -> None:
    """Nearly full to the brim, it does not go as it is into a tin that is 8 % smaller."""
    high = Component(
        "Cake", (line(1050, "g", "plain flour"),), (says("Pour.", fill=Fraction(9, 10)),), kind="creamed"
    )
    lower = BatchAsk(BatchKind.TIN, tin=tin("round", "18", "4.6"))
    one = replace(recipe(high), tin=tin("round", "18", "5"))
    assert told(one) == told(replace(one, batches=(BatchAsk(BatchKind.TIN, tin=one.tin),))) == []
    ((code, _),) = told(replace(one, batches=(lower,)))
    assert code == "overfilled-tin"
