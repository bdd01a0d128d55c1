"""Bands: what counts for a group, when a band speaks, and what it says."""

from dataclasses import replace
from fractions import Fraction

import pytest

from sitegen.kitchen.balances import BalanceTable, Band, GroupTerm, Kind, flour_and_water, unusual
from sitegen.kitchen.contents import Contents, Held
from sitegen.kitchen.larder import Ingredient
from sitegen.kitchen.recipe import Choice

ROLES: dict[str, set[str]] = {
    "plain flour": {"flour"},
    "self-raising flour": {"flour", "self-raising"},
    "caster sugar": {"sugar"},
    "raspberry jam": {"sugar", "fruit"},
    "unsalted butter": {"fat"},
    "baking powder": {"leavening"},
    "egg": {"egg"},
    "fresh yeast": {"yeast"},
    "instant yeast": {"yeast"},
    "lemon": {"fruit", "acid"},
    "thyme": {"herb"},
    "rose syrup": set(),
}


def held(name: str, grams: int | str | None, brought_by: str = "", part: str = "") -> Held:
    row = Ingredient(name, {}, roles=frozenset(ROLES[name])) if name in ROLES else None
    return Held(Choice(name, name, part=part), row, None if grams is None else Fraction(grams), brought_by)


def by_roles(*roles: str, unless: tuple[str, ...] = ()) -> tuple[GroupTerm, ...]:
    return (GroupTerm(roles=frozenset(roles), unless_roles=frozenset(unless)),)


def by_name(name: str, share: int | Fraction = 1) -> GroupTerm:
    return GroupTerm(names=frozenset({name}), share=Fraction(share))


def band(what: str, of: str, low: str, high: str, **more: object) -> Band:
    ends = Fraction(low), Fraction(high)
    return Band((what,), (of,), *ends, *ends, "common-practice", **more)  # type: ignore[arg-type]


SUGAR = band("sugar", "flour", "0.6", "1.1")
LEAVENING = band(
    "baking powder", "flour", "0", "0.07", unless=("self-raising flour",), code="leavening-unusual",
    stop=Fraction(12, 100),
)  # fmt: skip
CAKE = Kind("creamed cake", "cake", (SUGAR,))
TABLE = BalanceTable(
    groups={
        "flour": by_roles("flour"),
        "self-raising flour": by_roles("self-raising"),
        "sugar": by_roles("sugar", unless=("fruit",)),
        "fat": by_roles("fat"),
        "baking powder": (by_name("baking powder"),),
        "yeast": (by_name("instant yeast"), by_name("fresh yeast", Fraction(1, 3))),
        "egg white": (GroupTerm(roles=frozenset({"egg"}), part="white"),),
        "acid": by_roles("acid"),
    },
    kinds=(CAKE, Kind("oil cake", "cake", ())),
    everywhere=(LEAVENING,),
)


def codes(contents: Contents, kind: Kind | None = None, table: BalanceTable = TABLE) -> list[str]:
    own = tuple(one for one in contents if not one.brought_by)
    return [finding.band.code for finding in unusual(contents, own, kind, table)]


def test_a_group_counts_by_role_and_not_what_it_must_not_be() -> None:
    assert TABLE.weight((held("caster sugar", 100), held("raspberry jam", 50)), "sugar") == 100


def test_a_group_may_count_a_share_of_the_weight() -> None:
    assert TABLE.weight((held("instant yeast", 2), held("fresh yeast", 9)), "yeast") == 5


def test_a_part_of_an_egg_is_no_other_part() -> None:
    assert TABLE.weight((held("egg", 34, part="white"), held("egg", 17, part="yolk")), "egg white") == 34


def test_the_zest_of_a_fruit_is_no_acid() -> None:
    assert TABLE.weight((held("lemon", 3, part="zest"),), "acid") == 0


def test_sums_of_groups_and_the_whole() -> None:
    contents = (held("plain flour", 200), held("caster sugar", 100), held("thyme", 1))
    assert TABLE.weight(contents, "flour", "sugar") == 300
    assert TABLE.weight(contents, "whole") == 301


