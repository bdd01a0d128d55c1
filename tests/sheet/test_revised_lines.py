"""The lines that a revision speaks of."""

from dataclasses import replace

import pytest

from sitegen.kitchen.recipe import Component, Recipe
from sitegen.sheet.build import build_sheet
from sitegen.sheet.revised_lines import revised_lines
from sitegen.sheet.values import Sheet
from tests.sheet.pantry import line, recipe, says, tables, takes

SPONGE = Component(
    "Bay sponge",
    (line(150, "g", "plain flour"), line(105, "g", "sunflower oil"), line(90, "g", "caster sugar")),
    (says("Whisk ", takes(1, "sunflower oil"), "."), says("Fold in ", takes(0, "plain flour"), ".")),
)
SYRUP = Component(
    "Syrup",
    (line(60, "g", "caster sugar"), line(200, "g", "plain flour")),
    (says("Boil ", takes(0, "caster sugar")),),
)


@pytest.fixture(scope="module")
def sheets() -> list[Sheet]:
    made: Recipe = replace(recipe(SPONGE), components=(SPONGE, SYRUP))
    editions = tables().editions
    written = editions["british-metric"]
    return [build_sheet(made, {}, tables(), editions[key], written) for key in ("british-metric", "us-cups")]


def spoken(sheets: list[Sheet], note: str) -> list[tuple[str, str, str]]:
    found = revised_lines(sheets[:1], note)
    return [(one.component, one.line.amount.replace("\u00a0", " "), one.line.name) for one in found]


@pytest.mark.parametrize(
    ("note", "lines"),
    [
        ("Sunflower oil corrected from 150 g to 105 g.", [("Bay sponge", "105 g", "sunflower oil")]),
        ("Oil corrected.", [("Bay sponge", "105 g", "sunflower oil")]),
        ("Sponge: caster sugar is less sweet.", [("Bay sponge", "90 g", "caster sugar")]),
        ("Caster sugar corrected from 40 g to 60 g.", [("Syrup", "60 g", "caster sugar")]),
        ("Plain flour was 20 g, now 200 g.", [("Syrup", "200 g", "plain flour")]),
        ("Clearer wording for coring the cakes.", []),
        ("Boil until it threads.", []),
    ],
)
def test_a_note_names_its_lines(note: str, lines: list[tuple[str, str, str]], sheets: list[Sheet]) -> None:
    assert spoken(sheets, note) == lines


def test_every_edition_tells_the_line_in_its_own_words(sheets: list[Sheet]) -> None:
    metric, cups = revised_lines(sheets, "Syrup, caster sugar corrected from 40 g to 60 g.")
    assert (metric.edition, cups.edition) == ("British metric", "US cups")
    assert cups.line.name == "superfine sugar"
    assert "cup" in cups.line.amount or "tbsp" in cups.line.amount


def test_the_steps_that_take_of_it_are_told(sheets: list[Sheet]) -> None:
    assert [one.steps for one in revised_lines(sheets, "Oil corrected.")] == [(1,), (1,)]
    assert [one.steps for one in revised_lines(sheets, "Syrup: less caster sugar.")] == [(3,), (3,)]
