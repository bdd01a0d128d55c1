"""One shopping list: exact sums, fruit counted once, and whole packs."""

from fractions import Fraction
from functools import cache

import pytest

from sitegen.kitchen.amounts import NOWHERE, Amount, Span, single
from sitegen.kitchen.prices import PriceList
from sitegen.kitchen.recipe import Choice, Component, IngredientLine
from sitegen.kitchen.shares import MadeComponent
from sitegen.kitchen.shopping import Packs, Shopping, ToBuy, shopping_of
from sitegen.kitchen.tables import Tables
from sitegen.kitchen.weighing import Scales
from sitegen.source.context import Context
from sitegen.source.lines import read_line
from sitegen.source.prices import prices_from
from sitegen.source.reader import parse_document
from sitegen.source.tables import read_tables


@cache
def tables() -> Tables:
    return read_tables()[0]


def line(text: str) -> IngredientLine:
    read = read_line(text, NOWHERE, Context(tables()))
    assert isinstance(read, IngredientLine)
    return read


def made(title: str, *lines: str, factor: str = "1") -> MadeComponent:
    """A component of ingredient lines as a baker writes them, at a factor."""
    read = tuple(line(text) for text in lines)
    return MadeComponent(
        component=Component(title, read, ()),
        factor=Fraction(factor),
        grams=None,
        base=None,
        needed_by=(),
        unknown=(),
        line_grams=tuple(_grams(one, Fraction(factor)) for one in read),
        title=title,
    )


def _grams(one: IngredientLine, factor: Fraction) -> Fraction | None:
    weight = Scales(tables(), tables().editions["british-metric"]).grams(one)
    return None if weight is None or one.optional else weight.middle * factor


def prices(*rows: str) -> PriceList:
    document, _ = parse_document(
        "currency: GBP\nprices:\n" + "".join(f"  {row}\n" for row in rows), "prices.yaml"
    )
    assert document is not None
    found, faults = prices_from(document, tables())
    assert faults == ()
    assert found is not None
    return found


def shopping(*components: MadeComponent, paid: PriceList | None = None) -> Shopping:
    edition = tables().editions["british-metric"]
    return shopping_of(components, Scales(tables(), edition), edition, paid)


def row(bought: Shopping, name: str) -> ToBuy:
    return next(one for one in bought.to_buy if one.choice.ingredient == name)


def test_the_same_ingredient_of_several_components_is_one_row_at_the_exact_sum() -> None:
    bought = shopping(
        made("Sponge", "150 g plain flour", factor="4"),
        made("Pastry", "100 g all-purpose flour", factor="1/3"),
    )
    assert row(bought, "plain flour").grams == 600 + Fraction(100, 3)
    assert len(bought.to_buy) == 1


def test_zest_and_juice_are_taken_of_the_same_lemons() -> None:
    bought = shopping(
        made("Curd", "2 lemons, zest only", factor="2"),
        made("Syrup", "3 lemons, juice only"),
        made("Tea", "1 lemon"),
    )
    lemons = row(bought, "lemon")
    assert lemons.pieces == 5
    assert lemons.parts == {"zest", "juice", ""}


def test_what_is_weighed_somewhere_is_bought_by_weight() -> None:
    plums = row(shopping(made("A", "2 plums"), made("B", "100 g plums")), "plum")
    assert plums.pieces is None
    assert plums.grams is not None
    assert plums.grams > 100


@pytest.mark.parametrize(
    ("needed", "price", "number"),
    [
        ("1500 g plain flour", "plain flour: 1.20 per 1.5 kg", 1),
        ("1501 g plain flour", "plain flour: 1.20 per 1.5 kg", 2),
        ("1 g plain flour", "plain flour: 1.20 per 1.5 kg", 1),
        ("13 lemons", "lemons: 1.30 per 5", 3),
        ("500 ml whole milk", "whole milk: 1.55 per 2 l", 1),
        ("2500 ml whole milk", "whole milk: 1.55 per 2 l", 2),
        ("250 g plums", "plum: 2.20 per 500 g", 1),
    ],
)
def test_packs_are_rounded_up_to_whole_ones(needed: str, price: str, number: int) -> None:
    (one,) = shopping(made("All", needed), paid=prices(price)).to_buy
    assert one.packs is not None
    assert one.packs.number == number


def test_fruit_by_the_piece_is_held_against_a_pack_by_weight_as_a_whole() -> None:
    """Zest of two lemons weighs 12 g; the two lemons weigh 168 g (USDA SR28, NDB 09150)."""
    (one,) = shopping(made("Curd", "2 lemons, zest only"), paid=prices("lemons: 2 per 100 g")).to_buy
    assert one.packs == Packs(2, Amount(single(100), "g"))


@pytest.mark.parametrize("price", ["water: 0 per 1 l", "caster sugar: 1 per 1 kg"])
def test_what_is_free_or_has_no_price_has_no_packs(price: str) -> None:
    (one,) = shopping(made("All", "100 g water"), paid=prices(price)).to_buy
    assert one.packs is None


def test_eggs_stand_apart_with_their_packs() -> None:
    bought = shopping(
        made("Cake", "4 medium eggs", factor="2"),
        made("Custard", "5 egg yolks"),
        made("Meringue", "3 egg whites"),
        paid=prices("eggs: 2.80 per 12"),
    )
    (eggs,) = bought.eggs
    assert (eggs.size, eggs.whole, eggs.whites, eggs.yolks) == ("medium", 8, 3, 5)
    assert eggs.number == 13
    assert bought.egg_packs == (Packs(2, Amount(single(12), "")),)
    assert bought.to_buy == ()


def test_what_cannot_be_weighed_is_summed_by_its_unit() -> None:
    spoons = IngredientLine("2 tbsp stardust", Amount(single(2), "tbsp"), (Choice("stardust", ""),))
    drops = IngredientLine("1 pinch stardust", Amount(single(1), "pinch"), (Choice("stardust", ""),))
    component = MadeComponent(
        Component("Sky", (spoons, drops, spoons), ()), Fraction(3), None, None, (), (), (None, None, None)
    )
    (one,) = shopping(component).to_buy
    assert one.grams is None
    assert one.rest == (Amount(Span(Fraction(12), Fraction(12)), "tbsp"), Amount(single(3), "pinch"))


def test_optional_and_unmeasured_things_stand_apart_and_alternatives_are_named() -> None:
    bought = shopping(
        made(
            "A",
            "10 g demerara sugar, optional",
            "sunflower oil, for the tin",
            "50 g pecans or walnuts",
            factor="2",
        )
    )
    assert [(one.choice.ingredient, one.grams) for one in bought.optional] == [("demerara sugar", 20)]
    assert [choice.ingredient for choice in bought.unmeasured] == ["sunflower oil"]
    (nuts,) = bought.to_buy
    assert [other.ingredient for other in nuts.others] == ["walnuts"]
    assert bought.grams == 100


def test_a_price_of_another_size_says_nothing_of_a_pack_by_the_piece() -> None:
    (packs,) = shopping(made("A", "3 medium eggs"), paid=prices("large eggs: 3.10 per 12")).egg_packs
    assert packs is None


def test_an_edition_of_another_region_buys_its_own_eggs() -> None:
    """Six medium eggs of the UK are 306 g; a large one of the US is 50 g (USDA SR28, NDB 01123)."""
    component = made("Cake", "6 medium eggs")
    scales = Scales(tables(), tables().editions["british-metric"])
    (eggs,) = shopping_of([component], scales, tables().editions["us-cups"], None).eggs
    assert (eggs.size, eggs.whole, eggs.number) == ("large", Fraction(306, 50), 7)
