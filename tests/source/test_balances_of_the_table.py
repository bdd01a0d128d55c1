"""The project's own balances: what they count is in the larder, and no band contradicts itself."""

from importlib.resources import files

import pytest
import yaml

from sitegen.kitchen.balances import Band, GroupTerm
from sitegen.source.balance_rows import BalancesFile, balance_table
from sitegen.source.catalogue import catalogue
from sitegen.source.table_rows import BrokenTable
from sitegen.source.tables import known_roles, read_tables

TABLES = read_tables()[0]
BALANCES = TABLES.balances
TERMS = tuple(term for terms in BALANCES.groups.values() for term in terms)
BANDS = (*BALANCES.everywhere, *(band for kind in BALANCES.kinds for band in kind.bands))


def test_every_name_that_a_group_counts_is_a_key_of_the_larder() -> None:
    names = {name for term in TERMS for name in (*term.names, *term.unless_names)}
    assert names - {row.key for row in TABLES.larder.ingredients} == set()


def test_every_role_that_a_group_counts_is_known() -> None:
    roles = {role for term in TERMS for role in (*term.roles, *term.unless_roles)}
    assert roles - known_roles(TABLES.larder) == set()


def test_every_share_of_a_weight_names_its_source() -> None:
    data = yaml.safe_load((files("sitegen") / "data" / "balances.yaml").read_text(encoding="utf-8"))
    terms = [term for terms in data["groups"].values() for term in terms]
    shares = [term for term in terms if term.keys() & {"share", "flour-at-hydration", "water-at-hydration"}]
    assert len(shares) >= 8
    assert [term for term in shares if term.get("source", "").split(" ")[0] not in TABLES.sources] == []


def test_a_term_counts_by_role_or_by_name() -> None:
    assert [term for term in TERMS if not term.roles and not term.names] == []


def test_every_name_whose_water_is_known_is_in_the_larder() -> None:
    assert TABLES.doughs is not None
    assert set(TABLES.doughs.water.by_key) - {row.key for row in TABLES.larder.ingredients} == set()


@pytest.mark.parametrize("band", BANDS, ids=lambda band: f"{band.what} of {band.of}")
def test_a_band_asks_outside_what_is_usual(band: Band) -> None:
    assert band.ask_low <= band.low <= band.high <= band.ask_high
    assert band.stop is None or band.stop > band.ask_high
    assert band.source.split(" ")[0] in TABLES.sources


def test_every_code_of_a_band_is_advice_of_the_catalogue() -> None:
    assert {band.code for band in BANDS} <= catalogue().keys()


def test_families_that_a_band_is_for_are_those_of_kinds() -> None:
    families = {kind.family for kind in BALANCES.kinds} | {""}
    assert {family for band in BANDS for family in band.families} <= families


def test_every_dough_says_what_goes_off_in_baking() -> None:
    doughs = [kind for kind in BALANCES.kinds if kind.family == "dough"]
    assert len(doughs) >= 10
    assert [kind.key for kind in doughs if kind.loses is None] == []


def test_a_sum_of_groups_counts_nothing_twice() -> None:
    twice = [
        (band.what, row.key)
        for band in BANDS
        for side in (band.what, band.of)
        for row in TABLES.larder.ingredients
        if len(side) > 1 and sum(_counts(group, row.key) for group in side) > 1
    ]
    assert twice == []


def _counts(group: str, key: str) -> bool:
    row = TABLES.larder.find(key)
    assert row is not None
    return group != "whole" and any(_takes(term, row.roles, key) for term in BALANCES.groups[group])


def _takes(term: GroupTerm, roles: frozenset[str], key: str) -> bool:
    if roles & term.unless_roles or key in term.unless_names:
        return False
    return bool(roles & term.roles) or key in term.names


def test_a_band_of_an_unknown_group_breaks_the_table() -> None:
    band = {"what": "feathers", "of": "flour", "usual": "1-2 %", "source": "common-practice"}
    file = BalancesFile.model_validate(
        {"groups": {"flour": [{"roles": ["flour"]}]}, "kinds": {}, "everywhere": [band]}
    )
    with pytest.raises(BrokenTable):
        balance_table(file)


@pytest.mark.parametrize("usual", ["60 %", "2-1 kg", "a-b"])
def test_a_band_that_is_no_range_breaks_the_table(usual: str) -> None:
    band = {"what": "whole", "of": "whole", "usual": usual, "source": "common-practice"}
    with pytest.raises(BrokenTable):
        balance_table(BalancesFile.model_validate({"groups": {}, "kinds": {}, "everywhere": [band]}))
