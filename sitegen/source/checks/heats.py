"""Oven settings that an oven may have, and that a baker seldom means."""

from collections.abc import Iterator
from fractions import Fraction

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.kitchen.method import OvenSetting
from sitegen.kitchen.ovens import read_oven
from sitegen.kitchen.recipe import Recipe
from sitegen.kitchen.tables import Tables

UNUSUAL_OVEN = FaultCode(
    "unusual-oven",
    Severity.ADVICE,
    "A setting below or above what is baked at home: most often C was written for F, or F for C.",
    "Look at the scale again; where the figure is meant, leave it.",
    good="oven: 150 C fan",
    bad="oven: 350 C fan",
)
CODES = (UNUSUAL_OVEN,)

COOLEST_C, HOTTEST_C = 70, 270
"""Conventional, degrees C: drying meringue to gas mark 10. Source: common practice."""
SCALES = {"celsius": "C", "fahrenheit": "F"}


def ovens_are_usual(recipe: Recipe, tables: Tables) -> Iterator[Fault]:
    """Each oven is set as ovens at home are set."""
    for component in recipe.components:
        for step in component.steps:
            if step.oven is None:
                continue
            conventional_c = read_oven(step.oven, tables.ovens).conventional_c
            if not COOLEST_C <= conventional_c <= HOTTEST_C:
                way_out = f"did you mean '{_other_scale(step.oven)}'?"
                yield UNUSUAL_OVEN.fault(step.at, _sentence(step.oven, conventional_c), way_out)


def _sentence(oven: OvenSetting, conventional_c: Fraction) -> str:
    side = "cooler" if conventional_c < COOLEST_C else "hotter"
    return f"{_written(oven, oven.scale)} is {side} than bakes at home are"


def _other_scale(oven: OvenSetting) -> str:
    return _written(oven, "fahrenheit" if oven.scale == "celsius" else "celsius")


def _written(oven: OvenSetting, scale: str) -> str:
    """A setting in words; only degrees can be unusual, all gas marks are used."""
    kind = " fan" if oven.fan else " conventional" if scale == "celsius" else ""
    return f"{float(oven.degrees):g} {SCALES[scale]}{kind}"


CHECKS = (ovens_are_usual,)
