"""Two dishes of the demo reckoned by hand, ingredient by ingredient, against what their sheets print.

Composition of 100 g: USDA ARS, National Nutrient Database for Standard Reference, Release 28, by NDB number;
the nitrogen factor is its FOOD_DES table's. From there by Regulation (EU) No 1169/2011, Annex I (protein is
nitrogen x 6.25, carbohydrate without fibre, salt is sodium x 2.5) and Annex XIV (energy). Alcohol left after
25 minutes in the oven: USDA Table of Nutrient Retention Factors, Release 6. Eggs of 51 g: Regulation (EC) No
589/2008, the middle of grade M less its shell.
"""

from collections.abc import Mapping
from functools import cache
from pathlib import Path

import pytest

from sitegen.sheet.build import build_sheet
from sitegen.sheet.panel_values import Formula, Nutrition
from sitegen.source.library import read_content
from sitegen.source.school import Content

PROJECT = Path(__file__).parents[2]
ALCOHOL = {"14037": 33.4}
ALCOHOL_LEFT = 0.45

# NDB number, grams in the recipe, then of 100 g: protein, nitrogen factor, fat, saturates, carbohydrate by
# difference, sugars, fibre, sodium in mg.
Row = tuple[str, float, float, float, float, float, float, float, float, float]

BROWNIES: list[Row] = [
    ("09291", 140, 2.18, 6.25, 0.38, 0.088, 63.88, 38.13, 7.1, 2),  # prunes
    ("14037", 40, 0, 6.25, 0, 0, 0, 0, 0, 1),  # brandy
    ("19903", 200, 6.12, 5.63, 38.31, 22.031, 52.42, 36.71, 8, 10),  # dark chocolate, factor of 19080
    ("01145", 150, 0.85, 6.38, 81.11, 50.489, 0.06, 0.06, 0, 11),  # unsalted butter
    ("01123", 153, 12.56, 6.25, 9.51, 3.126, 0.72, 0.37, 0, 142),  # three eggs
    ("19334", 210, 0.12, 6.25, 0, 0, 98.09, 97.02, 0, 28),  # brown sugar
    ("20081", 80, 10.33, 5.7, 0.98, 0.155, 76.31, 0.27, 2.7, 2),  # plain flour
    ("19165", 25, 19.6, 5.63, 13.7, 8.07, 57.9, 1.75, 37, 21),  # cocoa
    ("02047", 3.05, 0, 6.25, 0, 0, 0, 0, 0, 38758),  # half a teaspoon of salt
]
LOAF: list[Row] = [
    ("20083", 420, 11.98, 5.7, 1.66, 0.244, 72.53, 0.31, 2.4, 2),  # strong white flour
    ("14411", 120, 0, 6.25, 0, 0, 0, 0, 0, 4),  # water
    ("18375", 5.4, 40.44, 6.25, 7.61, 1.001, 41.22, 0, 26.9, 51),  # yeast
    ("20080", 60, 13.21, 5.83, 2.5, 0.43, 71.97, 0.41, 10.7, 2),  # wholemeal flour
    ("02047", 9, 0, 6.25, 0, 0, 0, 0, 0, 38758),  # salt
    ("01077", 140.3, 3.15, 6.38, 3.25, 1.865, 4.8, 5.05, 0, 43),  # whole milk, 2 tsp of it to brush
    ("01123", 51, 12.56, 6.25, 9.51, 3.126, 0.72, 0.37, 0, 142),  # an egg
    ("19296", 35, 0.3, 6.25, 0, 0, 82.4, 82.12, 0.2, 4),  # honey
    ("01145", 50, 0.85, 6.38, 81.11, 50.489, 0.06, 0.06, 0, 11),  # unsalted butter
    ("12023", 12, 17.73, 5.3, 49.67, 6.957, 23.45, 0.3, 11.8, 11),  # sesame seeds
]


