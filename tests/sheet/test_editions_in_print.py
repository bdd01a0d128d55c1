"""What each edition prints for one amount, and the small print on its measures."""

import pytest

from sitegen.kitchen.amounts import Amount
from sitegen.kitchen.recipe import Component
from sitegen.sheet.amounts import NO_BREAK
from sitegen.sheet.asks import Ask, Measured
from sitegen.sheet.build import build_sheet
from sitegen.sheet.lines import printed_lines
from sitegen.sheet.measure_words import measure_note, small_scale_note
from sitegen.sheet.measured import measured
from sitegen.sheet.values import SheetLine
from sitegen.sheet.weights import about_text
from tests.sheet.pantry import Fraction, amount, choice, line, part, recipe, says, setting, tables, takes


def printed(how_much: Amount, name: str, edition: str, times: str | int = 1, size: str = "") -> Measured:
    one = choice(name, size)
    return measured(Ask(how_much, one, tables().larder.find(name), Fraction(times)), setting(edition))


def texts(figures: Measured) -> tuple[str, str]:
    return figures.amount.replace("\u00a0", " "), figures.beside.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("how_much", "name", "times", "first", "beside"),
    [
        (amount(150), "plain flour", 1, "1 cup", "150 g"),  # scooped: GNU units' 141.7 g to the US cup
        (amount(250, "ml"), "whole milk", 1, "1 cup", "260 g"),
        (amount(1, "tbsp"), "whole milk", 1, "3 tsp", "15.5 g"),  # 15 ml of a British baker
        (amount(2, "tbsp"), "whole milk", 2, "3 tbsp", "62 g"),
        (amount(125), "unsalted butter", 1, "125 g", ""),  # never by the stick, and no ounces beside
        (amount(100), "dark chocolate", 1, "100 g", ""),
        (amount("1/2", "tsp"), "fine salt", 1, "½ tsp", "3.05 g"),
    ],
)
def test_australian_cups(how_much: Amount, name: str, times: str | int, first: str, beside: str) -> None:
    assert texts(printed(how_much, name, "australian", times)) == (first, beside)


@pytest.mark.parametrize(
    ("how_much", "name", "times", "first", "beside"),
    [
        (amount(165), "plain flour", 1, "5¾ oz", "165 g"),
        (amount(500), "plain flour", 1, "1 lb 1¾ oz", "500 g"),
        (amount(454), "plain flour", 2, "2 lb", "910 g"),
        (amount(250, "ml"), "whole milk", 1, "9 oz", "260 g"),  # liquids by weight too
        (amount(40), "caster sugar", 1, "40 g", ""),  # 1½ oz would be 6 % more
        (amount(95), "unsalted butter", 1, "95 g", ""),  # 3¼ oz would be 3 % less
        (amount(9), "fine salt", 1, "1½ tsp", "9 g"),  # under half an ounce: a spoon
        (amount(5), "instant yeast", "3/5", "3 g", ""),
        (amount(1, "tsp"), "baking powder", 1, "1 tsp", "4.7 g"),
        (amount(10), "unsalted butter", 1, "10 g", ""),  # no spoon is filled with cold butter
        (amount(200, "g", 227), "plain flour", 1, "7–8 oz", "200–227 g"),
    ],
)
def test_american_weights(how_much: Amount, name: str, times: str | int, first: str, beside: str) -> None:
    assert texts(printed(how_much, name, "us-weights", times)) == (first, beside)


@pytest.mark.parametrize(
    ("how_much", "name", "edition", "first"),
    [
        (
            amount(10, "g", 12),
            "fine salt",
            "us-cups",
            "10–12 g",
        ),  # 1½ tsp + ... to 2 tsp: the weight reads better
        (amount(1, "tsp", 2), "ground cinnamon", "us-cups", "1–2 tsp"),
        (amount(2, "tsp", 3), "ground cinnamon", "us-cups", "2 tsp to 1 tbsp"),
        (amount(2, "tsp", 3), "ground cinnamon", "australian", "2–3 tsp"),
        (amount(125, "g", 250), "plain flour", "us-cups", "1–2 cups"),
        (amount(100, "g", 115), "caster sugar", "us-cups", "100–115 g"),  # ½ cup to ½ cup + 1 tbsp
        (amount(200, "g", 227), "unsalted butter", "us-cups", "200–227 g"),
        (amount(1, "", 2), "lemon", "us-cups", "1–2"),
    ],
)
def test_a_range_stays_a_range(how_much: Amount, name: str, edition: str, first: str) -> None:
    assert texts(printed(how_much, name, edition))[0] == first


