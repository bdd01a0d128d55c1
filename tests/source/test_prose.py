"""References in braces, and what may not stand bare in prose."""

from collections.abc import Sequence
from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import NOWHERE, Amount, Span, single
from sitegen.kitchen.method import OvenSetting, Reference, RefKind, Step, Words
from sitegen.kitchen.recipe import Component, Line
from sitegen.source.context import Context
from sitegen.source.lines import read_line
from sitegen.source.misread import Misread
from sitegen.source.prose import read_prose
from sitegen.source.settling import settled

HALF = Fraction(1, 2)
TEXTS = (
    "150 g plain flour",
    "2 medium eggs",
    "2 egg yolks",
    "160 g caster sugar",
    "100 g sunflower oil or rapeseed oil",
    "1 lemon, zest only",
    "half of Vanilla batter",
)


@pytest.fixture(scope="module")
def lines(context: Context) -> tuple[Line, ...]:
    return tuple(read_line(text, NOWHERE, context) for text in TEXTS)


def reference(text: str, lines: Sequence[Line], context: Context) -> Reference:
    prose = read_prose(f"Take {text} now.", NOWHERE, lines, context)
    assert (prose[0], prose[2]) == (Words("Take "), Words(" now."))
    assert isinstance(prose[1], Reference)
    return prose[1]


def misread(text: str, lines: Sequence[Line], context: Context) -> tuple[str, str, str]:
    with pytest.raises(Misread) as fault:
        read_prose(text, NOWHERE, lines, context)
    problem = fault.value
    return problem.code.code, text[problem.start : problem.end], problem.way_out


@pytest.mark.parametrize(
    ("name", "line"),
    [
        ("plain flour", "150 g plain flour"),
        ("flour", "150 g plain flour"),
        ("Plain Flour", "150 g plain flour"),
        ("eggs", "2 medium eggs"),
        ("egg", "2 medium eggs"),
        ("medium eggs", "2 medium eggs"),
        ("yolks", "2 egg yolks"),
        ("castor sugar", "160 g caster sugar"),
        ("sugar", "160 g caster sugar"),
        ("sunflower oil", "100 g sunflower oil or rapeseed oil"),
        ("lemon", "1 lemon, zest only"),
        ("lemon zest", "1 lemon, zest only"),
        ("zest of lemon", "1 lemon, zest only"),
    ],
)
def test_an_ingredient_is_named_in_whole_or_by_its_last_words(
    name: str, line: str, lines: Sequence[Line], context: Context
) -> None:
    found = reference(f"{{{name}}}", lines, context)
    assert (found.kind, found.line, found.short) == (RefKind.INGREDIENT, TEXTS.index(line), name)
    assert (found.share, found.amount) == (1, None)


@pytest.mark.parametrize(
    ("text", "share"),
    [
        ("half of caster sugar", HALF),
        ("half the caster sugar", HALF),
        ("1/3 of caster sugar", Fraction(1, 3)),
        ("all of caster sugar", Fraction(1)),
    ],
)
def test_a_share_of_an_ingredient(
    text: str, share: Fraction, lines: Sequence[Line], context: Context
) -> None:
    assert reference(f"{{{text}}}", lines, context).share == share


@pytest.mark.parametrize(
    ("text", "amount"),
    [
        ("50 g of caster sugar", Amount(single(50), "g")),
        ("50 g caster sugar", Amount(single(50), "g")),
        ("0.05 kg of caster sugar", Amount(single(50), "g")),
        ("1 tbsp of caster sugar", Amount(single(1), "tbsp")),
        ("1 of eggs", Amount(single(1), "")),
    ],
)
def test_a_measured_part_of_an_ingredient(
    text: str, amount: Amount, lines: Sequence[Line], context: Context
) -> None:
    assert reference(f"{{{text}}}", lines, context).amount == amount


def test_a_part_line_is_named_by_its_title(lines: Sequence[Line], context: Context) -> None:
    found = reference("{half of vanilla batter}", lines, context)
    assert (found.kind, found.target, found.line) == (RefKind.COMPONENT, "Vanilla batter", 6)
    assert found.share == HALF


