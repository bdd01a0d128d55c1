"""Ovens, fills and batches."""

from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import NOWHERE, Amount, single
from sitegen.kitchen.method import OvenSetting
from sitegen.kitchen.recipe import BatchAsk, BatchKind, Makes, PieceWeight
from sitegen.source.context import Context
from sitegen.source.misread import Misread
from sitegen.source.phrases import read_batch, read_fill, read_oven

CUPCAKES = Makes(Fraction(12), "cupcakes")
TARTS = Makes(Fraction(12), "tarts")
CREAM = Makes(Fraction(900), "", Fraction(900))
ROLLS = Makes(Fraction(12), "rolls", Fraction(1020), "dough")


@pytest.mark.parametrize(
    ("text", "setting"),
    [
        ("150 C fan", OvenSetting(Fraction(150), "celsius", fan=True)),
        ("150°C fan", OvenSetting(Fraction(150), "celsius", fan=True)),
        ("170 C conventional", OvenSetting(Fraction(170), "celsius", fan=False)),
        ("350 F", OvenSetting(Fraction(350), "fahrenheit", fan=False)),
        ("350 F fan", OvenSetting(Fraction(350), "fahrenheit", fan=True)),
        ("gas 4", OvenSetting(Fraction(4), "gas", fan=False)),
        ("gas mark 1/2", OvenSetting(Fraction(1, 2), "gas", fan=False)),
    ],
)
def test_an_oven_setting(text: str, setting: OvenSetting, context: Context) -> None:
    assert read_oven(text, NOWHERE, context) == setting


@pytest.mark.parametrize(
    ("text", "way_out"),
    [
        ("170 C", "say which oven: '170 C fan' or '170 C conventional'"),
        ("moderate", "write `150 C fan`, `170 C conventional`, `350 F` or `gas 4`"),
        ("900 C fan", "ovens go from 30 to 500 C: is the scale right?"),
        ("gas 12", "ovens go from 30 to 500 C: is the scale right?"),
    ],
)
def test_a_setting_that_says_too_little_or_too_much(text: str, way_out: str, context: Context) -> None:
    with pytest.raises(Misread) as fault:
        read_oven(text, NOWHERE, context)
    assert (fault.value.code.code, fault.value.way_out) == ("oven", way_out)


@pytest.mark.parametrize(
    ("text", "share"),
    [
        ("2/3", Fraction(2, 3)),
        ("⅔", Fraction(2, 3)),
        ("two-thirds", Fraction(2, 3)),
        ("0.5", Fraction(1, 2)),
        ("1", 1),
    ],
)
def test_a_fill_is_a_share_of_the_depth(text: str, share: Fraction) -> None:
    assert read_fill(text) == share


@pytest.mark.parametrize("text", ["3/2", "half full", "75%", "1/2-2/3", ""])
def test_more_than_full_or_no_share_is_a_fault(text: str) -> None:
    with pytest.raises(Misread) as fault:
        read_fill(text)
    assert fault.value.code.code == "fill"


@pytest.mark.parametrize(
    ("text", "ask"),
    [
        ("24 cupcakes", BatchAsk(BatchKind.MAKES, makes=Fraction(24))),
        ("1 cupcake", BatchAsk(BatchKind.MAKES, makes=Fraction(1))),
        ("half", BatchAsk(BatchKind.TIMES, times=Fraction(1, 2))),
        ("Double", BatchAsk(BatchKind.TIMES, times=Fraction(2))),
        ("times 3/2", BatchAsk(BatchKind.TIMES, times=Fraction(3, 2))),
    ],
)
def test_a_batch_by_count_or_factor(text: str, ask: BatchAsk, context: Context) -> None:
    assert read_batch(text, NOWHERE, context, CUPCAKES) == ask