def by_hand(rows: list[Row], finished: float) -> Mapping[str, float]:
    """Of 100 g of what the rows make. finished: the share of their weight that is left once baked."""
    total = dict.fromkeys(("fat", "saturates", "carbohydrate", "sugars", "fibre", "protein", "salt"), 0.0)
    alcohol = 0.0
    for number, grams, protein, factor, fat, saturates, carbohydrate, sugars, fibre, sodium in rows:
        more_protein = protein * 6.25 / factor
        available = max(carbohydrate - fibre - (more_protein - protein), sugars)
        held = (fat, saturates, available, sugars, fibre, more_protein, sodium * 2.5 / 1000)
        for name, figure in zip(total, held, strict=True):
            total[name] += figure * grams / 100
        alcohol += ALCOHOL.get(number, 0.0) * grams / 100 * ALCOHOL_LEFT
    burnt = total["carbohydrate"] + total["protein"]
    total["kj"] = 17 * burnt + 37 * total["fat"] + 8 * total["fibre"] + 29 * alcohol
    total["kcal"] = 4 * burnt + 9 * total["fat"] + 2 * total["fibre"] + 7 * alcohol
    weight = sum(row[1] for row in rows) * finished
    return {name: figure / weight * 100 for name, figure in total.items()}


@cache
def content() -> Content:
    return read_content(PROJECT)


def panels(slug: str) -> tuple[Nutrition, tuple[Formula, ...]]:
    recipes, tables = content().recipes, content().tables
    (recipe,) = (one for one in recipes if one.slug == slug)
    edition = tables.editions["british-metric"]
    sheet = build_sheet(recipe, {one.title: one for one in recipes}, tables, edition, edition)
    assert sheet.nutrition is not None
    return sheet.nutrition, sheet.formulas


@pytest.mark.parametrize(
    ("slug", "rows", "finished", "portion_g"),
    [
        ("brandied-prune-brownies", BROWNIES, 0.91, 1001.05 * 0.91 / 16),  # common practice: 9 % off
        ("overnight-honey-and-sesame-loaf", LOAF, 0.89, 902.7 * 0.89 / 12),  # the recipe's own 11 %
    ],
)
def test_a_dish_holds_what_a_hand_reckons(
    slug: str, rows: list[Row], finished: float, portion_g: float
) -> None:
    hundred, printed = by_hand(rows, finished), panels(slug)[0]
    cells = {row.key: (row.per_portion, row.per_100g) for row in printed.rows}
    for column, times in enumerate((portion_g / 100, 1.0)):
        kj, kcal = (int(text.split("\u00a0")[0]) for text in cells["energy"][column].split(" / "))
        assert kj == pytest.approx(hundred["kj"] * times, abs=1)
        assert kcal == pytest.approx(hundred["kcal"] * times, abs=1)
        for name in ("fat", "saturates", "carbohydrate", "sugars", "fibre", "protein", "salt"):
            figure = float(cells[name][column].split("\u00a0")[0])
            step = 0.5 if figure >= 10 else 0.05 if figure >= 1 or name != "salt" else 0.005
            assert figure == pytest.approx(hundred[name] * times, abs=step * 1.05), name


@pytest.mark.parametrize(
    ("what", "figure"),
    [
        ("total flour", "480 g"),  # 120 + 300 + 60
        ("dough", "880 g, about 780 g baked"),  # less 11 %
        ("hydration", "52.1 %"),  # (120 + 130) / 480
        ("hydration, all water", "60.1 %"),  # 120 + 114.6 + 38.8 + 6 + 9 of water
        ("flour that is pre-fermented", "25 %"),  # 120 / 480
        ("hydration of Overnight starter", "100 %"),
        ("salt", "1.9 %"),  # 9 / 480
        ("yeast", "1.1 %"),  # (5 + 0.4) / 480
        ("sugar", "7.3 %"),  # 35 / 480
        ("fat", "10.4 %"),  # 50 / 480
        ("egg", "10.6 %"),  # 51 / 480
    ],
)
def test_the_formula_of_the_loaf_is_what_a_hand_reckons(what: str, figure: str) -> None:
    """Common practice: everything in per cent of all flour, that of the preferment included."""
    (formula,) = panels("overnight-honey-and-sesame-loaf")[1]
    assert dict(formula.totals)[what].replace("\u00a0", " ") == figure
