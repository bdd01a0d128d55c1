"""The estimate of nutrition as a sheet prints it."""

from dataclasses import replace
from fractions import Fraction

import pytest

from sitegen.kitchen import scaling
from sitegen.kitchen.amounts import Span
from sitegen.kitchen.method import OvenSetting, Step, Words
from sitegen.kitchen.recipe import Component, IngredientLine, Makes, Recipe
from sitegen.kitchen.shares import made_components
from sitegen.sheet.nutrition_words import nutrition_of
from sitegen.sheet.panel_values import Nutrition
from tests.sheet.pantry import line, recipe, says, setting

BAKE = Step((Words("Bake."),), oven=OvenSetting(Fraction(160), "celsius", True))
SUGAR = line(600, "g", "caster sugar")
BUTTER = line(600, "g", "unsalted butter")


def of(
    cake: Recipe, edition: str = "british-metric", factor: int = 1
) -> tuple[Nutrition | None, tuple[str, ...]]:
    scene = setting(edition)
    batch = replace(scaling.tested_batch(cake), factor=Fraction(factor), makes=cake.makes.count * factor)
    return nutrition_of(cake, made_components(cake, {}, batch.factor, scene.grams), batch, scene)


def estimate(cake: Recipe, edition: str = "british-metric", factor: int = 1) -> Nutrition:
    found, sentences = of(cake, edition, factor)
    assert found is not None
    assert sentences == ()
    return found


def cream(*lines: IngredientLine, makes: Makes | None = None, **facts: object) -> Recipe:
    made = recipe(Component("Cream", lines or (SUGAR, BUTTER), (says("Beat."),)), makes=makes)
    return replace(made, **facts)  # type: ignore[arg-type]


def cells(found: Nutrition) -> dict[str, tuple[str, str, str]]:
    plain = ((row.per_portion, row.per_100g, row.daily) for row in found.rows)
    return {
        row.key: (one.replace("\u00a0", " "), hundred.replace("\u00a0", " "), daily.replace("\u00a0", " "))
        for row, (one, hundred, daily) in zip(found.rows, plain, strict=True)
    }


def test_a_british_table_has_a_portion_and_100_g() -> None:
    found = cells(estimate(cream()))
    assert found["energy"] == ("2358 kJ / 567 kcal", "2358 kJ / 567 kcal", "")
    assert found["fat"] == ("41 g", "41 g", "")
    assert found["protein"] == ("<0.5 g", "<0.5 g", "")
    assert found["fibre"] == ("0 g", "0 g", "")
    assert found["salt"] == ("0.02 g", "0.02 g", "")


def test_an_american_table_has_the_serving_alone_and_its_daily_values() -> None:
    found = cells(estimate(cream(), "us-cups"))
    assert found["energy"] == ("570", "", "")
    assert found["fat"] == ("41 g", "", "52 %")
    assert found["saturates"] == ("25 g", "", "126 %")
    assert found["sodium"] == ("5 mg", "", "0 %")
    assert found["protein"] == ("0 g", "", "")


def test_an_australian_table_begins_with_kilojoules_and_ends_with_sodium() -> None:
    found = estimate(cream(), "australian")
    assert [row.name for row in (found.rows[0], found.rows[-1])] == ["Energy", "Sodium"]
    assert cells(found)["energy"] == ("2360 kJ", "2360 kJ", "")
    assert cells(found)["protein"] == ("less than 1 g", "less than 1 g", "")


@pytest.mark.parametrize(
    ("makes", "serves", "portion"),
    [
        (Makes(Fraction(12), "cupcakes"), None, "1 cupcake, about 100 g"),
        (Makes(Fraction(1), "cake"), Span(Fraction(8), Fraction(10)), "1 portion, about 150 g"),
        (Makes(Fraction(12), "cupcakes"), Span(Fraction(6), Fraction(6)), "1 portion, about 200 g"),
        (Makes(Fraction(1), "cake"), None, ""),
        (Makes(Fraction(3), "loaves"), None, ""),
        (Makes(Fraction(4), "loaves"), None, "1 loaf, about 300 g"),
        (Makes(Fraction(1200), "", Fraction(1200)), None, ""),
    ],
)
def test_a_portion_is_what_the_recipe_says_else_a_piece(
    makes: Makes, serves: Span | None, portion: str
) -> None:
    assert estimate(cream(makes=makes, serves=serves)).portion.replace("\u00a0", " ") == portion


@pytest.mark.parametrize("edition", ["british-metric", "us-cups", "australian"])
def test_one_cake_has_100_g_alone_in_every_edition(edition: str) -> None:
    found = cells(estimate(cream(makes=Makes(Fraction(1), "cake")), edition))
    assert all(one == "" and hundred and not daily for one, hundred, daily in found.values())


def test_a_portion_is_the_same_in_every_batch() -> None:
    assert estimate(cream(), factor=2) == estimate(cream())


