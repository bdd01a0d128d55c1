"""What the demo recipes are told to take care of, as a baker and a food-safety officer would read them."""

from functools import cache
from pathlib import Path

import pytest

from sitegen.sheet.build import build_sheet
from sitegen.sheet.values import Sheet
from sitegen.source.library import read_content
from sitegen.source.school import Content

PROJECT = Path(__file__).parents[2]


@cache
def content() -> Content:
    return read_content(PROJECT)


def sheet(slug: str, edition: str = "british-metric") -> Sheet:
    recipes, tables = content().recipes, content().tables
    (recipe,) = (one for one in recipes if one.slug == slug)
    bases = {one.title: one for one in recipes}
    return build_sheet(recipe, bases, tables, tables.editions[edition], tables.editions["british-metric"])


CALLED = [
    ("base-buttercream", []),
    ("base-pastry-cream", ["keep-cold"]),
    ("blackcurrant-and-bay-cupcakes", ["keep-cold"]),  # its custard boils, so no raw egg
    ("brandied-prune-brownies", ["alcohol", "warm-spirit"]),
    ("caramel-choux-buns", ["hot-sugar", "hard-caramel", "keep-cold"]),
    ("coffee-and-orange-marbled-ring", []),  # 10 g of instant coffee in 14 slices is no dose
    (
        "lemon-meringue-bites",
        ["hot-sugar", "open-flame", "raw-egg", "moving-mixer", "keep-cold"],
    ),
    ("overnight-honey-and-sesame-loaf", ["honey"]),
    ("plum-and-cardamom-layer-cake", ["choking"]),
    ("rhubarb-and-almond-squares", []),  # its almonds are ground and flaked
    ("rye-crust-custard-tart", ["keep-cold", "egg-custard"]),  # a teaspoon of nutmeg in 10 slices
    ("stem-ginger-and-pecan-cookies", ["choking"]),
]


@pytest.mark.parametrize(("slug", "called"), CALLED)
def test_a_demo_recipe_calls_for_these_cautions_and_no_other(slug: str, called: list[str]) -> None:
    assert [caution.key for caution in sheet(slug).cautions] == called


def test_every_demo_recipe_is_listed_above() -> None:
    assert {slug for slug, _ in CALLED} == {recipe.slug for recipe in content().recipes}


@pytest.mark.parametrize(
    ("slug", "component", "marked"),
    [
        ("caramel-choux-buns", "Assembly", [["hot-sugar"], []]),  # dipped into the caramel, then filled
        (
            "lemon-meringue-bites",
            "Italian meringue",
            [["hot-sugar"], ["hot-sugar", "raw-egg", "moving-mixer"], []],
        ),
        ("lemon-meringue-bites", "Assembly", [[], ["open-flame"]]),
    ],
)
def test_a_caution_stands_at_its_step(slug: str, component: str, marked: list[list[str]]) -> None:
    (found,) = (one for one in sheet(slug).components if one.title == component)
    assert [list(step.cautions) for step in found.steps] == marked


def test_no_caution_is_lost_overseas() -> None:
    for slug in (recipe.slug for recipe in content().recipes):
        here = [caution.key for caution in sheet(slug).cautions]
        for edition in content().tables.editions:
            assert [caution.key for caution in sheet(slug, edition).cautions] == here
