"""A recipe as schema.org data."""

import json
import re
from dataclasses import replace
from typing import Any

import pytest

from sitegen.press.json_ld import recipe_data
from sitegen.press.picture import Picture
from sitegen.sheet.panel_values import NutrientRow, Nutrition
from sitegen.sheet.values import SheetMoment, SheetVideo, View
from tests.press.sample_parts import IMPRINT, TABLE_IMPRINT
from tests.press.sample_sheets import (
    CHAPTERS,
    HERE,
    INGREDIENT_SIDE,
    SHEET,
    TEASER,
    sample_pictures,
)

DURATION = re.compile(r"P(?=.)(\d+D)?(T(?=.)(\d+H)?(\d+M)?)?")
RECIPE_PROPERTIES = frozenset(
    [
        "@context",
        "@type",
        "name",
        "description",
        "url",
        "image",
        "author",
        "publisher",
        "datePublished",
        "dateModified",
        "inLanguage",
        "recipeYield",
        "keywords",
        "prepTime",
        "cookTime",
        "totalTime",
        "isAccessibleForFree",
        "hasPart",
        "recipeIngredient",
        "recipeInstructions",
        "tool",
        "video",
        "nutrition",
    ]
)


@pytest.fixture(scope="module")
def pictures() -> dict[str, Picture]:
    return sample_pictures()[0]


def data(view: View, pictures: dict[str, Picture]) -> dict[str, Any]:
    imprint = TABLE_IMPRINT if view is SHEET else IMPRINT
    found: dict[str, Any] = json.loads(recipe_data(imprint, view, pictures, HERE))
    return found


@pytest.mark.parametrize("view", [SHEET, INGREDIENT_SIDE, TEASER], ids=lambda view: type(view).__name__)
def test_every_view_is_a_recipe_with_author_days_and_times(view: View, pictures: dict[str, Picture]) -> None:
    found = data(view, pictures)
    assert set(found) <= RECIPE_PROPERTIES
    assert found["@context"] == "https://schema.org"
    assert found["@type"] == "Recipe"
    assert found["author"]["@type"] == "Organization"
    assert found["author"]["name"] == "Tansy Row"
    assert (found["datePublished"], found["dateModified"]) == ("2026-10-09", "2026-10-20")
    assert found["inLanguage"] == "en-GB"
    assert found["keywords"] == "tray bakes, autumn fruit"
    for name in ("prepTime", "cookTime", "totalTime"):
        assert DURATION.fullmatch(found[name])
    assert all(address.startswith("https://tansyrow.example/") for address in found["image"])


def test_the_whole_sheet_has_sections_of_numbered_steps(pictures: dict[str, Picture]) -> None:
    found = data(SHEET, pictures)
    sections = found["recipeInstructions"]
    assert [(section["@type"], section["name"]) for section in sections] == [
        ("HowToSection", "Hazelnut crumb"),
        ("HowToSection", "Quince caramel"),
    ]
    steps = [step for section in sections for step in section["itemListElement"]]
    assert [(step["@type"], step["position"]) for step in steps] == [("HowToStep", n) for n in (1, 2, 3, 4)]
    assert steps[0]["text"].startswith("Butter and flour the tin.")
    assert steps[0]["url"].endswith("/recipes/quince-and-hazelnut-slices.html#step-1")
    assert steps[0]["image"].startswith("https://tansyrow.example/table/pictures/")


def test_a_film_is_told_with_its_own_day_and_a_picture(pictures: dict[str, Picture]) -> None:
    found = data(SHEET, pictures)
    assert found["video"] == {
        "@type": "VideoObject",
        "name": "Quince and hazelnut slices",
        "description": SHEET.head.summary,
        "url": "https://video.example/quince",
        "uploadDate": "2026-10-10",
        "thumbnailUrl": found["image"][0],
        "hasPart": [
            {
                "@type": "Clip",
                "name": title,
                "startOffset": second,
                "url": f"https://video.example/quince#t={second}",
            }
            for second, title in ((0, "What we make"), (85, "The crumb"), (3750, "To finish"))
        ],
    }


def test_a_chapter_without_an_address_of_its_own_is_no_clip(pictures: dict[str, Picture]) -> None:
    bare = tuple(replace(chapter, address="") for chapter in CHAPTERS)
    film = SheetVideo("https://video.example/#/quince", "2026-10-10", bare)
    assert "hasPart" not in data(replace(SHEET, video=film), pictures)["video"]


def test_a_step_that_is_shown_on_film_has_its_clip(pictures: dict[str, Picture]) -> None:
    """https://schema.org/Clip: startOffset, in seconds from the beginning of the work."""
    film = SheetMoment("2:05", 125, "https://video.example/quince#t=125")
    crumb = SHEET.components[0]
    filmed = replace(crumb, steps=(replace(crumb.steps[0], on_film=film), *crumb.steps[1:]))
    sheet = replace(SHEET, components=(filmed, *SHEET.components[1:]))
    first, second = data(sheet, pictures)["recipeInstructions"][0]["itemListElement"]
    assert first["video"] == {
        "@type": "Clip",
        "name": "Step 1",
        "startOffset": 125,
        "url": "https://video.example/quince#t=125",
    }
    assert "video" not in second