@pytest.mark.parametrize(("edition", "energy"), [("british-metric", "567 kcal"), ("us-cups", "570 kcal")])
def test_the_energy_of_a_portion_stands_by_itself(edition: str, energy: str) -> None:
    assert estimate(cream(), edition).energy.replace("\u00a0", " ") == energy


def test_it_is_always_called_an_estimate() -> None:
    assert estimate(cream()).notes[0].startswith("An estimate")


def test_the_tables_that_the_figures_come_from_are_named() -> None:
    assert "USDA SR28" in estimate(cream()).notes[-1]
    assert "USDA SR28; from memory" in estimate(cream(SUGAR, line(100, "g", "golden syrup"))).notes[-1]


def test_what_little_is_missing_is_named() -> None:
    found = estimate(cream(SUGAR, line(30, "g", "meringue powder")))
    assert found.notes[1].replace("\u00a0", " ") == (
        "Left out, as nothing is known of what is in it: meringue powder (4.8 % of the weight)."
    )


def test_there_is_no_table_where_more_than_a_twentieth_is_unknown() -> None:
    found, (sentence,) = of(cream(SUGAR, line(40, "g", "meringue powder")))
    assert found is None
    assert sentence.replace("\u00a0", " ") == (
        "Nutrition is left out, as too little is known of what is in meringue powder (6.3 % of the weight)."
    )


def test_there_is_no_table_where_something_cannot_be_weighed() -> None:
    found, sentences = of(cream(SUGAR, line(1, "", "suet")))
    assert found is None
    assert sentences == ("Nutrition is left out, as nothing says what suet would weigh.",)


def test_zest_is_not_counted_as_a_lemon() -> None:
    zest = estimate(cream(line(100, "", "lemon", part="zest")))
    peel = estimate(cream(line(600, "g", "lemon zest")))
    assert cells(zest)["fibre"][1] == cells(peel)["fibre"][1] == "11 g"


def test_water_lost_is_told_and_whether_it_is_assumed() -> None:
    sponge = Component("Sponge", (line(100, "g", "egg"), line(50, "g", "plain flour")), (BAKE,))
    assumed = estimate(recipe(sponge)).notes
    assert "Assumed water lost in heat: Sponge 9\u00a0%." in assumed
    said = estimate(recipe(replace(sponge, bake_loss=Fraction(1, 8)))).notes
    assert "By the recipe, water lost: Sponge 12.5\u00a0%." in said


def test_what_is_not_counted_is_told() -> None:
    lines = (SUGAR, line(None, "", "plain flour"))
    assert "What is optional or has no amount is not counted." in estimate(cream(*lines)).notes
    assert "What is optional or has no amount is not counted." not in estimate(cream()).notes


def test_alcohol_is_told_where_there_is_more_than_an_extract_brings() -> None:
    assert any("Alcohol" in note for note in estimate(cream(SUGAR, line(50, "g", "rum"))).notes)
    extract = line(5, "g", "vanilla extract")
    assert not any("Alcohol" in note for note in estimate(cream(SUGAR, extract)).notes)


def test_what_is_steeped_and_taken_out_is_told_and_not_counted() -> None:
    steeped = estimate(cream(SUGAR, BUTTER, line(3, "", "bay leaf"), line(1, "", "vanilla pod")))
    assert "Not counted, as it is steeped and taken out: bay leaf and vanilla pod." in steeped.notes
    assert cells(steeped) == cells(estimate(cream()))


@pytest.mark.parametrize(
    ("edition", "told"), [("us-cups", ["heavy cream has about 36 % fat"]), ("british-metric", [])]
)
def test_a_region_that_sells_another_cream_is_told_of_which_the_figures_are(
    edition: str, told: list[str]
) -> None:
    notes = estimate(cream(SUGAR, line(300, "g", "double cream")), edition).notes
    tested = [note for note in notes if "tested with" in note]
    assert [text in note for text, note in zip(told, tested, strict=True)] == [True] * len(told)


def test_a_pinch_of_what_differs_is_not_worth_a_sentence() -> None:
    notes = estimate(cream(SUGAR, line(5, "g", "double cream")), "us-cups").notes
    assert not any("tested with" in note for note in notes)


def test_nothing_has_no_share_of_a_daily_value() -> None:
    """0.3 g of fibre is declared as 0 g, which is 0 % of 28 g and not 1 %. 21 CFR 101.9(c)(6), (d)(7)."""
    crust = cream(line(130, "g", "plain flour"), SUGAR)
    assert cells(estimate(crust, "us-cups"))["fibre"] == ("0 g", "", "0 %")


def test_a_small_portion_is_weighed_to_the_gram() -> None:
    bites = cream(SUGAR, makes=Makes(Fraction(16), "bites"))
    assert estimate(bites).portion.replace("\u00a0", " ") == "1 bite, about 38 g"
