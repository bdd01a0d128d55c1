"""Ingredient lines."""

from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import NOWHERE, Amount, Span, single
from sitegen.kitchen.recipe import IngredientLine, PartLine
from sitegen.source.context import Context
from sitegen.source.lines import read_line
from sitegen.source.misread import Misread

HALF = Fraction(1, 2)


def ingredient(text: str, context: Context) -> IngredientLine:
    line = read_line(text, NOWHERE, context)
    assert isinstance(line, IngredientLine)
    return line


def part(text: str, context: Context) -> PartLine:
    line = read_line(text, NOWHERE, context)
    assert isinstance(line, PartLine)
    return line


def misread(text: str, context: Context) -> tuple[str, str, str]:
    """The code, the letters marked, and the way out."""
    with pytest.raises(Misread) as fault:
        read_line(text, NOWHERE, context)
    problem = fault.value
    return problem.code.code, text[problem.start : problem.end], problem.way_out


@pytest.mark.parametrize(
    ("text", "amount", "name", "key"),
    [
        ("150 g plain flour", Amount(single(150), "g"), "plain flour", "plain flour"),
        ("150g plain flour", Amount(single(150), "g"), "plain flour", "plain flour"),
        ("150  g   plain  flour", Amount(single(150), "g"), "plain flour", "plain flour"),
        ("150 grams of plain flour", Amount(single(150), "g"), "plain flour", "plain flour"),
        ("150 g castor sugar", Amount(single(150), "g"), "castor sugar", "caster sugar"),
        ("1.5 kg plain flour", Amount(single(Fraction(3, 2)), "kg"), "plain flour", "plain flour"),
        ("1 1/2 tbsp honey", Amount(single(Fraction(3, 2)), "tbsp"), "honey", "honey"),
        ("½ tsp fine salt", Amount(single(HALF), "tsp"), "fine salt", "fine salt"),
        ("half a teaspoon of fine salt", Amount(single(HALF), "tsp"), "fine salt", "fine salt"),
        ("3/4 of a tsp of fine salt", Amount(single(Fraction(3, 4)), "tsp"), "fine salt", "fine salt"),
        ("10-12 g fine salt", Amount(Span(Fraction(10), Fraction(12)), "g"), "fine salt", "fine salt"),
        ("2 fl oz whole milk", Amount(single(2), "floz"), "whole milk", "whole milk"),
        ("a pinch of fine salt", Amount(single(1), "pinch"), "fine salt", "fine salt"),
        ("pinch of fine salt", Amount(single(1), "pinch"), "fine salt", "fine salt"),
        ("2 pinches of fine salt", Amount(single(2), "pinch"), "fine salt", "fine salt"),
        ("2 tsp cream of tartar", Amount(single(2), "tsp"), "cream of tartar", "cream of tartar"),
        ("3 bay leaves", Amount(single(3), ""), "bay leaves", "bay leaf"),
        ("two eggs", Amount(single(2), ""), "eggs", "egg"),
        ("half a lemon", Amount(single(HALF), ""), "lemon", "lemon"),
        ("half of a lemon", Amount(single(HALF), ""), "lemon", "lemon"),
        ("4 leaves gelatine", Amount(single(4), "leaf"), "gelatine", "leaf gelatine"),
    ],
)
def test_amount_and_name(text: str, amount: Amount, name: str, key: str, context: Context) -> None:
    line = ingredient(text, context)
    assert (line.amount, line.chosen.name, line.chosen.ingredient) == (amount, name, key)


@pytest.mark.parametrize(
    ("text", "size"),
    [
        ("2 medium eggs", "medium"),
        ("1 extra-large egg", "extra large"),
        ("2 eggs", ""),
        ("1 small lemon", "small"),
    ],
)
def test_the_size_stands_apart_from_the_name(text: str, size: str, context: Context) -> None:
    assert ingredient(text, context).chosen.size == size


