"""What the table of cautions says to parts of recipes, and to what it keeps silent."""

from fractions import Fraction

import pytest

from sitegen.kitchen.cautions import ComponentFacts, LineFacts, StepFacts, cautions_for
from sitegen.source.tables import read_tables

TABLES = read_tables()[0]


def called(
    lines: dict[str, str], *steps: str, celsius: tuple[int, ...] = (), baked: bool = False
) -> set[str]:
    """The keys of the cautions for one component. lines: the text of a line -> its ingredient."""
    rows = {text: TABLES.larder.find(name) for text, name in lines.items()}
    assert None not in rows.values()
    facts = ComponentFacts(
        title="Part",
        lines=tuple(LineFacts(text, row.roles if row else frozenset()) for text, row in rows.items()),
        steps=tuple(StepFacts(text, tuple(map(Fraction, celsius))) for text in steps),
        baked=baked,
    )
    return {row.key for row in cautions_for(TABLES.cautions, [facts])}


def test_a_plain_sponge_needs_no_caution() -> None:
    lines = {"180 g plain flour": "plain flour", "3 eggs": "egg", "180 g unsalted butter": "unsalted butter"}
    assert called(lines, "Whisk, fold and spread in the tin.", "Bake.", baked=True) == set()


def test_a_simple_syrup_needs_no_caution() -> None:
    """It boils at 102 to 103 C, an ordinary hot liquid."""
    lines = {"100 g caster sugar": "caster sugar", "100 g water": "water"}
    assert called(lines, "Bring to the boil.", celsius=(102,)) == set()


def test_italian_meringue_has_hot_sugar_lightly_cooked_egg_and_a_moving_mixer() -> None:
    lines = {"2 egg whites": "egg white", "100 g caster sugar": "caster sugar"}
    step = "Boil to 118 C, then pour the syrup on to the whites with the whisk running."
    assert called(lines, step, celsius=(118,)) == {"hot-sugar", "raw-egg", "moving-mixer"}


def test_caramel_sauce_is_hot_and_spits_but_is_no_cold_cream() -> None:
    lines = {"200 g caster sugar": "caster sugar", "150 g double cream": "double cream"}
    step = "Boil to an amber caramel at 175 C, then stir in the cream off the heat."
    assert called(lines, step, celsius=(175,)) == {"hot-sugar", "spitting-caramel"}


def test_custard_that_boils_has_no_raw_egg_and_is_kept_cold() -> None:
    lines = {"5 egg yolks": "egg yolk", "500 g whole milk": "whole milk", "40 g cornflour": "cornflour"}
    assert called(lines, "Let it boil for 1 minute.", "Cover and chill.") == {"keep-cold"}


def test_curd_brought_to_80_c_has_no_raw_egg() -> None:
    lines = {"3 eggs": "egg", "80 g lemon juice": "lemon juice"}
    assert called(lines, "Stir until it reads 80 C.", "Chill.", celsius=(80,)) == {"keep-cold"}


def test_a_mousse_of_raw_egg() -> None:
    lines = {"3 egg whites": "egg white", "200 g whipping cream": "whipping cream"}
    assert called(lines, "Whisk the whites and fold in the cream.", "Chill.") == {"raw-egg", "keep-cold"}


def test_pasteurised_egg_is_no_raw_egg() -> None:
    assert called({"60 g pasteurised egg white": "pasteurised egg white"}, "Whisk to soft peaks.") == set()


def test_a_baked_custard_tart_is_kept_cold_and_wants_a_thermometer() -> None:
    lines = {"300 g double cream": "double cream", "7 egg yolks": "egg yolk"}
    assert called(lines, "Pour in the custard and bake.", baked=True) == {"keep-cold", "egg-custard"}


@pytest.mark.parametrize(
    ("line", "name", "keys"),
    [
        ("80 g pecans, roughly chopped", "pecans", {"choking"}),
        ("80 g hazelnuts, finely ground", "hazelnuts", set()),
        ("80 g ground almonds", "ground almonds", set()),
        ("30 g flaked almonds", "flaked almonds", set()),
        ("100 g grapes", "grapes", {"choking"}),
        ("100 g grapes, quartered", "grapes", set()),
        ("2 tbsp honey", "honey", {"honey"}),
        ("40 g brandy", "brandy", {"alcohol"}),
        ("1 tsp vanilla extract", "vanilla extract", set()),
        ("300 g cherries", "cherries", {"choking", "stones"}),
        ("400 g plums, halved and stoned", "plums", set()),
        ("1 tsp dried lavender", "dried lavender", {"flowers"}),
    ],
)
def test_what_an_ingredient_calls_for(line: str, name: str, keys: set[str]) -> None:
    assert called({line: name}, "Fold in.", baked=True) == keys


@pytest.mark.parametrize(
    ("step", "keys"),
    [
        ("Brown the tips with a blowtorch.", {"open-flame"}),
        ("Flambé the fruit.", {"open-flame"}),
        ("Knead for 8 minutes with the dough hook.", {"moving-mixer"}),
        ("Dust with edible glitter.", {"not-food"}),
        ("Cool on a wire rack and test with a cocktail stick.", set()),
        ("Deep-fry until golden.", {"hot-oil"}),
        ("Scatter petals on top.", {"flowers"}),
        ("Set the bowl over dry ice.", {"dry-ice"}),
        ("Caramelise the sugar.", {"hot-sugar"}),
        ("Whisk to soft peaks.", set()),
    ],
)
def test_what_a_step_calls_for(step: str, keys: set[str]) -> None:
    assert called({}, step) == keys


def test_flour_that_stays_raw_is_told_but_dusting_flour_is_not() -> None:
    assert called({"100 g plain flour": "plain flour"}, "Stir into the butter and roll in balls.") == {
        "raw-flour"
    }
    assert called({"plain flour, for dusting": "plain flour"}, "Roll out the paste.") == set()


def test_red_stands_before_amber() -> None:
    facts = ComponentFacts(
        "Part",
        (LineFacts("40 g brandy", frozenset({"alcohol"})), LineFacts("honey", frozenset({"honey"}))),
        (),
        baked=False,
    )
    assert [row.level for row in cautions_for(TABLES.cautions, [facts])] == ["red", "amber"]
