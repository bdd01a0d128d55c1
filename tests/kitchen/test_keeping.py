"""How long things keep: which row of the table a part fits, and which part of a piece is the strictest."""

from dataclasses import replace
from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import Span, single
from sitegen.kitchen.keeping import (
    NOT_THERE,
    KeepingRow,
    KeepingTable,
    KeptPart,
    Limit,
    longer_than_usual,
    usual_keeping,
    whole_keeping,
)
from sitegen.kitchen.recipe import Keeps

DAY = 24
NO_TABLE = KeepingTable()


def days(low: int, high: int | None = None) -> Span:
    return Span(Fraction(low * DAY), Fraction((high or low) * DAY))


def keeps(**places: Span) -> tuple[Keeps, ...]:
    return tuple(Keeps(place, hours) for place, hours in places.items())


def part(
    title: str, *roles: str, baked: bool = False, users: tuple[str, ...] = (), **places: Span
) -> KeptPart:
    return KeptPart(title, "", frozenset(roles), baked, keeps(**places), users)


CUSTARD_ROW = KeepingRow(
    "pastry cream",
    keeps(room=NOT_THERE, fridge=days(2), freezer=NOT_THERE),
    "common-practice",
    kinds=("pastry cream",),
    words=("custard",),
    roles=frozenset({"egg", "dairy"}),
    lacks=frozenset({"flour"}),
    baked=False,
)
TABLE = KeepingTable((CUSTARD_ROW,))
CUSTARD = part("Bay custard", "egg", "dairy", "sugar")
SPONGE = part("Sponge", "flour", "egg", baked=True, room=days(3))


@pytest.mark.parametrize(
    ("one", "fits"),
    [
        (CUSTARD, True),
        (replace(CUSTARD, title="Vanilla cream"), False),
        (replace(CUSTARD, roles=frozenset({"egg"})), False),
        (replace(CUSTARD, roles=CUSTARD.roles | {"flour"}), False),
        (replace(CUSTARD, baked=True), False),
        (part("Filling"), False),
        (replace(part("Filling"), kind="pastry cream"), True),
        (replace(CUSTARD, kind="creamed cake"), False),
    ],
    ids=["all", "title", "role missing", "role too many", "baked", "nothing", "by kind", "another kind"],
)
def test_a_part_fits_by_its_kind_else_by_title_ingredients_and_oven(one: KeptPart, fits: bool) -> None:
    assert usual_keeping(one, TABLE) == (CUSTARD_ROW if fits else None)


def test_the_first_row_that_fits_counts() -> None:
    other = replace(CUSTARD_ROW, key="other")
    assert usual_keeping(CUSTARD, KeepingTable((CUSTARD_ROW, other))) == CUSTARD_ROW


@pytest.mark.parametrize(
    ("said", "longer"),
    [
        (keeps(fridge=days(2)), []),
        (keeps(fridge=days(2, 3)), ["fridge"]),
        (keeps(fridge=days(1), freezer=days(30)), ["freezer"]),
        (keeps(room=NOT_THERE), []),
    ],
)
def test_what_is_longer_than_usual_is_told_by_place(said: tuple[Keeps, ...], longer: list[str]) -> None:
    found = longer_than_usual(replace(CUSTARD, keeping=said), CUSTARD_ROW)
    assert [one.place for one, _ in found] == longer


def test_the_strictest_part_decides_in_each_place() -> None:
    filling = part("Jam", room=days(30), fridge=days(60), freezer=days(90))
    sponge = replace(SPONGE, keeping=keeps(room=days(3), fridge=days(4), freezer=days(100)))
    assert whole_keeping((sponge, filling), NO_TABLE) == (
        Limit("room", days(3), "Sponge"),
        Limit("fridge", days(4), "Sponge"),
        Limit("freezer", days(90), "Jam"),
    )


def test_what_gives_no_time_in_the_room_must_be_chilled_and_so_must_the_piece() -> None:
    custard = replace(CUSTARD, keeping=keeps(fridge=days(2)))
    room, fridge = whole_keeping((SPONGE, custard), NO_TABLE)
    assert room == Limit("room", NOT_THERE, "Bay custard")
    assert fridge == Limit("fridge", days(2), "Bay custard")


def test_what_keeps_in_the_room_keeps_as_long_in_the_fridge_unless_it_forbids_it() -> None:
    custard = replace(CUSTARD, keeping=keeps(fridge=days(5)))
    assert whole_keeping((SPONGE, custard), NO_TABLE)[1] == Limit("fridge", days(3), "Sponge")
    crisp = part("Brittle", room=days(9), fridge=NOT_THERE)
    assert whole_keeping((SPONGE, custard, crisp), NO_TABLE)[1] == Limit("fridge", NOT_THERE, "Brittle")


def test_fresh_cream_that_says_nothing_is_chilled() -> None:
    cream = part("Cream", "chilled", "dairy")
    assert whole_keeping((SPONGE, cream), NO_TABLE)[0] == Limit("room", NOT_THERE, "Cream")


def test_cream_cheese_that_is_baked_in_the_dough_need_not_be_chilled() -> None:
    pastry = part("Pastry", "chilled", "flour", baked=True, room=days(2))
    assert whole_keeping((SPONGE, pastry), NO_TABLE)[0] == Limit("room", days(2), "Pastry")


def test_of_the_freezer_nothing_is_said_unless_every_part_says_it() -> None:
    jam = part("Jam", room=days(9), freezer=days(90))
    assert [limit.place for limit in whole_keeping((SPONGE, jam), NO_TABLE)] == ["room"]


def test_one_part_that_cannot_be_frozen_forbids_it() -> None:
    custard = replace(CUSTARD, keeping=keeps(fridge=days(2), freezer=NOT_THERE))
    assert whole_keeping((SPONGE, custard), NO_TABLE)[-1] == Limit("freezer", NOT_THERE, "Bay custard")


def test_a_part_that_says_nothing_counts_by_the_table_and_as_an_estimate() -> None:
    room, fridge, freezer = whole_keeping((SPONGE, CUSTARD), TABLE)
    assert fridge == Limit("fridge", days(2), "Bay custard", usual_for="pastry cream")
    assert (room.usual_for, freezer.usual_for) == ("pastry cream", "pastry cream")


def test_a_part_that_is_baked_inside_another_no_longer_counts() -> None:
    starter = part("Starter", users=("Dough",), fridge=days(1))
    dough = part("Dough", users=("Loaf",))
    loaf = part("Loaf", baked=True, room=days(3))
    assert whole_keeping((starter, dough, loaf), NO_TABLE) == ()
    icing = part("Icing", room=days(2))
    assert whole_keeping((starter, dough, loaf, icing), NO_TABLE) == (Limit("room", days(2), "Icing"),)


def test_one_part_is_no_assembly() -> None:
    assert whole_keeping((SPONGE, part("Dusting")), NO_TABLE) == ()


def test_of_equals_the_piece_itself_decides() -> None:
    assembly = part("Assembly", room=days(3))
    assert whole_keeping((SPONGE, assembly), NO_TABLE)[0].decided_by == "Assembly"


def test_a_range_is_as_strict_as_its_end() -> None:
    jam = part("Jam", room=days(2, 4))
    assert whole_keeping((SPONGE, jam), NO_TABLE)[0].hours == single(3 * DAY)