@pytest.mark.parametrize(("sugar", "asked"), [(119, True), (120, False), (220, False), (221, True)])
def test_a_kind_asks_outside_its_band_and_not_at_its_ends(sugar: int, asked: bool) -> None:
    contents = (held("plain flour", 200), held("caster sugar", sugar))
    assert codes(contents, CAKE) == ["balance-unusual"] * asked


def test_without_a_kind_only_the_leavening_is_judged() -> None:
    contents = (held("plain flour", 100), held("caster sugar", 900), held("baking powder", 8))
    assert codes(contents) == ["leavening-unusual"]


def test_more_than_can_work_is_a_slip() -> None:
    contents = (held("plain flour", 100), held("baking powder", 13))
    (finding,) = unusual(contents, contents, None, TABLE)
    assert finding.is_slip
    assert finding.figure == Fraction(13, 100)


def test_self_raising_flour_is_left_to_its_own_band() -> None:
    assert codes((held("self-raising flour", 100), held("baking powder", 8))) == []


def test_what_a_part_brings_has_been_judged_already() -> None:
    assert codes((held("plain flour", 100, "Sponge"), held("baking powder", 20, "Sponge"))) == []


def test_a_part_is_counted_where_a_kind_asks_for_the_whole() -> None:
    contents = (held("plain flour", 100, "Rubbed flour"), held("caster sugar", 200))
    assert codes(contents, CAKE) == ["balance-unusual"]


@pytest.mark.parametrize(
    "missing",
    [
        held("caster sugar", None),
        held("plain flour", None),
        held("an unknown thing", 5),
        held("rose syrup", 5),
    ],
    ids=lambda one: one.choice.name,
)
def test_what_cannot_be_weighed_or_is_not_known_silences_its_bands(missing: Held) -> None:
    assert codes((held("plain flour", 100), held("caster sugar", 500), missing), CAKE) == []


def test_what_no_band_counts_may_stay_unweighed() -> None:
    contents = (held("plain flour", 100), held("caster sugar", 500), held("thyme", None))
    assert codes(contents, CAKE) == ["balance-unusual"]


def test_without_flour_a_band_on_flour_says_nothing() -> None:
    assert codes((held("caster sugar", 500),), CAKE) == []


def test_a_band_for_some_families_is_silent_for_others() -> None:
    only_cakes = replace(TABLE, everywhere=(replace(LEAVENING, families=frozenset({"cake"})),))
    contents = (held("plain flour", 100), held("caster sugar", 100), held("baking powder", 8))
    assert codes(contents, CAKE, only_cakes) == ["leavening-unusual"]
    assert codes(contents, None, only_cakes) == []


def test_a_band_may_want_something_there() -> None:
    with_yeast = replace(TABLE, everywhere=(replace(LEAVENING, only_with=("yeast",)),))
    contents = (held("plain flour", 100), held("baking powder", 8))
    assert codes(contents, None, with_yeast) == []
    assert codes((*contents, held("instant yeast", 1)), None, with_yeast) == ["leavening-unusual"]


def test_a_finding_names_only_what_is_there() -> None:
    both = replace(CAKE, bands=(replace(SUGAR, what=("sugar", "fat"), of=("flour", "yeast")),))
    contents = (held("plain flour", 100), held("caster sugar", 500))
    (finding,) = unusual(contents, contents, both, replace(TABLE, everywhere=()))
    assert (finding.what, finding.of) == (("sugar",), ("flour",))


@pytest.mark.parametrize(
    ("written", "near"),
    [("cremed cake", ("creamed cake",)), ("cake", ("creamed cake", "oil cake")), ("xyzzy", ())],
)
def test_kinds_that_look_like_what_was_written(written: str, near: tuple[str, ...]) -> None:
    assert set(TABLE.near(written)) == set(near)


@pytest.mark.parametrize(
    ("grams", "hydration", "flour", "water"),
    [
        ("250", "1", "125", "125"),
        ("150", "0.5", "100", "50"),
        ("225", "1.25", "100", "125"),
        ("0", "1", "0", "0"),
    ],
)
def test_a_starter_is_its_flour_and_its_water(grams: str, hydration: str, flour: str, water: str) -> None:
    assert flour_and_water(Fraction(grams), Fraction(hydration)) == (Fraction(flour), Fraction(water))
