"""The allergens of a larder's row: said for two laws, and for the third where it does not follow."""

import pytest

from sitegen.faults import Fault
from sitegen.kitchen.larder import Ingredient
from sitegen.source.reader import parse_document
from sitegen.source.tables import read_tables


def read(row: str, name: str = "seed mix") -> tuple[Ingredient | None, tuple[Fault, ...]]:
    document, faults = parse_document(f"{name}:\n  {row}\n", "content/larder.yaml")
    assert document is not None
    assert faults == ()
    tables, found = read_tables(document)
    return tables.larder.find(name), found


@pytest.mark.parametrize(
    ("allergens", "australian"),
    [
        ("{eu: [rye, eggs, milk], us: [egg, milk]}", ("rye", "egg", "milk")),
        ("{eu: [spelt], us: [wheat]}", ("wheat",)),
        ("{eu: [celery, mustard], us: []}", ()),
        ("{eu: [], us: [pine nut]}", ("pine nut",)),
        ("{eu: [sulphites], us: [], au: []}", ()),
        ("{eu: [], us: [], au: [lupin]}", ("lupin",)),
    ],
)
def test_the_australian_names_follow_unless_they_are_said(
    allergens: str, australian: tuple[str, ...]
) -> None:
    row, faults = read(f"allergens: {allergens}")
    assert faults == ()
    assert row is not None
    assert row.allergens_au == australian


def test_a_row_that_changes_one_law_changes_what_follows_from_it() -> None:
    row, _ = read("allergens: {eu: [milk, soya]}", "dark chocolate")
    assert row is not None
    assert row.allergens_au == ("milk", "soy")


def test_a_row_that_says_nothing_of_allergens_changes_none() -> None:
    row, _ = read("also: [house butter]", "unsalted butter")
    assert row is not None
    assert row.allergens_au == ("milk",)


@pytest.mark.parametrize(
    "row",
    [
        "allergens: {eu: [], us: [], au: [eggs]}",  # the EU's word
        "{allergens: {eu: [], us: []}, label-advice: yes, packet-may-hold: [egg]}",  # the American word
    ],
)
def test_a_word_of_another_law_is_a_fault(row: str) -> None:
    _, faults = read(row)
    assert [fault.code for fault in faults] == ["unknown-allergen"]


def test_what_a_packet_may_hold_is_kept_from_the_row() -> None:
    row, _ = read("{allergens: {eu: [], us: []}, label-advice: yes, packet-may-hold: [wheat]}")
    assert row is not None
    assert row.packet_may_hold == ("wheat",)
    assert row.label_advice


def test_only_a_packet_that_decides_may_hold_something() -> None:
    rows = read_tables()[0].larder.ingredients
    assert [row.key for row in rows if row.packet_may_hold and not row.label_advice] == []
