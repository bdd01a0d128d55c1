"""What the table of cautions says to parts of recipes, and to what it keeps silent."""

import re
from fractions import Fraction
from typing import NamedTuple

import pytest

from sitegen.kitchen.caution_calls import cautions_for, with_passed_on
from sitegen.kitchen.cautions import ComponentFacts, LineFacts, StepFacts
from sitegen.source.tables import read_tables

TABLES = read_tables()[0]
OVEN = "[oven] "
"""Before a step that bakes."""


class Part(NamedTuple):
    """A component in few words. lines: the text of a line -> its ingredient, '' for another part.

    steps: a step takes the lines whose number stands in it ('{0}') and has the heat that it names ('118 C').
    grams, portion: of each line in the batch, and in a portion.
    """

    lines: dict[str, str]
    steps: tuple[str, ...]
    baked: bool = False
    title: str = "Part"
    grams: int | None = None
    portion: str | None = None

    def facts(self) -> ComponentFacts:
        return ComponentFacts(
            title=self.title,
            lines=tuple(self._line(text, name) for text, name in self.lines.items()),
            steps=tuple(self._step(text) for text in self.steps),
            baked=self.baked,
        )

    def _line(self, text: str, name: str) -> LineFacts:
        row = TABLES.larder.find(name)
        assert row is not None or not name, name
        grams = None if self.grams is None else Fraction(self.grams)
        portion = None if self.portion is None else Fraction(self.portion)
        part = "" if name else text.removeprefix("all of ")
        return LineFacts(text, row.roles if row else frozenset(), grams, portion, part)

    def _step(self, text: str) -> StepFacts:
        uses = tuple(index for index in range(len(self.lines)) if f"{{{index}}}" in text)
        heat = tuple(map(Fraction, re.findall(r"(\d+) C\b", text)))
        return StepFacts(text, heat, uses, text.startswith(OVEN))


def called(*parts: Part) -> set[str]:
    facts = with_passed_on(TABLES.cautions, [part.facts() for part in parts])
    return {row.key for row in cautions_for(TABLES.cautions, facts)}


def does(*steps: str) -> Part:
    """A part of which only the steps matter."""
    return Part({}, steps)


def of(line: str, name: str, step: str = "Fold in.", baked: bool = True) -> Part:
    """A part of one ingredient."""
    return Part({line: name}, (step,), baked=baked)


SUGAR = {"200 g caster sugar": "caster sugar"}
EGGS = {"3 eggs": "egg"}
WHITES = {"2 egg whites": "egg white"}
YOLKS = {"5 egg yolks": "egg yolk"}
CREAM = {"150 g double cream": "double cream"}
CARAMEL = Part(SUGAR, ("Boil {0} to 168 C.",), title="Caramel")