def test_a_component_of_the_recipe_may_be_spoken_of(lines: Sequence[Line], context: Context) -> None:
    found = reference("{Bay sponge}", lines, context)
    assert (found.kind, found.target, found.line) == (RefKind.COMPONENT, "Bay sponge", None)


@pytest.mark.parametrize(
    ("text", "kind", "amount"),
    [
        ("118 C", RefKind.TEMPERATURE, Amount(single(118), "celsius")),
        ("118°C", RefKind.TEMPERATURE, Amount(single(118), "celsius")),
        ("112-115 C", RefKind.TEMPERATURE, Amount(Span(Fraction(112), Fraction(115)), "celsius")),
        ("245 F", RefKind.TEMPERATURE, Amount(single(245), "fahrenheit")),
        ("-18 C", RefKind.TEMPERATURE, Amount(single(-18), "celsius")),
        ("2 cm", RefKind.LENGTH, Amount(single(2), "cm")),
        ("2.5-3 cm", RefKind.LENGTH, Amount(Span(Fraction(5, 2), Fraction(3)), "cm")),
        ("3 mm", RefKind.LENGTH, Amount(single(3), "mm")),
        ("1 inch", RefKind.LENGTH, Amount(single(1), "in")),
    ],
)
def test_temperatures_and_lengths(
    text: str, kind: RefKind, amount: Amount, lines: Sequence[Line], context: Context
) -> None:
    found = reference(f"{{{text}}}", lines, context)
    assert (found.kind, found.amount) == (kind, amount)


@pytest.mark.parametrize(
    ("text", "oven"),
    [
        ("150 C fan", OvenSetting(Fraction(150), "celsius", fan=True)),
        ("170 C conventional", OvenSetting(Fraction(170), "celsius", fan=False)),
        ("350 F fan", OvenSetting(Fraction(350), "fahrenheit", fan=True)),
        ("gas 4", OvenSetting(Fraction(4), "gas", fan=False)),
    ],
)
def test_an_oven_says_which_oven(
    text: str, oven: OvenSetting, lines: Sequence[Line], context: Context
) -> None:
    found = reference(f"{{{text}}}", lines, context)
    assert (found.kind, found.oven) == (RefKind.OVEN, oven)


@pytest.mark.parametrize(
    ("text", "code", "marked"),
    [
        ("Whisk {eggs", "unpaired-brace", "{"),
        ("Whisk eggs}", "unpaired-brace", "}"),
        ("Whisk {eggs {flour}}", "unpaired-brace", "{"),
        ("Whisk { }", "unpaired-brace", "{ }"),
        ("Whisk { turnips }", "unlisted-ingredient", "turnips"),
        ("Add {half of turnips}", "unlisted-ingredient", "turnips"),
        ("Use {Base buttercream}", "unlisted-ingredient", "Base buttercream"),
        ("Use {half of Bay sponge}", "unlisted-ingredient", "Bay sponge"),
        ("Add {3/2 of caster sugar}", "no-such-share", "caster sugar"),
        ("Add {3 tbsp of Vanilla batter}", "no-such-share", "Vanilla batter"),
        ("Roll to {1,5 cm}", "comma-decimal", "1,5"),
        ("Roll to {5-2 cm}", "backwards-range", "5-2"),
        ("Bake at {900 C fan}", "oven", "900 C fan"),
    ],
)
def test_a_reference_at_fault_is_marked(
    text: str, code: str, marked: str, lines: Sequence[Line], context: Context
) -> None:
    assert misread(text, lines, context)[:2] == (code, marked)


def test_a_short_name_that_fits_two_lines_names_both(context: Context) -> None:
    lines = [read_line(text, NOWHERE, context) for text in ("30 g demerara sugar", "70 g icing sugar")]
    code, marked, way_out = misread("Dust with {sugar}", lines, context)
    assert (code, marked) == ("ambiguous-reference", "sugar")
    assert way_out == "say which: '30 g demerara sugar' or '70 g icing sugar'"


def test_a_near_name_is_offered(lines: Sequence[Line], context: Context) -> None:
    assert misread("Add {plain floor}", lines, context)[2] == "did you mean 'plain flour'?"


