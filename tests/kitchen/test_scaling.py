"""How much is made: by count, tin, times, or what is in hand."""

from dataclasses import replace
from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import Amount, single
from sitegen.kitchen.balances import BalanceTable, Kind
from sitegen.kitchen.recipe import (
    BatchAsk,
    BatchKind,
    Choice,
    Component,
    IngredientLine,
    Line,
    Makes,
    PartLine,
    PieceWeight,
    Recipe,
    Tin,
)
from sitegen.kitchen.scaling import Batch, CannotScale, WhyNot, batch_of
from sitegen.kitchen.scaling import tested_batch as as_written
from sitegen.kitchen.tables import Tables


def line(value: str, unit: str, name: str, ingredient: str = "", part: str = "") -> IngredientLine:
    choice = Choice(name, ingredient or name, part=part)
    return IngredientLine(f"{value} {unit} {name}", Amount(single(Fraction(value)), unit), (choice,))


def recipe(count: int, noun: str, *lines: Line, tin: Tin | None = None) -> Recipe:
    makes = Makes(Fraction(count), noun, None if noun else Fraction(count))
    return Recipe("it", "It", "", makes, (Component("All", lines, ()),), tin=tin)


def round_tin(width: int, depth: int = 5, number: int = 1) -> Tin:
    across = Fraction(width)
    return Tin("round", across, across, Fraction(depth), across, across, number=number)


def holes(width: str, base: str, depth: str, count: int) -> Tin:
    top, bottom = Fraction(width), Fraction(base)
    return Tin("muffin", top, top, Fraction(depth), bottom, bottom, holes=count)


MUFFIN_12, MINI_24 = holes("7", "5", "3.2", 12), holes("4.8", "3.6", "2", 24)
TRAY = Tin("tray", Fraction(30), Fraction(40), Fraction(1), Fraction(30), Fraction(40))


def batch(tables: Tables, ask: BatchAsk, of: Recipe, *bases: Recipe) -> Batch:
    return batch_of(ask, of, {base.title: base for base in bases}, tables, tables.editions["uk"])


def makes(count: str) -> BatchAsk:
    return BatchAsk(BatchKind.MAKES, makes=Fraction(count))


def times(factor: str) -> BatchAsk:
    return BatchAsk(BatchKind.TIMES, times=Fraction(factor))


def into(tin: Tin) -> BatchAsk:
    return BatchAsk(BatchKind.TIN, tin=tin)


def using(hand: IngredientLine) -> BatchAsk:
    return BatchAsk(BatchKind.USING, using=hand)


FLOUR, EGGS = line("150", "g", "plain flour"), line("2", "", "eggs", "egg")
CUPCAKES = recipe(12, "cupcakes", FLOUR, EGGS, tin=MUFFIN_12)


def test_the_tested_batch_is_the_recipe_as_written() -> None:
    assert as_written(CUPCAKES) == Batch(None, Fraction(1), Fraction(12), MUFFIN_12, Fraction(1))


def test_a_count_is_held_against_the_tested_one(tables: Tables) -> None:
    made = batch(tables, makes("18"), CUPCAKES)
    assert made.factor == Fraction(3, 2)
    assert made.makes == 18
    assert made.tin is None
    assert made.depth_ratio == 1


def test_a_weight_is_held_against_the_tested_one(tables: Tables) -> None:
    assert batch(tables, makes("600"), recipe(900, "")).factor == Fraction(2, 3)


def test_pieces_of_another_weight_take_dough_in_proportion(tables: Tables) -> None:
    rolls = recipe(12, "rolls", FLOUR)
    rolls = replace(rolls, makes=Makes(Fraction(12), "rolls", Fraction(1020), "dough"))
    made = batch(tables, BatchAsk(BatchKind.MAKES, makes=Fraction(24), each=PieceWeight(Fraction(60))), rolls)
    assert made.factor == Fraction(24 * 60, 12 * 85)
    assert made.makes == 24


def test_a_baked_piece_is_held_against_the_dough_that_it_takes(tables: Tables) -> None:
    """51 g baked are 60 g of dough where 15 % goes off."""
    dough = Component("All", (FLOUR,), (), kind="soft roll", bake_loss=Fraction(15, 100))
    rolls = Recipe("it", "It", "", Makes(Fraction(12), "rolls", Fraction(1020), "dough"), (dough,))
    with_kind = replace(tables, balances=BalanceTable(kinds=(Kind("soft roll", "dough", ()),)))
    ask = BatchAsk(BatchKind.MAKES, makes=Fraction(24), each=PieceWeight(Fraction(51), "baked"))
    assert batch(with_kind, ask, rolls).factor == Fraction(24 * 60, 12 * 85)
    with pytest.raises(CannotScale) as refused:
        batch(tables, ask, rolls)
    assert refused.value.reason is WhyNot.NO_BAKE_LOSS


def test_times_is_the_factor(tables: Tables) -> None:
    assert batch(tables, times("5/2"), CUPCAKES).makes == 30


def test_another_round_of_the_same_depth_goes_by_area(tables: Tables) -> None:
    made = batch(tables, into(round_tin(23)), recipe(1, "cake", tin=round_tin(18)))
    assert made.factor == Fraction(23, 18) ** 2
    assert made.depth_ratio == 1
    assert made.makes == 1