ROWS: list[tuple[str, Part, Part]] = [
    # The caution, a part that calls for it, and one that comes near and must not.
    ("hot-sugar", Part(SUGAR, ("Boil to 118 C.",)), Part(SUGAR, ("Bring to the boil, 102 C.",))),
    ("hot-sugar", does("Caramelise the sugar."), does("Cook until the onions caramelise.")),
    ("hot-sugar", does("Cook to the hard crack stage."), does("Scatter with caramel pieces.")),
    (
        "hot-sugar",
        Part(SUGAR, ("Cook until amber.",)),
        Part(SUGAR, (OVEN + "Bake until the top is amber.",)),
    ),
    ("hot-sugar", does("Boil the sugar to 120 C."), does("Heat the oil to 170 C.")),
    (
        "spitting-caramel",
        Part(SUGAR | CREAM, ("Boil to an amber caramel.", "Stir in {1}.")),
        Part(SUGAR | CREAM, ("Simmer.", "Stir in {1}.")),
    ),
    ("open-flame", does("Brown the tips with a blowtorch."), does("Brown the tips under the grill.")),
    ("open-flame", does("Flambé the fruit."), does("Scorch nothing.")),
    ("raw-egg", Part(WHITES, ("Whisk {0}.", "Chill.")), Part(WHITES, ("Whisk {0}.", OVEN + "Bake."))),
    (
        "raw-egg",
        Part(YOLKS, ("Whisk {0} over simmering water until pale.",)),
        Part(YOLKS, ("Whisk {0} over simmering water to 75 C.",)),
    ),
    (
        "raw-egg",
        Part(YOLKS, ("Boil the cream.", "Pour it on to {0}.")),
        Part(YOLKS, ("Boil the cream.", "Pour it on to {0}.", "Bring it all to the boil.")),
    ),
    ("raw-egg", Part(EGGS, ("Beat {0} into the mousse.",)), Part(EGGS, ("Beat {0} and fry.",))),
    (
        "raw-egg",
        of("1 egg white", "egg white", "Whisk.", baked=False),
        of("60 g pasteurised egg white", "pasteurised egg white", "Whisk.", baked=False),
    ),
    ("choking", of("80 g pecans, roughly chopped", "pecans"), of("80 g ground almonds", "ground almonds")),
    ("choking", of("100 g grapes", "grapes"), of("100 g grapes, quartered", "grapes")),
    (
        "choking",
        of("80 g hazelnuts", "hazelnuts"),
        of("80 g hazelnuts", "hazelnuts", "Grind to a powder."),
    ),
    ("hard-caramel", CARAMEL, Part(SUGAR | CREAM, ("Boil to 168 C, then stir in {1}.",))),
    ("hard-caramel", does("Break the brittle."), does("Blitz the brittle to a powder.")),
    ("honey", of("2 tbsp honey", "honey"), of("2 tbsp golden syrup", "golden syrup")),
    ("kernels", does("Crack two apricot kernels."), does("Stone the apricots.")),
    ("dry-ice", does("Set the bowl over dry ice."), does("Set the bowl over ice.")),
    ("hot-oil", does("Deep-fry until golden."), does("Oil the tin.")),
    ("hot-oil", does("Heat the oil to 170 C."), does("Warm the oil to 40 C.")),
    (
        "raw-flour",
        of("100 g plain flour", "plain flour", "Roll in balls.", baked=False),
        of("plain flour, for dusting", "plain flour", "Roll out the paste.", baked=False),
    ),
    (
        "raw-flour",
        of("100 g plain flour", "plain flour", "Stir in {0}.", baked=False),
        of("100 g plain flour", "plain flour", "Stir in {0} and cook for 2 minutes.", baked=False),
    ),
    ("alcohol", of("40 g brandy", "brandy"), of("1 tsp vanilla extract", "vanilla extract")),
    (
        "warm-spirit",
        Part({"40 g brandy": "brandy"}, ("Warm the {0} until it steams.",), grams=40),
        Part({"40 g brandy": "brandy"}, ("Warm the milk.", "Stir in {0}."), grams=40),
    ),
    (
        "warm-spirit",
        Part({"40 g dark rum": "rum"}, ("Heat the {0} in a small pan.",), grams=40),
        Part({"1 tsp dark rum": "rum"}, ("Warm the sauce and stir in {0}.",), grams=5),
    ),
    ("moving-mixer", does("Knead with the dough hook."), does("Knead by hand.")),
    (
        "moving-mixer",
        does("At 118 C pour it down the side, whisk running."),
        does("Whisk to soft peaks."),
    ),
    (
        "keep-cold",
        Part(CREAM, ("Whip {0}.",)),
        Part(CREAM | SUGAR, ("Boil to 170 C, then stir in {0}.",)),
    ),
    ("keep-cold", Part(YOLKS, ("Boil.", "Chill.")), Part(EGGS, ("Beat.", OVEN + "Bake."))),
    (
        "egg-custard",
        Part(YOLKS, ("Pour in the custard {0}.", OVEN + "Bake.")),
        Part(YOLKS, ("Cook the custard {0}.",)),
    ),
    (
        "egg-custard",
        Part(EGGS, ("Beat {0}.", OVEN + "Bake."), title="Baked cheesecake"),
        Part(EGGS, ("Beat {0}.", OVEN + "Bake."), title="Sponge"),
    ),
    (
        "egg-custard",
        Part(YOLKS | CREAM, ("Pour {1} on to {0}.", OVEN + "Bake."), title="Crusted cream"),
        Part(EGGS | CREAM | {"flour": "plain flour"}, ("Beat all.", OVEN + "Bake."), title="Cream cake"),
    ),
    ("stones", of("300 g cherries", "cherries"), of("400 g plums, halved and stoned", "plums")),
    ("flowers", of("1 tsp dried lavender", "dried lavender"), of("a sprig of thyme", "thyme")),
    ("flowers", does("Scatter petals on top."), does("Pipe a rose.")),
    ("not-food", does("Dust with edible glitter."), does("Test with a cocktail stick.")),
    ("steam", does(OVEN + "Bake in a water bath."), does("Melt over a bain-marie of steaming water.")),
    ("steam", does("Pour boiling water into the tray."), does("Boil the water.")),
    ("blades", does("Slice on a mandoline."), does("Slice thinly.")),
    ("blades", does("Whizz in a food processor."), does("Whisk.")),
    (
        "flour-dust",
        Part({"flour": "plain flour"}, ("Sift.",), baked=True, grams=5000),
        Part({"flour": "plain flour"}, ("Sift.",), baked=True, grams=600),
    ),
    ("tonka", Part({"1 tonka bean, grated": ""}, ("Stir in.",)), of("1 vanilla pod", "vanilla pod")),
    (
        "nutmeg",
        Part({"nutmeg": "ground nutmeg"}, ("Stir in.",), portion="1.5"),
        Part({"nutmeg": "ground nutmeg"}, ("Stir in.",), portion="0.2"),
    ),
    (
        "cassia",
        Part({"ground cinnamon": "ground cinnamon"}, ("Stir in.",), portion="1.2"),
        Part({"ground cinnamon": "ground cinnamon"}, ("Stir in.",), portion="0.3"),
    ),
    (
        "poppy-seed",
        Part({"poppy seeds": "poppy seeds"}, ("Stir in.",), portion="15"),
        Part({"poppy seeds": "poppy seeds"}, ("Scatter.",), portion="1"),
    ),
    ("liquorice", Part({"5 g liquorice powder": ""}, ("Stir in.",)), of("5 g aniseed", "aniseed")),
    (
        "caffeine",
        Part({"instant coffee": "instant coffee"}, ("Stir in.",), portion="1.5"),
        Part({"instant coffee": "instant coffee"}, ("Stir in.",), portion="0.3"),
    ),
    (
        "microwave",
        Part(SUGAR, ("Heat {0} in the microwave.",)),
        Part({"100 g dark chocolate": "dark chocolate"}, ("Melt {0} in the microwave.",)),
    ),
    (
        "raw-milk-cheese",
        Part({"100 g unpasteurised soft cheese": ""}, ("Spread.",)),
        Part({"100 g cream cheese": "cream cheese"}, ("Spread.",)),
    ),
]


