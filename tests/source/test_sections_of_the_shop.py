"""`data/sections.yaml`: every ingredient of the larder stands somewhere in the shop."""

import pytest

from sitegen.kitchen.larder import Ingredient
from sitegen.source.tables import read_tables

TABLES = read_tables()[0]
SECTIONS = TABLES.sections


def test_every_ingredient_of_the_larder_has_a_section_of_its_own_kind() -> None:
    rest = [row.key for row in TABLES.larder.ingredients if SECTIONS.of(row).takes_rest]
    assert rest == []


def test_exactly_one_section_takes_the_rest() -> None:
    assert [row.key for row in SECTIONS.rows if row.takes_rest] == ["other"]


def test_every_name_and_role_of_the_table_is_known_to_the_larder() -> None:
    named = {name for row in SECTIONS.rows for name in row.ingredients}
    roles = {role for row in SECTIONS.rows for role in row.roles}
    assert named <= {row.key for row in TABLES.larder.ingredients}
    assert roles <= {role for row in TABLES.larder.ingredients for role in row.roles}


def test_no_ingredient_is_named_in_two_sections_and_no_role_either() -> None:
    for words in ([row.ingredients for row in SECTIONS.rows], [row.roles for row in SECTIONS.rows]):
        named = [word for row in words for word in row]
        assert sorted(named) == sorted(set(named))


@pytest.mark.parametrize(
    ("name", "section"),
    [
        ("plain flour", "flour"),
        ("lemon", "fruit"),
        ("lemon juice", "tins"),
        ("unsalted butter", "dairy"),
        ("egg yolk", "dairy"),
        ("cream liqueur", "drinks"),
        ("apricot jam", "sugar"),
        ("apricot", "fruit"),
        ("water", "tap"),
        ("instant yeast", "raising"),
    ],
)
def test_where_things_stand(name: str, section: str) -> None:
    assert SECTIONS.of(TABLES.larder.find(name)).key == section


def test_what_has_no_role_or_no_row_stands_with_the_rest() -> None:
    assert SECTIONS.of(Ingredient("moonstones", {})).key == "other"
    assert SECTIONS.of(None).key == "other"
