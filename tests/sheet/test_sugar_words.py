"""The stage of boiled sugar beside its temperature, and where it has no business."""

import pytest

from sitegen.kitchen.amounts import Amount, single
from sitegen.kitchen.method import OvenSetting, Reference, RefKind
from sitegen.kitchen.recipe import Component, IngredientLine
from sitegen.sheet.build import build_sheet
from tests.sheet.pantry import Fraction, amount, line, recipe, says, tables

SUGAR, YOLKS = line(180, "g", "caster sugar"), line(100, "g", "egg yolk")
FLOUR, HONEY = line(200, "g", "plain flour"), line(100, "g", "honey")
OVEN = OvenSetting(Fraction(150), "celsius", fan=True)


def heat(low: int, high: int | None = None, unit: str = "celsius") -> Reference:
    return Reference(f"{low} C", RefKind.TEMPERATURE, amount=amount(low, unit, high))


def step_text(
    before: str, degrees: Reference, *lines: IngredientLine, edition: str = "british-metric", after: str = "."
) -> str:
    made = recipe(Component("Part", lines, (says(before, degrees, after),)))
    editions = tables().editions
    sheet = build_sheet(made, {}, tables(), editions[edition], editions["british-metric"])
    return sheet.components[0].steps[0].text.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("degrees", "said"),
    [
        (heat(114), "Boil to 114 °C (237 °F, soft ball)."),
        (heat(118), "Boil to 118 °C (244 °F, firm ball)."),
        (heat(117), "Boil to 117 °C (243 °F, soft to firm ball)."),
        (heat(118, 121), "Boil to 118–121 °C (244–250 °F, firm to hard ball)."),
        (heat(158), "Boil to 158 °C (316 °F, hard crack to light caramel)."),
        (heat(175), "Boil to 175 °C (347 °F, dark caramel)."),
        (heat(245, unit="fahrenheit"), "Boil to 118 °C (245 °F, firm ball)."),
        (heat(103), "Boil to 103 °C (217 °F)."),  # a syrup of equal parts: no stage
        (heat(200), "Boil to 200 °C (392 °F)."),  # burnt
    ],
)
def test_boiled_sugar_has_its_stage(degrees: Reference, said: str) -> None:
    assert step_text("Boil to ", degrees, SUGAR) == said


def test_an_american_reads_fahrenheit_first() -> None:
    assert step_text("Boil to ", heat(118), SUGAR, edition="us-cups") == "Boil to 244 °F (118 °C, firm ball)."


def test_honey_boils_like_sugar() -> None:
    assert "hard ball" in step_text("Boil to ", heat(125), HONEY)


def test_custard_keeps_its_degree_and_gets_no_stage() -> None:
    assert step_text("Stir to ", heat(82), SUGAR, YOLKS) == "Stir to 82 °C (180 °F)."


@pytest.mark.parametrize("before", ["Heat the oil to ", "Deep-fry at ", "Fry them at ", "Set the oven to "])
def test_another_heat_than_sugar_gets_no_stage(before: str) -> None:
    assert "caramel" not in step_text(before, heat(170), SUGAR, FLOUR)


def test_a_step_with_an_oven_gets_no_stage() -> None:
    part = Component("Part", (SUGAR,), (says("Bake to ", heat(150), ".", oven=OVEN),))
    edition = tables().editions["british-metric"]
    sheet = build_sheet(recipe(part), {}, tables(), edition, edition)
    assert "crack" not in sheet.components[0].steps[0].text


def test_a_part_without_sugar_gets_no_stage() -> None:
    assert "crack" not in step_text("Heat to ", heat(150), FLOUR)


@pytest.mark.parametrize("after", [", the soft-ball stage.", " (soft ball)."])
def test_what_the_baker_names_is_not_named_twice(after: str) -> None:
    assert (
        step_text("Boil to ", heat(114), SUGAR, after=after).lower().replace("-", " ").count("soft ball") == 1
    )


def test_the_amount_of_a_temperature_is_exact() -> None:
    assert heat(118).amount == Amount(single(118), "celsius")
