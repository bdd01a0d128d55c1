"""`keeps`: a sentence, or a time for each place."""

from fractions import Fraction
from pathlib import Path

import pytest
from pydantic import ValidationError

from sitegen.kitchen.balances import BalanceTable
from sitegen.kitchen.keeping import KeepingTable
from sitegen.kitchen.larder import Larder
from sitegen.kitchen.recipe import Component
from sitegen.source.keepings import KeepsFile, read_keeps
from sitegen.source.library import read_content
from sitegen.source.misread import Misread
from sitegen.source.tables import known_roles, read_tables

SAMPLE = Path(__file__).parent / "sample_school"
TABLES = read_tables()[0]


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("4 h", 4, 4),
        ("1 day", 24, 24),
        ("2-3 days", 48, 72),
        ("1 week", 168, 168),
        ("2 months", 1440, 1440),
        ("1 year", 8760, 8760),
        ("1 1/2 days", 36, 36),
        ("no", 0, 0),
        ("never", 0, 0),
    ],
)
def test_a_time_is_read_in_hours(text: str, low: int, high: int) -> None:
    span = read_keeps(text, "fridge").hours
    assert (span.low, span.high) == (Fraction(low), Fraction(high))


@pytest.mark.parametrize(
    "text", ["a while", "2", "days", "2 days, covered", "2 d", "4 years", "until Friday"]
)
def test_what_is_no_time_is_refused(text: str) -> None:
    with pytest.raises(Misread) as refused:
        read_keeps(text, "fridge")
    assert refused.value.code.code == "keeping-time"


def test_braces_with_nothing_in_them_say_nothing() -> None:
    with pytest.raises(ValidationError) as refused:
        KeepsFile.model_validate({})
    assert [error["type"] for error in refused.value.errors()] == ["too_short"]


def component(title: str) -> Component:
    recipe = read_content(SAMPLE).recipes[1]
    found = recipe.component(title)
    assert found is not None
    return found


def test_a_sentence_is_kept_as_it_is() -> None:
    sponge = component("Bay sponge")
    assert (sponge.keeps, sponge.keeping) == ("2 days, covered, at room temperature", ())


def test_places_are_read_and_the_note_beside_them() -> None:
    custard = component("Bay custard")
    assert custard.keeps == "covered"
    assert [(one.place, one.hours.high) for one in custard.keeping] == [("fridge", 48), ("freezer", 0)]


class TestOwnTable:
    table: KeepingTable = TABLES.keeping
    larder: Larder = TABLES.larder
    balances: BalanceTable = TABLES.balances

    def test_every_role_is_one_that_an_ingredient_has(self) -> None:
        known = known_roles(self.larder)
        assert [row.key for row in self.table.rows if not row.roles | row.lacks <= known] == []

    def test_every_kind_is_one_that_a_component_can_say(self) -> None:
        known = {kind.key for kind in self.balances.kinds}
        said = {kind for row in self.table.rows for kind in row.kinds}
        assert said - known == set()

    def test_no_kind_stands_in_two_rows(self) -> None:
        said = [kind for row in self.table.rows for kind in row.kinds]
        assert len(said) == len(set(said))

    def test_every_row_can_be_found_and_limits_something(self) -> None:
        assert [row.key for row in self.table.rows if not (row.kinds or row.words) or not row.keeping] == []

    def test_every_region_of_an_edition_says_how_long_out_of_the_fridge(self) -> None:
        assert {edition.region for edition in TABLES.editions.values()} <= self.table.out.keys()