@pytest.mark.parametrize(
    ("key", "calls", "near"), ROWS, ids=lambda value: value if isinstance(value, str) else ""
)
def test_a_caution_is_called_for_and_kept_back(key: str, calls: Part, near: Part) -> None:
    assert key in called(calls)
    assert key not in called(near)


def test_every_row_of_the_table_is_tried() -> None:
    assert {key for key, _, _ in ROWS} == {row.key for row in TABLES.cautions}


WHOLE_PARTS: list[tuple[str, Part, set[str]]] = [
    # All that is said of a part, to the last word.
    (
        "a plain sponge",
        Part(EGGS | {"180 g plain flour": "plain flour"}, ("Whisk {0}, fold in {1}.", OVEN + "Bake.")),
        set(),
    ),
    (
        "Italian meringue",
        Part(WHITES | SUGAR, ("Boil {1} to 118 C, then pour the syrup on {0} with the whisk running.",)),
        {"hot-sugar", "raw-egg", "moving-mixer"},
    ),
    (
        "caramel sauce is hot and spits but is no cold cream",
        Part(SUGAR | CREAM, ("Boil {0} to an amber caramel at 175 C, then stir in {1} off the heat.",)),
        {"hot-sugar", "spitting-caramel"},
    ),
    (
        "pastry cream that boils",
        Part(YOLKS, ("Let {0} boil for 1 minute.", "Cover and chill.")),
        {"keep-cold"},
    ),
    ("curd brought to 80 C", Part(EGGS, ("Stir {0} until it reads 80 C.", "Chill.")), {"keep-cold"}),
    (
        "a mousse of raw egg",
        Part(WHITES | CREAM, ("Whisk {0} and fold in {1}.", "Chill.")),
        {"raw-egg", "keep-cold"},
    ),
    (
        "a baked custard tart",
        Part(CREAM | YOLKS, ("Pour in the custard of {0} and {1}.", OVEN + "Bake.")),
        {"keep-cold", "egg-custard"},
    ),
    (
        "a pavlova, whose cream never meets the oven",
        Part(
            WHITES | SUGAR | CREAM,
            ("Whisk {0} with {1}.", OVEN + "Bake until crisp.", "Whip {2} and pile it on."),
        ),
        {"keep-cold"},
    ),
    (
        "burnt cream",
        Part(YOLKS | CREAM, ("Heat {1} and whisk it into {0}.", OVEN + "Bake until it trembles.")),
        {"keep-cold", "egg-custard"},
    ),
    ("doughnuts", Part(EGGS, ("Mix {0}.", "Fry in hot oil at 170 C.")), {"hot-oil"}),
    ("pancakes", Part(EGGS, ("Beat {0}.", "Fry on both sides.")), set()),
    ("a steamed pudding", Part(EGGS, ("Beat {0}.", "Steam for 2 hours.")), {"steam"}),
    (
        "tarte tatin",
        Part(
            SUGAR | {"60 g butter": "unsalted butter"},
            ("Caramelise {0}, then add {1}.", OVEN + "Bake."),
        ),
        {"hot-sugar", "spitting-caramel"},
    ),
    ("a brioche crust", Part({"milk": "whole milk"}, (OVEN + "Bake until the crust is amber.",)), set()),
]