@pytest.mark.parametrize(
    ("text", "weighed"),
    [
        ("24 rolls of 60 g", ""),
        ("24 rolls of 60 g dough", "dough"),
        ("24 rolls of 60 g baked", "baked"),
        ("24 roll of 60 g", ""),
    ],
)
def test_a_batch_by_pieces_of_another_weight(text: str, weighed: str, context: Context) -> None:
    ask = BatchAsk(BatchKind.MAKES, makes=Fraction(24), each=PieceWeight(Fraction(60), weighed))
    assert read_batch(text, NOWHERE, context, ROLLS) == ask


def test_a_batch_by_weight_of_a_recipe_that_makes_a_weight(context: Context) -> None:
    assert read_batch("1.2 kg", NOWHERE, context, CREAM) == BatchAsk(BatchKind.MAKES, makes=Fraction(1200))


@pytest.mark.parametrize(
    ("text", "shape"), [("23 cm round", "round"), ("900 g loaf", "loaf"), ("mini-muffin 24", "mini-muffin")]
)
def test_a_batch_by_tin(text: str, shape: str, context: Context) -> None:
    ask = read_batch(text, NOWHERE, context, CUPCAKES)
    assert ask.kind is BatchKind.TIN
    assert ask.tin is not None
    assert ask.tin.shape == shape


def test_a_batch_by_an_ingredient_in_hand(context: Context) -> None:
    ask = read_batch("using 200 g butter", NOWHERE, context, CUPCAKES)
    assert ask.kind is BatchKind.USING
    assert ask.using is not None
    assert (ask.using.amount, ask.using.chosen.ingredient) == (Amount(single(200), "g"), "unsalted butter")


def test_a_noun_of_the_recipe_wins_over_the_shape_of_a_tin(context: Context) -> None:
    assert read_batch("24 tart", NOWHERE, context, TARTS) == BatchAsk(BatchKind.MAKES, makes=Fraction(24))


def test_without_the_recipe_any_noun_will_do(context: Context) -> None:
    assert read_batch("24 buns", NOWHERE, context) == BatchAsk(BatchKind.MAKES, makes=Fraction(24))


@pytest.mark.parametrize(
    ("text", "makes", "way_out"),
    [
        ("24 cookies", CUPCAKES, "this recipe makes cupcakes: write '24 cupcakes'"),
        ("900 g", CUPCAKES, "this recipe makes cupcakes: write '24 cupcakes'"),
        ("24 cupcakes", CREAM, "this recipe makes a weight: write '500 g' or 'half'"),
        ("20 cm ruond", CUPCAKES, "did you mean 'round'?"),
        (
            "24 cupcakes of 60 g",
            CUPCAKES,
            "let the recipe say what one weighs: `makes: 12 cupcakes of 85 g dough`",
        ),
    ],
)
def test_a_batch_that_this_recipe_cannot_give(
    text: str, makes: Makes, way_out: str, context: Context
) -> None:
    with pytest.raises(Misread) as fault:
        read_batch(text, NOWHERE, context, makes)
    assert (fault.value.code.code, fault.value.way_out) == ("batch", way_out)


@pytest.mark.parametrize(
    ("text", "code", "marked"),
    [
        ("a heap", "batch", "a heap"),
        ("times", "batch", "times"),
        ("times 2-3", "batch", "times 2-3"),
        ("using half of Vanilla batter", "batch", "using half of Vanilla batter"),
        ("using butter, for dusting", "batch", "using butter, for dusting"),
        ("times 0", "not-a-number", "0"),
        ("0 cupcakes", "not-a-number", "0"),
        ("using 10 g xyzzy", "unknown-ingredient", "xyzzy"),
    ],
)
def test_a_batch_at_fault_is_marked(text: str, code: str, marked: str, context: Context) -> None:
    with pytest.raises(Misread) as fault:
        read_batch(text, NOWHERE, context, CUPCAKES)
    problem = fault.value
    assert (problem.code.code, text[problem.start : problem.end]) == (code, marked)