@pytest.mark.parametrize(
    ("text", "taken"),
    [
        ("1 lemon, zest only", "zest"),
        ("1 lemon (zest only)", "zest"),
        ("1 lemon, finely grated zest", "zest"),
        ("zest of 1 lemon", "zest"),
        ("zest of a lemon", "zest"),
        ("juice of half a lemon", "juice"),
        ("1 lemon, juiced", "juice"),
        ("3 eggs, yolks only", "yolk"),
        ("whites of 3 eggs", "white"),
        ("1 lemon, zest and juice", ""),
        ("3 egg whites", ""),
    ],
)
def test_what_is_taken_of_a_counted_thing(text: str, taken: str, context: Context) -> None:
    assert ingredient(text, context).chosen.part == taken


def test_no_word_before_the_zest_is_dropped(context: Context) -> None:
    assert ingredient("finely grated zest of 1 orange", context).preparation == "finely grated zest"


@pytest.mark.parametrize(
    ("text", "preparation", "note", "optional"),
    [
        ("150 g plain flour, sifted", "sifted", "", False),
        ("35 g unsalted butter, cold and cubed", "cold and cubed", "", False),
        ("40 g butter (soft), for the tin", "for the tin", "soft", False),
        ("20 g flaked almonds, optional", "", "", True),
        ("20 g flaked almonds (optional)", "", "", True),
        ("20 g flaked almonds, toasted, optional", "toasted", "", True),
        ("40 g butter for the tin", "for the tin", "", False),
    ],
)
def test_what_stands_behind_the_name(
    text: str, preparation: str, note: str, optional: bool, context: Context
) -> None:
    line = ingredient(text, context)
    assert (line.preparation, line.note, line.optional) == (preparation, note, optional)


@pytest.mark.parametrize("text", ["plain flour, for dusting", "plain flour for dusting"])
def test_flour_for_dusting_needs_no_amount(text: str, context: Context) -> None:
    line = ingredient(text, context)
    assert (line.amount, line.preparation) == (None, "for dusting")


def test_an_alternative_shares_the_amount(context: Context) -> None:
    line = ingredient("100 g sunflower oil or rapeseed oil", context)
    assert [(choice.name, choice.amount) for choice in line.choices] == [
        ("sunflower oil", None),
        ("rapeseed oil", None),
    ]


@pytest.mark.parametrize("join", [" or ", ", or "])
def test_an_alternative_may_state_its_own_amount(join: str, context: Context) -> None:
    line = ingredient(f"15 g fresh yeast{join}5 g instant yeast, crumbled", context)
    assert [(choice.name, choice.amount) for choice in line.choices] == [
        ("fresh yeast", None),
        ("instant yeast", Amount(single(5), "g")),
    ]
    assert line.preparation == "crumbled"


def test_or_before_no_ingredient_is_a_preparation(context: Context) -> None:
    line = ingredient("170 g blackcurrants, fresh or frozen", context)
    assert (len(line.choices), line.preparation) == (1, "fresh or frozen")
    assert ingredient("1 lemon, or more to taste", context).preparation == "or more to taste"


@pytest.mark.parametrize(
    ("text", "share"),
    [
        ("half of Vanilla batter", HALF),
        ("half the Vanilla batter", HALF),
        ("1/3 of Vanilla batter", Fraction(1, 3)),
        ("¾ of vanilla batter", Fraction(3, 4)),
        ("two-thirds of Vanilla batter", Fraction(2, 3)),
        ("all of Vanilla batter", Fraction(1)),
    ],
)
def test_a_share_of_a_component(text: str, share: Fraction, context: Context) -> None:
    line = part(text, context)
    assert (line.source, line.share, line.amount, line.from_base) == ("Vanilla batter", share, None, False)


def test_a_weight_of_a_base_recipe(context: Context) -> None:
    line = part("500 g of Base buttercream, soft", context)
    assert (line.source, line.share, line.from_base) == ("Base buttercream", None, True)
    assert (line.amount, line.preparation) == (Amount(single(500), "g"), "soft")