@pytest.mark.parametrize(
    ("text", "marked", "in_braces"),
    [
        ("Add 150 g of it", "150 g", "{150 g of ...}"),
        ("Add 150g of it", "150g", "{150 g of ...}"),
        ("Add 2 tsp sugar", "2 tsp", "{2 tsp of ...}"),
        ("Add ½ tsp sugar", "½ tsp", "{½ tsp of ...}"),
        ("Add 1½ tbsp sugar", "1½ tbsp", "{1½ tbsp of ...}"),
        ("Add 1/2 cup", "1/2 cup", "{1/2 cup of ...}"),
        ("Add 2-3 litres", "2-3 litres", "{2-3 litres of ...}"),
        ("Heat to 118 C.", "118 C", "{118 C}"),
        ("Heat to 118°C.", "118°C", "{118 C}"),
        ("Heat to 180 degrees.", "180 degrees", "{180 C}"),
        ("Bake at 150 C fan.", "150 C fan", "{150 C fan}"),
        ("Bake at gas mark 4.", "gas mark 4", "{gas mark 4}"),
        ("Dry them at gas 1/2.", "gas 1/2", "{gas 1/2}"),
        ("Freeze at -18 C", "-18 C", "{-18 C}"),
        ("Roll 2 cm thick", "2 cm", "{2 cm}"),
        ("Roll 1 in thick", "1 in", "{1 in}"),
        ("Roll to 3mm", "3mm", "{3 mm}"),
    ],
)
def test_an_amount_left_bare_is_marked_and_put_in_braces(
    text: str, marked: str, in_braces: str, lines: Sequence[Line], context: Context
) -> None:
    code, found, way_out = misread(text, lines, context)
    assert (code, found) == ("bare-amount", marked)
    assert way_out.startswith(f"write '{in_braces}'")


@pytest.mark.parametrize(
    "text",
    [
        "Knead for 2 minutes, rest 1 h.",
        "Fold in three additions, 2 or 3 turns each.",
        "Leave 4 in the tin of 12.",
        "Use a 12-hole tin and a vitamin C tablet.",
        "Beat on speed 2, then 3 for 40 seconds.",
        "See step 2. Good luck!",
    ],
)
def test_times_and_counts_of_moves_may_stand_bare(text: str, lines: Sequence[Line], context: Context) -> None:
    assert read_prose(text, NOWHERE, lines, context) == (Words(text),)


def component(title: str, texts: Sequence[str], steps: Sequence[str], context: Context) -> Component:
    lines = tuple(read_line(text, NOWHERE, context) for text in texts)
    return Component(title, lines, tuple(Step(read_prose(step, NOWHERE, lines, context)) for step in steps))


def shares(made: Component) -> list[Fraction]:
    return [one.share for step in made.steps for one in step.references]


def test_the_rest_is_what_earlier_steps_leave(context: Context) -> None:
    steps = ["Add {1/2 of caster sugar}.", "Add {1/3 of caster sugar}.", "Add {the rest of caster sugar}."]
    (made,) = settled([component("Curd", ["160 g caster sugar"], steps, context)])
    assert shares(made) == [HALF, Fraction(1, 3), Fraction(1, 6)]


def test_the_rest_counts_what_was_weighed_out(context: Context) -> None:
    steps = ["Add {0.04 kg of caster sugar}.", "Add {the rest of caster sugar}."]
    (made,) = settled([component("Curd", ["160 g caster sugar"], steps, context)])
    assert shares(made)[1] == Fraction(3, 4)


def test_naming_the_whole_again_takes_nothing(context: Context) -> None:
    steps = ["Sift {caster sugar}.", "Add {half of caster sugar}.", "Add {the rest of caster sugar}."]
    (made,) = settled([component("Curd", ["160 g caster sugar"], steps, context)])
    assert shares(made) == [1, HALF, HALF]


def test_the_rest_of_a_component_is_what_the_other_lines_leave(context: Context) -> None:
    first = component("Coffee", ["1/3 of Vanilla batter"], [], context)
    second = component("Orange", ["the rest of Vanilla batter"], [], context)
    lines = [line for made in settled([first, second]) for line in made.lines]
    assert [getattr(line, "share", None) for line in lines] == [Fraction(1, 3), Fraction(2, 3)]