@pytest.mark.parametrize(
    ("how_much", "name", "first", "beside"),
    [
        (amount(1, "pinch"), "fine salt", "a pinch of", ""),
        (amount("1/4"), "fine salt", "a small pinch of", ""),
        (amount("1/8"), "fine salt", "a few grains of", ""),
        (amount("3/4"), "fine salt", "⅛ tsp", "0.75 g"),
        (amount("0.7"), "fine salt", "scant ⅛ tsp", "0.7 g"),
        (amount(250), "plain flour", "2 cups", "250 g"),
        (amount(63), "plain flour", "½ cup", "63 g"),
        (amount(170), "unsalted butter", "1½ sticks", "170 g"),
        (amount(200), "unsalted butter", "1¾ sticks", "200 g"),
        (amount(57), "unsalted butter", "½ stick", "57 g"),
        (amount(110), "unsalted butter", "scant 1 stick", "110 g"),
        (amount(95), "unsalted butter", "generous 6½ tbsp", "95 g"),
        (amount(210), "soft light brown sugar", "1 cup less 1 tbsp", "210 g"),  # packed,
    ],
)
def test_amounts_are_set_as_print_sets_them(how_much: Amount, name: str, first: str, beside: str) -> None:
    assert texts(printed(how_much, name, "us-cups")) == (first, beside)


@pytest.mark.parametrize(
    ("edition", "said"),
    [
        ("us-cups", ("1 cup is 237 ml, 1 tbsp 15 ml, 1 tsp 5 ml; all are level", "Spoon dry ingredients")),
        ("australian", ("1 cup is 250 ml, 1 tbsp 20 ml, 1 tsp 5 ml; all are level", "Dip the cup")),
        ("us-weights", ("Ounces are by weight, for liquids too", "set the scale to grams", "1 tbsp 15 ml")),
    ],
)
def test_the_note_tells_how_the_measures_are_filled(edition: str, said: tuple[str, ...]) -> None:
    note = measure_note(setting(edition)).replace("\u00a0", " ")
    assert [words for words in said if words not in note] == []


def test_a_weight_below_five_grams_asks_for_a_small_scale() -> None:
    """Only where it stands alone: beside a spoon nobody need weigh it."""
    lines = [SheetLine(amount=f"2.15{NO_BREAK}g", name="salt")]
    assert "small scale" in small_scale_note(lines)
    assert small_scale_note([SheetLine(amount="½ tsp", name="salt", beside=f"2.5{NO_BREAK}g")]) == ""
    assert small_scale_note([SheetLine(amount=f"12.5{NO_BREAK}g", name="cocoa")]) == ""


def test_grams_need_no_note() -> None:
    assert measure_note(setting("british-metric")) == ""


@pytest.mark.parametrize(
    ("edition", "text"),
    [("us-weights", "about 1 lb 8 oz"), ("us-cups", "about 680 g"), ("british-metric", "about 680 g")],
)
def test_what_a_component_weighs_is_said_in_the_editions_unit(edition: str, text: str) -> None:
    assert about_text(Fraction(682), tables().editions[edition]).replace("\u00a0", " ") == text


def test_flour_is_set_finer_before_an_egg_is_split() -> None:
    """3 Australian eggs are 2 % more than 3 British ones: 3.75 % of the 80 g of flour in a brownie."""
    brownie = Component(
        "Brownie",
        (
            line(3, "", "egg", "medium"),
            line(80, "g", "plain flour"),
            line(210, "g", "soft light brown sugar"),
        ),
        (says("Stir."),),
    )
    eggs, flour, _ = printed_lines(brownie, Fraction(1), (None, None, None), setting("australian")).lines
    assert (eggs.amount, eggs.extra) == ("3\u00a0extra-large", "")
    assert flour.amount == "80\u00a0g"


def test_a_part_and_what_a_step_takes_of_it_are_weighed_in_the_editions_unit() -> None:
    batter = Component(
        "Batter", (line(200, "g", "plain flour"), line(200, "g", "caster sugar")), (says("Stir."),)
    )
    half = Component("Half", (part("Batter", "1/2"),), (says("Spread ", takes(0, share="1/2"), "."),))
    other = Component("Other half", (part("Batter", "1/2"),), (says("Spread ", takes(0), "."),))
    editions = tables().editions
    sheet = build_sheet(
        recipe(batter, half, other), {}, tables(), editions["us-weights"], editions["british-metric"]
    )
    assert sheet.components[1].lines[0].amount == "7\u00a0oz"
    assert sheet.components[1].steps[0].uses[0].amount == "3½\u00a0oz"


def test_ounces_beside_a_range_are_two_or_none() -> None:
    """Of 20 to 24 g the upper end comes near no quarter of an ounce."""
    assert texts(printed(amount(20, "g", 24), "fine salt", "us-cups")) == ("20–24 g", "")


@pytest.mark.parametrize(
    ("unit", "name", "edition", "first", "called"),
    [
        ("leaf", "leaf gelatine", "british-metric", "3 leaves", "gelatine"),
        ("", "leaf gelatine", "british-metric", "3 leaves", "gelatine"),
        ("leaf", "gelatine", "us-cups", "3 sheets", "gelatin"),
        ("", "gelatine", "australian", "3 leaves", "gelatine"),
        ("leaf", "filo pastry", "british-metric", "3 sheets", "filo pastry"),
        ("leaf", "filo pastry", "us-cups", "3 sheets", "phyllo dough"),
    ],
)
def test_leaves_and_sheets_are_counted_in_the_regions_word(
    unit: str, name: str, edition: str, first: str, called: str
) -> None:
    leaves = line(3, unit, name)
    found = printed_lines(Component("Jelly", (leaves,), ()), Fraction(1), [None], setting(edition)).lines[0]
    assert (found.amount.replace("\u00a0", " "), found.name) == (first, called)