@pytest.mark.parametrize("text", ["the rest of Vanilla batter", "the remaining Vanilla batter"])
def test_the_rest_has_neither_share_nor_amount_until_it_is_settled(text: str, context: Context) -> None:
    line = part(text, context)
    assert (line.share, line.amount) == (None, None)


@pytest.mark.parametrize(
    ("text", "code", "marked"),
    [
        ("150 g castor sugarr", "unknown-ingredient", "castor sugarr"),
        ("15 g fresh yeast or 5 g instand yeast", "unknown-ingredient", "instand yeast"),
        ("140 grm plain flour", "unknown-unit", "grm"),
        ("2 cm fresh ginger", "unknown-unit", "cm"),
        ("half an inch of fresh ginger", "unknown-unit", "inch"),
        ("150 g", "no-name", "150 g"),
        (", sifted", "no-name", ", sifted"),
        ("plain flour", "no-amount", "plain flour"),
        ("tsp fine salt", "no-amount", "tsp "),
        ("about 150 g plain flour", "no-amount", "about"),
        ("0 g plain flour", "not-a-number", "0"),
        ("-5 g plain flour", "not-a-number", "-5"),
        ("zest of 0 lemons", "not-a-number", "0"),
        ("12-10 g fine salt", "backwards-range", "12-10"),
        ("1,5 kg plain flour", "comma-decimal", "1,5"),
        ("150 g plain flour (sifted", "open-bracket", "("),
        ("150 g plain flour sifted)", "open-bracket", ")"),
        ("half of Vanila batter", "unknown-part", "Vanila batter"),
        ("500 g of Base butercream", "unknown-part", "Base butercream"),
        ("3 tbsp of Base buttercream", "part-needs-weight", "3 tbsp of Base buttercream"),
        ("3/2 of Vanilla batter", "part-needs-weight", "3/2 of Vanilla batter"),
        ("Vanilla batter", "part-needs-weight", "Vanilla batter"),
        ("150 g plain flour, plus 20 g for the table", "second-amount", "20 g"),
        ("1 egg, plus 1 yolk", "second-amount", ", plus 1 yolk"),
        ("100 g butter, in 2 cm cubes", "second-amount", "2 cm"),
        ("100 g butter (4 oz)", "second-amount", "4 oz"),
        ("200 g/7 oz plain flour", "second-amount", "200 g/7 oz plain flour"),
        ("2 x 7 g instant yeast", "second-amount", "2 x 7 g instant yeast"),
        ("1 cup plus 2 tbsp plain flour", "second-amount", "1 cup plus 2 tbsp plain flour"),
    ],
)
def test_the_word_at_fault_is_marked(text: str, code: str, marked: str, context: Context) -> None:
    assert misread(text, context)[:2] == (code, marked)


@pytest.mark.parametrize(
    ("text", "way_out"),
    [
        ("150 g castor sugarr", "did you mean 'castor sugar'?"),
        ("150 g soft butter", "write the adjective after a comma: 'butter, soft'"),
        ("150 g plain flour and 2 g fine salt", "write each on a line of its own, with its own amount"),
        (
            "150 g xyzzy",
            "declare it with what you know of it: in content/larder.yaml, or under `larder` in this file",
        ),
        ("half of Vanila batter", "did you mean 'Vanilla batter'?"),
        ("500 g Base buttercream", "write `500 g of Base buttercream`"),
        ("plain flour", "write an amount, or what it is for: 'plain flour, for dusting'"),
        ("tsp fine salt", "write how many: '1 tsp fine salt'"),
        ("about 150 g plain flour", "begin with the amount: '150 g plain flour'"),
    ],
)
def test_the_way_out_is_what_was_probably_meant(text: str, way_out: str, context: Context) -> None:
    assert misread(text, context)[2] == way_out
