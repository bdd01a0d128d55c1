"""The table of substitutions as a whole: what every row of it must hold."""

import pytest

from sitegen.kitchen.substitutions import Swap
from sitegen.source.substitution_rows import SubstitutionsFile, swaps
from sitegen.source.table_rows import BrokenTable
from sitegen.source.tables import read_tables

TABLES = read_tables()[0]
PER_WEIGHT = [row for row in TABLES.swaps if not row.per_piece]
CONCENTRATED = frozenset(
    {"agar", "baking powder", "bicarbonate of soda", "cream of tartar", "instant yeast", "lemon zest"}
    | {"active dry yeast", "fresh yeast", "vanilla bean paste", "vanilla extract", "clarified butter"}
    | {"powdered gelatine"}
)
"""What is not replaced weight for weight: strength, water or bloom differ."""


def name_of(row: Swap) -> str:
    return f"{row.instead_of} by {' and '.join(one.ingredient for one in row.use)}"


def rows(text: dict[str, object]) -> tuple[Swap, ...]:
    file = SubstitutionsFile.model_validate([{"for": "golden syrup", "source": "common-practice"} | text])
    return swaps(file, TABLES.larder, TABLES.measures)


def test_there_are_many() -> None:
    assert len(TABLES.swaps) >= 60


@pytest.mark.parametrize("row", TABLES.swaps, ids=name_of)
def test_a_row_has_a_source_and_replaces_the_thing_by_something_else(row: Swap) -> None:
    assert row.source in TABLES.sources
    assert row.instead_of not in {one.ingredient for one in row.use}


@pytest.mark.parametrize("row", PER_WEIGHT, ids=name_of)
def test_a_hundred_grams_are_replaced_by_about_a_hundred(row: Swap) -> None:
    total = sum(one.grams for one in row.use)
    assert row.instead_of in CONCENTRATED or 80 <= total <= 108


@pytest.mark.parametrize("row", TABLES.swaps, ids=name_of)
def test_a_region_that_lacks_a_thing_is_not_sent_for_another_that_it_lacks(row: Swap) -> None:
    regions = {*row.lacking_in, *row.differs_in}
    lacking = {(swap.instead_of, region) for swap in TABLES.swaps for region in swap.lacking_in}
    assert {(one.ingredient, region) for one in row.use for region in regions} & lacking == set()


def test_no_two_rows_of_a_thing_are_the_same() -> None:
    names = [name_of(row) for row in TABLES.swaps]
    assert len(names) == len(set(names))


def test_a_measure_is_weighed_by_the_larder() -> None:
    (row,) = rows({"use": {"honey": "1 us_cup"}})
    assert row.use[0].grams == 339


@pytest.mark.parametrize(
    "text",
    [
        {"use": {"hunny": "100 g"}},
        {"use": {"plain honey": "100 g"}},
        {"use": {"honey": "100"}},
        {"use": {"pearl sugar": "1 us_cup"}},
        {"for": "syrup of gold", "use": {"honey": "100 g"}},
    ],
)
def test_a_row_that_cannot_be_weighed_is_broken(text: dict[str, object]) -> None:
    with pytest.raises(BrokenTable):
        rows(text)
