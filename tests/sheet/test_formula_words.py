"""The formula panel of a dough."""

from dataclasses import replace

import pytest

from sitegen.kitchen.recipe import BatchAsk, BatchKind, Component, DoughAim, Makes, PieceWeight, Recipe
from sitegen.sheet.build import build_sheet
from sitegen.sheet.formula_words import percent_text
from sitegen.sheet.panel_values import Formula
from tests.sheet.pantry import Fraction, line, part, recipe, says, tables

POOLISH = Component(
    "Poolish",
    (line(100, "g", "strong white flour"), line(100, "g", "water"), line("0.2", "g", "instant yeast")),
    (says("Stir."),),
    kind="poolish",
)
DOUGH = Component(
    "Dough",
    (
        part("Poolish", 1),
        line(400, "g", "strong white flour"),
        line(220, "g", "water"),
        line(10, "g", "fine salt"),
        line(20, "g", "unsalted butter"),
    ),
    (says("Knead."),),
    kind="soft roll",
)
ROLLS = Component("Rolls", (part("Dough", 1),), (says("Bake."),), bake_loss=Fraction(1, 8))
TEN = Makes(Fraction(10), "rolls", Fraction(850), "dough")


def formula(of: Recipe, edition: str = "british-metric", batch: BatchAsk | None = None) -> Formula:
    editions = tables().editions
    sheet = build_sheet(of, {}, tables(), editions[edition], editions["british-metric"], batch)
    (only,) = sheet.formulas
    return only


def bread(dough: Component = DOUGH, makes: Makes = TEN) -> Recipe:
    return recipe(POOLISH, dough, ROLLS, makes=makes)


def totals(of: Formula) -> dict[str, str]:
    return {what: figure.replace("\xa0", " ") for what, figure in of.totals}


def test_each_ingredient_has_its_weight_and_its_part_of_all_flour() -> None:
    rows = [(row.part, row.name, row.weight, row.percent) for row in formula(bread()).rows]
    assert [tuple(text.replace("\xa0", " ") for text in row) for row in rows] == [
        ("Poolish", "strong white flour", "100 g", "20 %"),
        ("Poolish", "water", "100 g", "20 %"),
        ("Poolish", "instant yeast", "0.2 g", "0.04 %"),
        ("", "strong white flour", "400 g", "80 %"),
        ("", "water", "220 g", "44 %"),
        ("", "fine salt", "10 g", "2 %"),
        ("", "unsalted butter", "20 g", "4 %"),
    ]


def test_the_totals_of_a_dough() -> None:
    found = totals(formula(bread()))
    assert found["total flour"] == "500 g"
    assert found["dough"] == "850 g, about 740 g baked"
    assert found["piece"] == "85 g dough, about 74 g baked"
    assert found["hydration"] == "64 %"
    assert found["hydration, all water"] == "64.7 %"
    assert found["flour that is pre-fermented"] == "20 %"
    assert found["hydration of Poolish"] == "100 %"
    assert (found["salt"], found["yeast"], found["fat"]) == ("2 %", "0.04 %", "4 %")
    assert "sugar" not in found


def test_pieces_of_another_weight() -> None:
    ask = BatchAsk(BatchKind.MAKES, makes=Fraction(20), each=PieceWeight(Fraction(68)))
    found = formula(bread(), batch=ask)
    assert totals(found)["total flour"] == "800 g"
    assert totals(found)["piece"] == "68 g dough, about 60 g baked"
    sheet = build_sheet(bread(), {}, tables(), *[tables().editions["british-metric"]] * 2, ask)
    assert sheet.head.makes.replace("\xa0", " ") == "20 rolls of 68 g dough"
    assert sheet.head.batch.key == "20-rolls-of-68-g-dough"


def test_a_piece_that_is_weighed_baked_says_what_dough_it_takes() -> None:
    found = totals(formula(bread(makes=Makes(Fraction(10), "rolls", Fraction(740), "baked"))))
    assert found["piece"] == "85 g dough, about 74 g baked"


def test_a_baked_piece_is_asked_for_of_a_recipe_that_weighs_dough() -> None:
    """59.5 g baked are 68 g of dough where an eighth goes off."""
    ask = BatchAsk(BatchKind.MAKES, makes=Fraction(20), each=PieceWeight(Fraction("59.5"), "baked"))
    found = totals(formula(bread(), batch=ask))
    assert (found["total flour"], found["piece"]) == ("800 g", "68 g dough, about 60 g baked")


