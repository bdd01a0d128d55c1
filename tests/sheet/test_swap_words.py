"""Swaps as a sheet prints them: the amount of this batch, in this edition's measures."""

from dataclasses import replace

import pytest

from sitegen.kitchen.recipe import Component, IngredientLine, Makes, OfferedSwap
from sitegen.sheet.amounts import NO_BREAK
from sitegen.sheet.build import build_sheet
from sitegen.sheet.panel_values import SheetSwap
from sitegen.sheet.setting import Setting
from sitegen.sheet.swap_words import MadeLines, swaps_of
from tests.sheet.pantry import Fraction, choice, line, part, recipe, says, setting, tables


def made(*lines: IngredientLine, factor: str | int = 1) -> MadeLines:
    return MadeLines(Component("Sponge", lines, ()), Fraction(factor))


def swaps(
    *parts: MadeLines, edition: str = "us-cups", offered: tuple[str, ...] = ()
) -> tuple[SheetSwap, ...]:
    found = swaps_of(parts, [OfferedSwap(name) for name in offered], setting(edition))
    return tuple(replace(swap, use=swap.use.replace(NO_BREAK, " ")) for swap in found)


FLOUR = line(200, "g", "self-raising flour")


def test_a_us_sheet_says_what_stands_in_for_british_self_raising_flour() -> None:
    (swap,) = swaps(made(FLOUR))
    assert swap.instead_of == "self-raising flour, in the list self-rising flour"
    assert swap.use == "1½ cups (190 g) all-purpose flour + 2¼ tsp (10 g) baking powder"
    assert swap.changes == "Whisk the two together before they go in."
    assert swap.reason == "American self-rising flour holds salt and is milled from softer wheat"
    assert swap.source == tables().sources["common-practice"]


def test_at_home_nothing_need_be_said() -> None:
    assert swaps(made(FLOUR), edition="british-metric") == ()


def test_a_recipe_written_in_the_us_means_the_us_flour() -> None:
    editions = tables().editions
    at_home = Setting(tables(), editions["us-cups"], editions["us-cups"])
    abroad = Setting(tables(), editions["us-cups"], editions["british-metric"])
    assert swaps_of([made(FLOUR)], [], at_home) == ()
    (swap,) = swaps_of([made(FLOUR)], [], abroad)
    assert "fine salt" in swap.use


def test_a_thing_is_named_once_with_the_amount_of_all_its_lines() -> None:
    (swap,) = swaps(
        made(line(60, "g", "golden syrup"), line(20, "g", "golden syrup")),
        made(line(10, "g", "golden syrup"), factor=2),
        edition="us-weights",
    )
    assert "80 g" in swap.use or "2¾ oz" in swap.use


def test_the_batch_multiplies_it() -> None:
    one, two = (swaps(made(line(100, "g", "cake flour"), factor=n), edition="british-metric") for n in (1, 2))
    assert one[0].use == "85 g plain flour + 15 g cornflour"
    assert two[0].use == "170 g plain flour + 30 g cornflour"


def test_an_alternative_of_the_line_itself_makes_a_swap_needless() -> None:
    own = replace(FLOUR, choices=(*FLOUR.choices, choice("plain flour")))
    assert swaps(made(own)) == ()


def test_what_has_no_amount_needs_no_swap() -> None:
    assert swaps(made(line(None, "g", "golden syrup", preparation="for the tin"))) == ()


@pytest.mark.parametrize(("leaves", "use"), [(3, "5.3 g powdered gelatin"), (6, "10.7 g powdered gelatin")])
def test_leaves_are_replaced_leaf_by_leaf(leaves: int, use: str) -> None:
    (swap,) = swaps(made(line(leaves, "leaf", "leaf gelatine")), edition="us-cups")
    assert swap.use.startswith(use)


def test_leaves_that_were_weighed_are_counted_by_the_weight_of_one() -> None:
    (swap,) = swaps(made(line(6, "g", "leaf gelatine")), edition="us-cups")
    assert swap.use.startswith("5.3 g powdered gelatin")


def test_a_recipe_may_offer_every_way_that_is_known_to_everyone() -> None:
    acid, yoghurt = swaps(
        made(line(120, "g", "buttermilk")), edition="british-metric", offered=("buttermilk",)
    )
    assert acid.use == "113 g whole milk + 7.5 g lemon juice"
    assert yoghurt.use == "60 g natural yoghurt + 60 g whole milk"
    assert acid.reason == yoghurt.reason == "for those who have none"


def test_paste_and_extract_for_a_pod_are_spooned_even_where_one_weighs() -> None:
    uses = [
        swap.use
        for swap in swaps(
            made(line(2, "", "vanilla pod")), edition="british-metric", offered=("vanilla pod",)
        )
    ]
    assert uses == ["2 tsp (12 g) vanilla bean paste", "1 tbsp (13 g) vanilla extract"]


def test_an_allergen_that_comes_in_with_the_swap_is_told() -> None:
    (swap,) = swaps(made(line(100, "g", "suet")), edition="us-cups")
    assert "brings" not in swap.changes
    (swap,) = swaps(
        made(line(100, "g", "block margarine")), edition="british-metric", offered=("block margarine",)
    )
    assert swap.changes.endswith("It brings milk.")


@pytest.mark.parametrize(
    ("name", "edition", "told"),
    [
        ("double cream", "us-cups", "double cream, in the list heavy cream"),
        ("mixed spice", "us-cups", "mixed spice, in the list pumpkin pie spice"),
        ("dark muscovado sugar", "australian", "dark muscovado sugar, in the list dark brown sugar"),
        ("caster sugar", "us-cups", "superfine sugar"),
        ("cake flour", "british-metric", "cake flour"),
    ],
)
def test_a_swap_is_found_again_in_the_list(name: str, edition: str, told: str) -> None:
    """By the name that the list prints; with the recipe's own where a region's is another thing."""
    (swap,) = swaps(made(line(300, "g", name)), edition=edition)
    assert swap.instead_of == told


def test_a_whole_sheet_offers_what_its_base_recipe_offers() -> None:
    cream = recipe(
        Component("Cream", (line(100, "g", "buttermilk"), line(20, "g", "caster sugar")), (says("Stir."),)),
        title="Base cream",
        makes=Makes(Fraction(120), "", Fraction(120)),
    )
    base = replace(cream, swaps=(OfferedSwap("buttermilk"),))
    cake = recipe(Component("Cake", (part("Base cream", share=1, base=True),), (says("Bake."),)))
    home = setting()
    sheet = build_sheet(cake, {base.title: base}, home.tables, home.edition, home.written)
    assert {swap.instead_of for swap in sheet.swaps} == {"buttermilk"}
    assert build_sheet(cake, {base.title: cream}, home.tables, home.edition, home.written).swaps == ()


@pytest.mark.parametrize(("grade", "use"), [("platinum", "5.3"), ("gold", "5.3")])
def test_three_leaves_weighed_by_grade_are_three_leaves(grade: str, use: str) -> None:
    grams = {"platinum": "5.1", "gold": "6"}[grade]
    (swap,) = swaps(made(line(grams, "g", "leaf gelatine", grade)), edition="us-cups")
    assert swap.use.startswith(f"{use} g")