@pytest.mark.parametrize(("what", "part", "keys"), WHOLE_PARTS, ids=[row[0] for row in WHOLE_PARTS])
def test_all_that_a_part_calls_for(what: str, part: Part, keys: set[str]) -> None:
    assert called(part) == keys, what


def test_buns_dipped_in_caramel_are_dipped_in_hot_sugar() -> None:
    buns = Part({"all of Caramel": ""}, ("Dip each bun into {0}.",), title="Buns").facts()
    facts = with_passed_on(TABLES.cautions, [CARAMEL.facts(), buns])
    assert {row.key for row in cautions_for(TABLES.cautions, facts[1:])} == {"hot-sugar"}


def test_cream_poured_into_a_hot_caramel_of_another_part_spits() -> None:
    sauce = Part(CREAM | {"all of Caramel": ""}, ("Pour {0} on to {1} and stir.",), title="Sauce")
    assert "spitting-caramel" in called(CARAMEL, sauce)


def test_syrup_of_another_part_leaves_the_whites_lightly_cooked() -> None:
    syrup = Part(SUGAR, ("Boil {0} to 118 C.",), title="Syrup")
    whites = Part(
        WHITES | {"all of Syrup": ""}, ("Pour {1} on to {0} with the mixer running.",), title="Meringue"
    )
    assert {"raw-egg", "hot-sugar", "moving-mixer"} <= called(syrup, whites)


def test_a_caramel_that_cooled_is_hot_for_nobody() -> None:
    cooled = Part(SUGAR, ("Boil {0} to 168 C.", "Leave to cool."), title="Caramel").facts()
    buns = Part({"all of Caramel": ""}, ("Pour {0} over.",), title="Buns").facts()
    facts = with_passed_on(TABLES.cautions, [cooled, buns])
    assert cautions_for(TABLES.cautions, facts[1:]) == ()


def test_red_stands_before_amber() -> None:
    rows = cautions_for(TABLES.cautions, [Part({"b": "brandy", "h": "honey"}, ()).facts()])
    assert [row.level for row in rows] == ["red", "amber"]


def test_every_role_that_a_caution_asks_for_is_borne_by_an_ingredient_or_passed_on() -> None:
    borne = {role for row in TABLES.larder.ingredients for role in row.roles}
    passed = {row.passes_on.role for row in TABLES.cautions if row.passes_on}
    asked = {
        role
        for row in TABLES.cautions
        for trigger in row.triggers
        for role in trigger.roles | trigger.with_roles | trigger.unless_roles
    }
    assert asked <= borne | passed


def test_no_source_on_a_sheet_takes_more_than_a_few_words() -> None:
    assert [row.key for row in TABLES.cautions if len(TABLES.source_in_short(row.source)) > 30] == []