def test_a_tin_within_a_tenth_takes_the_recipe_as_it_is(tables: Tables) -> None:
    square = replace(round_tin(18), shape="square")
    made = batch(tables, into(square), recipe(1, "cake", tin=round_tin(20)))
    assert made.factor == Fraction(1)
    assert round(made.depth_ratio, 2) == Fraction(97, 100)  # 314 cm2 spread over 324


def test_mini_muffins_go_by_hole_and_number(tables: Tables) -> None:
    made = batch(tables, into(MINI_24), CUPCAKES)
    assert made.makes == 24
    assert float(made.factor) == pytest.approx(0.611, abs=0.001)
    assert made.depth_ratio == Fraction(2) / Fraction("3.2")


def test_a_cake_out_of_two_tins_stays_one_cake(tables: Tables) -> None:
    made = batch(tables, into(round_tin(23, number=2)), recipe(1, "layer cake", tin=round_tin(20, number=2)))
    assert made.makes == 1
    assert made.factor == Fraction(23, 20) ** 2


def test_portions_go_with_the_tin(tables: Tables) -> None:
    made = batch(tables, into(round_tin(20)), recipe(16, "slices", tin=round_tin(40)))
    assert made.factor == Fraction(1, 4)
    assert made.makes == 4


def test_of_portions_there_is_a_whole_number(tables: Tables) -> None:
    made = batch(tables, into(round_tin(23, number=2)), recipe(12, "slices", tin=round_tin(20, number=2)))
    assert made.factor == Fraction(23, 20) ** 2
    assert made.makes == 16


def test_several_loads_of_one_tin_stay_several_loads(tables: Tables) -> None:
    made = batch(tables, into(MINI_24), recipe(24, "cupcakes", tin=MUFFIN_12))
    assert made.makes == 48


def test_a_yield_by_weight_goes_by_the_tin(tables: Tables) -> None:
    made = batch(tables, into(round_tin(20)), recipe(1000, "", tin=round_tin(40)))
    assert made.makes == 250


def test_what_is_in_hand_is_held_against_all_of_it_in_the_recipe(tables: Tables) -> None:
    twice = recipe(12, "buns", line("100", "g", "plain flour"), line("50", "g", "plain flour"))
    assert batch(tables, using(line("300", "g", "plain flour")), twice).factor == 2


def test_eggs_in_hand_are_counted_by_weight(tables: Tables) -> None:
    assert batch(tables, using(line("3", "", "eggs", "egg")), CUPCAKES).factor == Fraction(3, 2)


def test_a_base_recipe_in_hand_is_used_up(tables: Tables) -> None:
    base = Recipe("b", "Base buttercream", "", Makes(Fraction(900), "", Fraction(900)), ())
    by_weight = PartLine("", "Base buttercream", None, Amount(single(400), "g"), from_base=True)
    by_share = PartLine("", "Base buttercream", Fraction(1, 3), None, from_base=True)
    left = line("350", "g", "Base buttercream")
    assert batch(tables, using(left), recipe(1, "cake", by_weight, by_share), base).factor == Fraction(1, 2)


@pytest.mark.parametrize(
    ("ask", "reason"),
    [
        (times("0"), WhyNot.NOT_ABOVE_ZERO),
        (makes("-6"), WhyNot.NOT_ABOVE_ZERO),
        (times("1001"), WhyNot.ABSURD),
        (times("1/1001"), WhyNot.ABSURD),
        (into(TRAY), WhyNot.NO_CAPACITY),
        (BatchAsk(BatchKind.TIN), WhyNot.NO_TIN),
        (BatchAsk(BatchKind.MAKES), WhyNot.NOTHING_ASKED),
        (BatchAsk(BatchKind.USING), WhyNot.NOTHING_ASKED),
        (
            BatchAsk(BatchKind.MAKES, makes=Fraction(24), each=PieceWeight(Fraction(60))),
            WhyNot.NO_PIECE_WEIGHT,
        ),
        (using(line("100", "g", "butter")), WhyNot.NOT_IN_RECIPE),
        (using(line("1", "", "egg yolk", "egg", part="yolk")), WhyNot.NOT_IN_RECIPE),
        (using(line("1", "handful", "plain flour")), WhyNot.NO_WEIGHT),
    ],
)
def test_a_batch_that_the_recipe_cannot_give(tables: Tables, ask: BatchAsk, reason: WhyNot) -> None:
    with pytest.raises(CannotScale) as refused:
        batch(tables, ask, CUPCAKES)
    assert refused.value.reason is reason


def test_a_tin_needs_a_tested_tin(tables: Tables) -> None:
    with pytest.raises(CannotScale) as refused:
        batch(tables, into(MINI_24), recipe(12, "cookies"))
    assert refused.value.reason is WhyNot.NO_TIN


def test_an_ingredient_that_the_recipe_does_not_weigh(tables: Tables) -> None:
    vague = recipe(4, "buns", line("1", "handful", "plain flour"))
    with pytest.raises(CannotScale) as refused:
        batch(tables, using(line("100", "g", "plain flour")), vague)
    assert refused.value.reason is WhyNot.NO_WEIGHT
