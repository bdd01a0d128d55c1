"""What 100 g of an ingredient hold: the project's own table, and figures copied from a packet."""

from fractions import Fraction
from importlib.resources import files

import pytest

from sitegen.kitchen.composition import label_composition
from sitegen.kitchen.larder import Composition, Ingredient
from sitegen.source.composition_rows import CompositionRow, composition_rows, with_compositions
from sitegen.source.reader import parse_document
from sitegen.source.table_rows import BrokenTable
from sitegen.source.tables import read_tables

TABLES, _ = read_tables()
LINES = (files("sitegen") / "data" / "composition.csv").read_text(encoding="utf-8").splitlines()
ROWS = tuple(composition_rows(LINES))
FIGURES = "fat: 1.2, saturates: 0.4, carbohydrate: 60, sugars: <0.5, protein: 5 g, salt: 0.1"
# Gelatine's nitrogen by 6.25 is more protein than there is gelatine: a known fault of the law's factor.
ROUNDING_G = Fraction(1, 200)
OVER_100_G = {"leaf gelatine", "powdered gelatine"}


def test_at_least_three_hundred_ingredients_have_a_composition() -> None:
    assert sum(row.composition is not None for row in TABLES.larder.ingredients) >= 300


def test_the_ingredients_without_one_are_these() -> None:
    """Of what packets differ in too much, of what is fished out again, and of what no table has."""
    without = {row.key for row in TABLES.larder.ingredients if row.composition is None}
    assert without == {
        "dried lavender", "food colouring", "meringue powder", "tea bag", "tea leaves", "vanilla pod",
    }  # fmt: skip


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.ingredient)
def test_a_row_holds_no_more_than_100_g(row: CompositionRow) -> None:
    food = TABLES.larder.find(row.ingredient)
    assert food is not None
    assert food.composition is not None
    held = food.composition
    parts = (held.fat, held.carbohydrate, held.fibre, held.protein, held.salt, held.alcohol, held.polyols)
    total = sum(parts, held.organic_acids + (held.water or 0))
    assert total <= 101 or food.key in OVER_100_G
    assert held.saturates <= held.fat + ROUNDING_G
    assert held.sugars <= held.carbohydrate


def test_every_row_names_a_source() -> None:
    assert {row.food.source.split(" ")[0] for row in ROWS} <= set(TABLES.sources)


def test_what_is_from_memory_or_the_nearest_food_says_so() -> None:
    from_memory = [row for row in ROWS if row.food.source == "from-memory"]
    assert from_memory
    assert all(row.remark for row in from_memory)


HEAD = LINES[0]


def test_a_row_of_an_ingredient_that_is_not_there_is_refused() -> None:
    row = "moon dust,from-memory,0,0,0,0,0,0,0,,0,0,0,6.25,,a guess"
    with pytest.raises(BrokenTable):
        with_compositions(TABLES.larder, composition_rows([HEAD, row]))


def test_an_ingredient_twice_is_refused() -> None:
    with pytest.raises(BrokenTable):
        with_compositions(TABLES.larder, composition_rows([HEAD, LINES[1], LINES[1]]))


def test_an_empty_cell_is_refused() -> None:
    with pytest.raises(BrokenTable):
        tuple(composition_rows([HEAD, "honey,usda-sr28 19296,,0,0,0,0,0,0,,0,0,0,6.25,,"]))


def test_filled_cells_are_told_with_their_source() -> None:
    (row,) = [row for row in ROWS if row.ingredient == "blackcurrants"]
    assert dict(row.filled) == {"sugars": "usda-sr28 09084", "fibre": "usda-sr28 09084"}
    assert label_composition(row.food).sugars == Fraction("7.37")


def packet(figures: str) -> tuple[Ingredient | None, tuple[str, ...]]:
    """The row of 'oat syrup' in a school's larder, and the codes of its faults."""
    text = f"oat syrup:\n  allergens: {{eu: [], us: []}}\n  composition: {{{figures}}}\n"
    document, _ = parse_document(text, "content/larder.yaml")
    tables, faults = read_tables(document)
    return tables.larder.find("oat syrup"), tuple(fault.code for fault in faults)


def test_a_packets_figures_become_the_composition() -> None:
    row, faults = packet(f"{FIGURES}, source: packet")
    assert faults == ()
    assert row is not None
    assert row.composition == Composition(
        fat=Fraction("1.2"),
        saturates=Fraction("0.4"),
        carbohydrate=Fraction(60),
        sugars=Fraction("0.25"),
        fibre=Fraction(0),
        protein=Fraction(5),
        salt=Fraction("0.1"),
        source="packet",
    )


@pytest.mark.parametrize(
    ("figures", "code"),
    [
        (f"{FIGURES.replace('fat: 1.2', 'fat: some')}, source: packet", "label-figure"),
        (f"{FIGURES.replace('fat: 1.2', 'fat: -1')}, source: packet", "label-figure"),
        (f"{FIGURES.replace('saturates: 0.4', 'saturates: 1.3')}, source: packet", "impossible-composition"),
        (f"{FIGURES.replace('sugars: <0.5', 'sugars: 61')}, source: packet", "impossible-composition"),
        (f"{FIGURES}, fibre: 35, source: packet", "impossible-composition"),
        (f"{FIGURES}, source: a friend", "unknown-source"),
        (f"{FIGURES.replace('fat: 1.2, ', '')}, source: packet", "missing-key"),
    ],
)
def test_figures_that_no_packet_can_bear_are_faults(figures: str, code: str) -> None:
    row, faults = packet(figures)
    assert row is None
    assert faults == (code,)


def test_a_school_that_renames_an_ingredient_keeps_its_composition() -> None:
    document, _ = parse_document("honey:\n  also: [heather honey]\n", "content/larder.yaml")
    tables, faults = read_tables(document)
    assert faults == ()
    row = tables.larder.find("heather honey")
    assert row is not None
    assert row.composition is not None