@pytest.mark.parametrize(
    ("edition", "flour", "salt", "figures"),
    [
        (
            "us-cups",
            "400 g (14 oz)",
            "10 g",
            ("500 g (17½ oz)", "85 g (3 oz) dough, about 74 g baked"),
        ),
        (
            "us-weights",
            "14 oz (400 g)",
            "10 g",
            ("1 lb 1¾ oz (500 g)", "3 oz (85 g) dough, about 2½ oz baked"),
        ),
        ("australian", "400 g", "10 g", ("500 g", "85 g dough, about 74 g baked")),
    ],
)
def test_ounces_stand_with_the_grams_where_scales_show_them(
    edition: str, flour: str, salt: str, figures: tuple[str, str]
) -> None:
    found = formula(bread(), edition)
    weights = [row.weight.replace("\xa0", " ") for row in found.rows]
    assert (weights[3], weights[5]) == (flour, salt)
    assert (totals(found)["total flour"], totals(found)["piece"]) == figures


def test_names_are_those_of_the_edition() -> None:
    assert formula(bread(), "us-cups").rows[0].name == "bread flour"


def test_without_a_kind_there_is_no_formula() -> None:
    plain = recipe(POOLISH, replace(DOUGH, kind=""), ROLLS)
    edition = tables().editions["british-metric"]
    assert build_sheet(plain, {}, tables(), edition, edition).formulas == ()


WARM = DoughAim(
    Fraction(25), room=Fraction(21), flour=Fraction(20), preferment=Fraction(18), friction=Fraction(9)
)


@pytest.mark.parametrize(
    ("edition", "dough", "kitchen", "water"),
    [
        ("british-metric", "25 °C (77 °F)", "21 °C (70 °F)", "32 °C (90 °F)"),
        ("us-cups", "77 °F (25 °C)", "70 °F (21 °C)", "90 °F (32 °C)"),
    ],
)
def test_the_water_for_a_dough_in_the_degrees_of_the_edition(
    edition: str, dough: str, kitchen: str, water: str
) -> None:
    notes = [note.replace("\xa0", " ") for note in formula(bread(replace(DOUGH, dough=WARM)), edition).notes]
    assert f"Aim for a dough of {dough}. In a kitchen at {kitchen} take the water at {water}." in notes


def test_every_liquid_that_matters_is_warmed() -> None:
    lines = (
        *DOUGH.lines[:2],
        line(150, "g", "water"),
        line(60, "g", "whole milk"),
        line(5, "g", "double cream"),
    )
    notes = formula(bread(replace(DOUGH, lines=lines, dough=WARM))).notes
    assert any("take the water and whole milk at" in note for note in notes)


def test_other_kitchens_and_ones_own_mixer() -> None:
    notes = " ".join(formula(bread(replace(DOUGH, dough=WARM))).notes).replace("\xa0", " ")
    assert "at 18 °C (64 °F), 35 °C (95 °F); at 24 °C (75 °F), 29 °C (84 °F). An estimate." in notes
    assert "warm the dough by 9 °C (16 °F)" in notes
    assert "4 × dough − kitchen − flour − preferment − water" in notes


@pytest.mark.parametrize(
    ("wanted", "room", "words"),
    [
        (30, 18, "no more than 43 °C (109 °F), with the flour or the bowl warmed"),
        (18, 24, "2 °C (36 °F), with 23 % of it weighed in as ice"),
    ],
)
def test_water_that_nobody_should_pour_is_not_printed(wanted: int, room: int, words: str) -> None:
    aim = DoughAim(Fraction(wanted), room=Fraction(room), friction=Fraction(9))
    notes = formula(bread(replace(DOUGH, dough=aim))).notes
    assert any(words in note.replace("\xa0", " ") for note in notes)


@pytest.mark.parametrize(
    ("ratio", "text"),
    [
        ("0.625", "62.5 %"),
        ("0.65", "65 %"),
        ("0.01875", "1.9 %"),
        ("0.0008", "0.08 %"),
        ("1", "100 %"),
        ("0", ""),
    ],
)
def test_a_percentage_is_as_fine_as_it_needs(ratio: str, text: str) -> None:
    assert percent_text(Fraction(ratio)).replace("\xa0", " ") == text
