"""`data/finding.yaml`: nothing is out of reach, and nothing is promised that no law lists."""

from fractions import Fraction

import pytest

from sitegen.kitchen.allergens import ORDERS, Regime
from sitegen.kitchen.finding import NO_TIN, TimeBand
from sitegen.source.tables import read_tables

TABLES = read_tables()[0]
TABLE = TABLES.finding
BANDS = {"start to finish": TABLE.start_to_finish, "hands-on": TABLE.hands_on}


@pytest.mark.parametrize("bands", BANDS.values(), ids=list(BANDS))
@pytest.mark.parametrize("minutes", [1, 30, 31, 60, 61, 240, 241, 720, 721, 5000])
def test_every_time_has_a_band(bands: tuple[TimeBand, ...], minutes: int) -> None:
    assert any(band.holds(Fraction(minutes)) for band in bands)


@pytest.mark.parametrize("bands", BANDS.values(), ids=list(BANDS))
def test_whoever_has_longer_has_all_that_is_shorter(bands: tuple[TimeBand, ...]) -> None:
    *shorter, longest = bands
    ends = [band.to_min for band in shorter]
    assert all(band.over_min == 0 for band in shorter)
    assert ends == sorted(ends, key=lambda end: end or 0)
    assert (longest.over_min, longest.to_min) == (ends[-1], None)


def test_every_shape_of_tin_belongs_to_a_family_and_every_family_has_a_shape() -> None:
    families = [row.key for row in TABLE.tins]
    assert {shape.family for shape in TABLES.tins.shapes} == {*families} - {NO_TIN}
    assert families[-1] == NO_TIN


@pytest.mark.parametrize("regime", ORDERS)
def test_every_name_of_a_group_stands_in_the_law(regime: Regime) -> None:
    for group in TABLE.without:
        assert set(group.names.get(regime, ())) <= set(ORDERS[regime]), group.key


@pytest.mark.parametrize(
    ("regime", "left"),
    [
        ("eu", {"crustaceans", "fish", "molluscs", "celery", "mustard", "lupin"}),
        ("us", {"fish", "shellfish"}),
        ("au", {"crustacean", "fish", "mollusc", "lupin"}),
    ],
)
def test_all_that_bakers_have_in_the_house_can_be_asked_to_be_left_out(
    regime: Regime, left: set[str]
) -> None:
    grouped = {name for group in TABLE.without for name in group.names.get(regime, ())}
    assert set(ORDERS[regime]) - grouped == left


def test_the_roles_of_a_group_are_roles_of_the_larder() -> None:
    roles = {role for row in TABLES.larder.ingredients for role in row.roles}
    assert {role for group in TABLE.without for role in group.roles} <= roles