@pytest.mark.parametrize(
    "lacking",
    [
        replace(SHEET, video=SheetVideo("https://video.example/quince")),
        replace(SHEET, head=replace(SHEET.head, photo=None)),
        replace(SHEET, video=None),
    ],
    ids=["no day", "no picture", "no film"],
)
def test_a_film_of_which_too_little_is_known_is_left_out(lacking: View, pictures: dict[str, Picture]) -> None:
    assert "video" not in data(lacking, pictures)


def test_a_film_that_a_teaser_links_to_is_told_there_too(pictures: dict[str, Picture]) -> None:
    assert data(replace(TEASER, video=SHEET.video), pictures)["video"]["uploadDate"] == "2026-10-10"


def test_ingredients_are_texts_and_a_part_made_here_is_none(pictures: dict[str, Picture]) -> None:
    found = data(INGREDIENT_SIDE, pictures)["recipeIngredient"]
    assert found[0] == "180 g plain flour"
    assert "400 g quinces or firm pears, peeled, cored and sliced" in found
    assert not any("Hazelnut crumb" in line for line in found)


def test_each_view_tells_no_more_than_it_holds(pictures: dict[str, Picture]) -> None:
    side, teaser = data(INGREDIENT_SIDE, pictures), data(TEASER, pictures)
    assert "recipeIngredient" in side
    assert {"recipeInstructions", "video"}.isdisjoint(side)
    assert {"recipeInstructions", "recipeIngredient", "tool", "video"}.isdisjoint(teaser)


@pytest.mark.parametrize("view", [INGREDIENT_SIDE, TEASER], ids=lambda view: type(view).__name__)
def test_what_is_for_subscribers_is_marked_as_not_free(view: View, pictures: dict[str, Picture]) -> None:
    found = data(view, pictures)
    assert found["isAccessibleForFree"] is False
    assert found["hasPart"] == {
        "@type": "WebPageElement",
        "isAccessibleForFree": False,
        "cssSelector": ".for-subscribers",
    }


def test_a_sheet_that_everyone_may_see_is_free(pictures: dict[str, Picture]) -> None:
    assert json.loads(recipe_data(IMPRINT, SHEET, pictures, HERE))["isAccessibleForFree"] is True
    assert data(SHEET, pictures)["isAccessibleForFree"] is False


def test_what_is_unknown_is_left_out_rather_than_empty(pictures: dict[str, Picture]) -> None:
    head = replace(SHEET.head, published="", modified="", photo=None, tags=())
    found = data(replace(TEASER, head=head), pictures)
    assert {"datePublished", "dateModified", "image", "keywords"}.isdisjoint(found)


def test_no_text_can_end_the_script_element(pictures: dict[str, Picture]) -> None:
    head = replace(SHEET.head, title="</script><script>alert(1)</script> & <!--")
    text = recipe_data(IMPRINT, replace(TEASER, head=head), pictures, HERE)
    assert "<" not in text
    assert ">" not in text
    assert json.loads(text)["name"] == head.title


def test_the_nutrition_of_a_portion_is_told_by_schema_orgs_names(pictures: dict[str, Picture]) -> None:
    rows = (
        NutrientRow("Energy", "1046\u00a0kJ / 250\u00a0kcal", "1687\u00a0kJ / 403\u00a0kcal", key="energy"),
        NutrientRow("Fat", "12\u00a0g", "19\u00a0g", key="fat"),
        NutrientRow("Salt", "0.13\u00a0g", "0.21\u00a0g", key="salt"),
    )
    nutrition = Nutrition("eu", "1 slice, about 62\u00a0g", rows, (), energy="250\u00a0kcal")
    found = data(replace(SHEET, nutrition=nutrition), pictures)
    assert found["nutrition"] == {
        "@type": "NutritionInformation",
        "servingSize": "1 slice, about 62 g",
        "calories": "250 kcal",
        "fatContent": "12 g",
    }


def test_the_nutrition_of_a_whole_cake_is_told_for_100_g(pictures: dict[str, Picture]) -> None:
    rows = (NutrientRow("Sodium", "", "85\u00a0mg", key="sodium"),)
    nutrition = Nutrition("us", "", rows, (), energy="400\u00a0kcal")
    found = data(replace(SHEET, nutrition=nutrition), pictures)["nutrition"]
    assert (found["servingSize"], found["sodiumContent"]) == ("100 g", "85 mg")


def test_a_figure_that_is_told_in_words_is_left_out(pictures: dict[str, Picture]) -> None:
    """https://schema.org/Mass: a number, then a unit."""
    rows = (NutrientRow("Dietary fiber", "less than 1\u00a0g", "2\u00a0g", key="fibre"),)
    nutrition = Nutrition("us", "1 slice", rows, (), energy="250\u00a0kcal")
    assert "fiberContent" not in data(replace(SHEET, nutrition=nutrition), pictures)["nutrition"]


def test_a_sheet_without_an_estimate_says_nothing_of_nutrition(pictures: dict[str, Picture]) -> None:
    assert "nutrition" not in data(replace(SHEET, nutrition=None), pictures)
