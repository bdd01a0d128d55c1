"""The production day as a sheet: products, weigh-outs and the joint plan."""

from datetime import UTC, datetime
from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import single
from sitegen.kitchen.method import OvenSetting
from sitegen.kitchen.recipe import BatchAsk, BatchKind, Component, Makes, Recipe, Tin
from sitegen.sheet.conflict_words import StepsInConflict
from sitegen.sheet.day_plan import TooLate, Wish
from sitegen.sheet.order_sheet import OrderKitchen, order_sheet
from sitegen.sheet.order_values import OrderSheet, WeighOut
from sitegen.timing.kitchens import Kitchen
from tests.sheet.pantry import line, minutes, part, says, tables, takes

BAKE = OvenSetting(Fraction(160), "celsius", fan=True)
ROUND = Tin("round", Fraction(20), Fraction(20), Fraction(5), Fraction(20), Fraction(20), name="20 cm round")
ICING = Recipe(
    "icing",
    "Icing",
    "",
    Makes(Fraction(600), "", Fraction(600)),
    (
        Component(
            "Beaten",
            (line(200, "g", "unsalted butter"), line(400, "g", "icing sugar")),
            (says("Beat.", hands_on_min=minutes(10)),),
            keeps="10 days in the fridge",
        ),
    ),
)
BUNS = Recipe(
    "buns",
    "Buns",
    "",
    Makes(Fraction(12), "buns"),
    (
        Component(
            "Dough",
            (
                line(300, "g", "plain flour"),
                line(2, "", "eggs"),
                line("1/2", "tsp", "fine salt"),
                line(4, "", "bay leaves"),
            ),
            (says("Mix.", hands_on_min=minutes(10)), says("Bake.", wait_min=minutes(20), oven=BAKE)),
        ),
        Component(
            "Finish",
            (part("Dough", 1), part("Icing", grams=240, base=True)),
            (says("Spread ", takes(1, "Icing"), ".", hands_on_min=minutes(12)),),
        ),
    ),
    tin=Tin("muffin", Fraction(7), Fraction(7), Fraction(3), Fraction(5), Fraction(5), holes=12),
)
CAKE = Recipe(
    "cake",
    "Cake",
    "",
    Makes(Fraction(1), "cake"),
    (
        Component(
            "Sponge",
            (line(100, "g", "plain flour"), part("Icing", grams=120, base=True)),
            (says("Bake.", hands_on_min=minutes(5), wait_min=minutes(40), oven=BAKE),),
            keeps="3 days in a tin",
        ),
    ),
    tin=ROUND,
)
BASES = {one.title: one for one in (ICING, BUNS, CAKE)}
METRIC = tables().editions["british-metric"]


def count(number: int) -> BatchAsk:
    return BatchAsk(BatchKind.MAKES, makes=Fraction(number))


def day(
    *wanted: tuple[Recipe, BatchAsk], edition: str = "british-metric", wish: Wish | None = None
) -> OrderSheet:
    kitchen = OrderKitchen(BASES, tables(), tables().editions[edition], METRIC)
    return order_sheet("Market", wanted, wish or Wish(Kitchen()), kitchen)


def weigh_out(sheet: OrderSheet, title: str) -> WeighOut:
    return next(one for one in sheet.weigh_outs if one.title == title)


def test_a_shared_base_is_made_once_at_the_summed_weight_and_weighed_out_to_each() -> None:
    """36 buns take 3 x 240 g, 2 cakes take 2 x 120 g, the counter takes 300 g: 1,260 g."""
    sheet = day((BUNS, count(36)), (CAKE, count(2)), (ICING, count(300)))
    icing = weigh_out(sheet, "Icing")
    assert [one.title for one in sheet.weigh_outs].count("Icing") == 1
    assert icing.makes == "about 1.25\u00a0kg"
    assert [(one.amount, one.name) for one in icing.lines] == [
        ("420\u00a0g", "unsalted butter"),
        ("840\u00a0g", "icing sugar"),
    ]
    assert icing.divided == (
        ("720\u00a0g", "Finish (Buns)"),
        ("240\u00a0g", "Cake"),
        ("300\u00a0g", "the counter"),
    )
    assert icing.left == ""


