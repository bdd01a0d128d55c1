"""By what a recipe is found: its times, its tin, and what nothing in it brings."""

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.kitchen.allergens import named_in, regime_of
from sitegen.kitchen.larder import Ingredient, Larder
from sitegen.kitchen.recipe import Choice, Component, IngredientLine, Tin
from sitegen.sheet.facet_values import Facets
from sitegen.sheet.facet_words import all_facets, facets_of
from sitegen.sheet.setting import Setting
from sitegen.sheet.work_values import Times
from tests.sheet.pantry import choice, line, setting, tables

UK, US, AU = "british-metric", "us-cups", "australian"
NO_TIME = Times("", "", "", "", "", "")
LOAF_TIN = tables().tins.tin_named("900 g loaf")
EVERYTHING_UK = {"egg", "milk", "cereals", "nuts", "peanut", "soya", "sesame", "sulphites"}
INGREDIENTS = st.sampled_from([row.key for row in tables().larder.ingredients])


def found(
    *lines: IngredientLine,
    edition: str | Setting = UK,
    tin: Tin | None = None,
    times: Times = NO_TIME,
    stand_ins: Iterable[str] = (),
) -> Facets:
    scene = setting(edition) if isinstance(edition, str) else edition
    return facets_of([Component("It", lines, ())], tin, times, stand_ins, scene)


def keys(facets: Facets, group: str) -> set[str]:
    return {mark.key for mark in facets.marks if mark.group == group}


def without(*lines: IngredientLine, edition: str = UK, stand_ins: Iterable[str] = ()) -> set[str]:
    return keys(found(*lines, edition=edition, stand_ins=stand_ins), "without")


def lasting(total: int, hands_on: int) -> Times:
    return replace(NO_TIME, total_min=Fraction(total), hands_on_min=Fraction(hands_on))


@pytest.mark.parametrize(
    ("total", "bands"),
    [
        (45, {"hour", "afternoon", "day"}),
        (60, {"hour", "afternoon", "day"}),
        (200, {"afternoon", "day"}),
        (300, {"day"}),
        (1000, {"day-before"}),
        (0, set()),
    ],
)
def test_what_takes_an_hour_is_found_by_those_who_have_an_afternoon_too(total: int, bands: set[str]) -> None:
    assert keys(found(times=lasting(total, 0)), "time") == bands


@pytest.mark.parametrize(
    ("hands_on", "bands"),
    [(22, {"half-hour", "hour-of-work"}), (45, {"hour-of-work"}), (85, {"more-work"}), (0, set())],
)
def test_work_is_counted_apart_from_waiting(hands_on: int, bands: set[str]) -> None:
    assert keys(found(times=lasting(1000, hands_on)), "work") == bands


def test_a_time_belongs_where_print_puts_it() -> None:
    """241 minutes are printed as '4 h', and four hours are an afternoon."""
    assert "afternoon" in keys(found(times=lasting(241, 0)), "time")


@pytest.mark.parametrize(
    ("tin", "family", "title"),
    [(None, "none", "no tin"), (LOAF_TIN.tin if LOAF_TIN else None, "loaf", "loaf tin")],
)
def test_a_tin_is_found_by_its_family(tin: Tin | None, family: str, title: str) -> None:
    marks = [mark for mark in found(tin=tin).marks if mark.group == "tin"]
    assert [(mark.key, mark.title) for mark in marks] == [(family, title)]


def test_a_us_reader_looks_for_a_pan() -> None:
    assert "loaf pan" in [facet.title for facet in all_facets(setting(US))]


def test_an_ingredient_takes_away_what_it_brings_and_nothing_else() -> None:
    assert without(line(100, "g", "caster sugar")) == EVERYTHING_UK
    assert without(line(100, "g", "plain flour")) == EVERYTHING_UK - {"cereals"}
    assert without(line(100, "g", "plain flour"), line(2, "", "eggs", "medium")) == EVERYTHING_UK - {
        "cereals",
        "egg",
    }


def test_what_is_not_measured_counts_as_well() -> None:
    assert "cereals" not in without(line(None, "", "plain flour", preparation="for the tin"))


def test_an_alternative_counts_and_so_does_what_is_optional() -> None:
    instead = replace(
        line(50, "g", "sunflower oil"), choices=(choice("sunflower oil"), choice("unsalted butter"))
    )
    assert without(instead) == EVERYTHING_UK - {"milk"}
    assert without(replace(line(20, "g", "flaked almonds"), optional=True)) == EVERYTHING_UK - {"nuts"}


def test_what_the_sheet_offers_in_place_of_an_ingredient_counts_too() -> None:
    assert without(line(100, "g", "caster sugar"), stand_ins=["tahini"]) == EVERYTHING_UK - {"sesame"}


def test_nothing_is_promised_of_what_nobody_knows() -> None:
    assert without(line(100, "g", "caster sugar"), line(5, "g", "moonstones")) == set()


def test_allergens_that_a_recipe_leaves_open_take_everything_away_in_their_region() -> None:
    crystals = Ingredient("rose crystals", {}, allergens_unsaid=frozenset({"us"}))
    open_line = replace(line(5, "g", "rose crystals"), choices=(Choice("rose crystals", "rose crystals"),))
    known = replace(tables(), larder=Larder.of((*tables().larder.ingredients, crystals)))
    shown = {
        edition: keys(found(open_line, edition=replace(setting(edition), tables=known)), "without")
        for edition in (UK, US)
    }
    assert shown == {UK: EVERYTHING_UK, US: set()}


@pytest.mark.parametrize(
    ("edition", "free"),
    [
        (UK, EVERYTHING_UK - {"cereals"}),
        (US, {"egg", "milk", "cereals", "nuts", "peanut", "soya", "sesame"}),
        (AU, EVERYTHING_UK - {"cereals"}),
    ],
)
def test_oats_are_listed_by_two_laws_and_not_by_the_third(edition: str, free: set[str]) -> None:
    """In the US wheat alone is listed, and the word there says so; sulphites are not."""
    assert without(line(100, "g", "porridge oats"), edition=edition) == free
    titles = {facet.key: facet.title for facet in all_facets(setting(edition))}
    assert (titles["cereals"] == "wheat") is (edition == US)


def test_pine_nuts_are_nuts_to_whoever_asks_for_none() -> None:
    assert "nuts" not in without(line(20, "g", "pine nuts"))


def test_the_packets_that_decide_are_named() -> None:
    facets = found(line(100, "g", "dark chocolate"), line(30, "g", "lemon juice"))
    assert facets.labels_of == "dark chocolate and lemon juice"
    assert found(line(100, "g", "caster sugar")).labels_of == ""


@given(st.lists(INGREDIENTS, max_size=6), INGREDIENTS, st.sampled_from([UK, US, AU]))
def test_one_ingredient_more_never_makes_a_recipe_freer(names: list[str], more: str, edition: str) -> None:
    lines = [line(10, "g", name) for name in names]
    before = without(*lines, edition=edition)
    after = without(*lines, line(10, "g", more), edition=edition)
    row = tables().larder.find(more)
    assert row is not None
    regime = regime_of(setting(edition).edition.region)
    brought = {
        group.key
        for group in tables().finding.without
        if set(named_in(row, regime)) & set(group.names.get(regime, ())) or row.roles & group.roles
    }
    assert after == before - brought
