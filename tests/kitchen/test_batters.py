"""Whether a batter fits its tin."""

from fractions import Fraction

import pytest

from sitegen.kitchen.batters import BatterKind, batter_kind, fill_of
from sitegen.kitchen.recipe import Tin
from sitegen.kitchen.tables import Tables

CREAMED = BatterKind(
    "creamed",
    Fraction("0.8"),
    Fraction("0.9"),
    Fraction("0.95"),
    "batter",
    "from-memory",
    words=("creamed*",),
)
BREAD = BatterKind(
    "bread",
    Fraction("1.05"),
    Fraction("1.15"),
    Fraction("0.7"),
    "dough",
    "from-memory",
    words=("bread",),
    roles=frozenset({"yeast"}),
    most_weight=Fraction("0.65"),
)
USUAL = BatterKind("usual", Fraction("0.8"), Fraction("1.1"), Fraction("0.95"), "batter", "from-memory")
KINDS = (BREAD, CREAMED, USUAL)
SQUARE = Tin("square", *(Fraction(n) for n in (20, 20, 5, 20, 20)))  # 2,000 ml


@pytest.mark.parametrize(
    ("kind", "roles", "row"),
    [
        ("creamed cake", {"flour"}, CREAMED),
        ("", {"flour", "yeast"}, BREAD),
        ("", {"flour"}, USUAL),
        ("creamed cake", {"flour", "yeast"}, CREAMED),  # the baker's own word goes before what is in it
        ("poolish", {"flour", "yeast"}, BREAD),
        ("steamed pudding", {"flour"}, USUAL),
    ],
)
def test_a_kind_is_known_by_its_word_else_by_what_it_holds(
    kind: str, roles: set[str], row: BatterKind
) -> None:
    assert batter_kind(kind, frozenset(roles), KINDS) is row


def test_a_table_without_rows_knows_no_kind() -> None:
    assert batter_kind("", frozenset(), ()) is None


@pytest.mark.parametrize(
    ("grams", "over", "high"),
    [
        (900, False, False),
        (1080, False, False),  # half of the depth and a tenth more, at 0.9 g/ml
        (1081, False, True),
        (1710, False, True),  # 95 % of the tin
        (1711, True, True),
    ],
)
def test_a_batter_against_a_tin_half_full(tables: Tables, grams: int, over: bool, high: bool) -> None:
    fill = fill_of(Fraction(grams), SQUARE, Fraction(1, 2), CREAMED, tables.tins)
    assert (fill.is_over, fill.is_high) == (over, high)


def test_without_a_written_fill_only_the_brim_counts(tables: Tables) -> None:
    assert not fill_of(Fraction(1700), SQUARE, None, CREAMED, tables.tins).is_high


@pytest.mark.parametrize(
    ("grams", "over", "high"), [(1300, False, False), (1301, False, True), (1611, True, True)]
)
def test_a_dough_goes_by_its_weight_for_each_millilitre(
    tables: Tables, grams: int, over: bool, high: bool
) -> None:
    fill = fill_of(Fraction(grams), SQUARE, Fraction(1, 2), BREAD, tables.tins)
    assert (fill.is_over, fill.is_high) == (over, high)