def test_weights_are_in_grams_with_eggs_and_spoons_beside_and_counts_as_counts() -> None:
    lines = weigh_out(day((BUNS, count(24))), "Dough").lines
    assert [(one.amount, one.beside, one.name) for one in lines] == [
        ("600\u00a0g", "", "plain flour"),
        ("205\u00a0g", "4\u00a0medium", "eggs"),
        ("6.1\u00a0g", "1\u00a0tsp", "fine salt"),
        ("8", "", "bay leaves"),
    ]


def test_grams_stay_in_an_edition_of_cups() -> None:
    lines = weigh_out(day((BUNS, count(12)), edition="us-cups"), "Dough").lines
    assert lines[0].amount == "300\u00a0g"
    assert lines[0].name == "all-purpose flour"
    assert lines[1].beside == "2\u00a0large"


def test_a_component_tells_which_product_it_is_for_unless_it_is_that_product() -> None:
    sheet = day((BUNS, count(12)), (CAKE, count(1)))
    assert {one.title: one.product for one in sheet.weigh_outs} == {
        "Dough": "Buns",
        "Icing": "",
        "Finish": "Buns",
        "Cake": "",
    }
    assert {row.row.component: row.row.product for row in sheet.plan.rows} == {
        "Dough": "Buns",
        "Icing": "",
        "Finish": "Buns",
        "Cake": "",
    }


def test_products_tell_tins_and_loads() -> None:
    buns, cake, icing = day((BUNS, count(36)), (CAKE, count(2)), (ICING, count(300))).products
    assert (buns.makes, buns.how_much, buns.tin, buns.loads) == (
        "36\u00a0buns",
        "three times the recipe",
        "three 12-hole muffin tins",
        "3 oven loads",
    )
    assert (cake.tin, cake.loads) == ("two 20\u00a0cm round cake tins", "2 oven loads")
    assert (icing.makes, icing.how_much, icing.tin, icing.loads) == ("300\u00a0g", "half the recipe", "", "")


def test_another_tin_is_one_load_in_the_joint_plan_too() -> None:
    wider = Tin("round", Fraction(26), Fraction(26), Fraction(5), Fraction(26), Fraction(26))
    sheet = day((CAKE, BatchAsk(BatchKind.TIN, tin=wider)))
    assert sheet.products[0].loads == "1 oven load"
    assert [row.row.wait_min for row in sheet.plan.rows if row.row.uses_oven] == [40]


def test_what_a_part_keeps_is_not_said_of_the_product() -> None:
    buns, cake = day((BUNS, count(12)), (CAKE, count(1))).products
    assert buns.keeps == ""
    assert cake.keeps == "3 days in a tin"


def test_nothing_begins_before_what_it_needs_across_products() -> None:
    rows = {row.row.component: row.row for row in day((BUNS, count(12)), (CAKE, count(1))).plan.rows}
    ready = rows["Icing"].start_min + rows["Icing"].hands_on_min
    assert rows["Finish"].start_min >= ready
    assert rows["Cake"].start_min >= ready


def test_a_day_that_should_have_begun_is_refused() -> None:
    hour = datetime(2026, 11, 28, 9, tzinfo=UTC)
    kitchen = OrderKitchen(BASES, tables(), METRIC, METRIC)
    with pytest.raises(TooLate):
        order_sheet("Market", [(BUNS, count(12))], Wish(Kitchen(), hour), kitchen, now=hour)


def test_steps_that_no_order_can_keep_are_named() -> None:
    slow = Recipe(
        "slow",
        "Slow",
        "",
        Makes(Fraction(1), "cake"),
        (
            Component(
                "Cream",
                (line(1, "g", "water"),),
                (says("Whip.", hands_on_min=single(1), within_min=Fraction(5)),),
            ),
            Component(
                "Base",
                (line(1, "g", "water"),),
                (
                    says(
                        "Chill.",
                        hands_on_min=single(1),
                        wait_min=single(60),
                        after=("Cream",),
                        within_min=Fraction(1),
                    ),
                ),
            ),
            Component("Last", (part("Cream", 1), part("Base", 1)), (says("Join.", hands_on_min=single(1)),)),
        ),
    )
    kitchen = OrderKitchen({"Slow": slow}, tables(), METRIC, METRIC)
    with pytest.raises(StepsInConflict) as problem:
        order_sheet("Market", [(slow, count(1))], Wish(Kitchen()), kitchen)
    assert {title for title, _ in problem.value.names} <= {"Cream", "Base", "Last"}
    assert len(problem.value.names) >= 2
