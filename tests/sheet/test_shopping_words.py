"""The shopping list in words: rounded once, by section, up to whole packs."""

from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import Amount, single
from sitegen.kitchen.egg_shopping import EggsToBuy
from sitegen.kitchen.shopping import Packs, Shopping, ToBuy
from sitegen.sheet.order_values import ShoppingRow
from sitegen.sheet.shopping_words import names_to_hand, optional_rows, packs_text, shopping_sections
from tests.sheet.pantry import amount, choice, setting


def grams(name: str, number: str, *others: str, packs: Packs | None = None) -> ToBuy:
    return ToBuy(choice(name), Fraction(number), others=tuple(map(choice, others)), packs=packs)


def pieces(name: str, number: str, *parts: str) -> ToBuy:
    return ToBuy(choice(name), None, pieces=Fraction(number), parts=frozenset(parts))


def rows(
    *to_buy: ToBuy, edition: str = "british-metric", eggs: tuple[EggsToBuy, ...] = ()
) -> list[ShoppingRow]:
    bought = Shopping(to_buy, eggs, (None,) * len(eggs), (), ())
    return [row for section in shopping_sections(bought, setting(edition)) for row in section.rows]


def test_sections_stand_in_the_order_of_the_shop_and_rows_in_that_of_the_alphabet() -> None:
    bought = Shopping(
        (grams("water", "100"), grams("rye flour", "10"), grams("plain flour", "20"), pieces("lemon", "2")),
        (EggsToBuy("medium", Fraction(3)),),
        (None,),
        (),
        (),
    )
    sections = shopping_sections(bought, setting())
    assert [(section.title, [row.what for row in section.rows]) for section in sections] == [
        ("Fruit, vegetables and herbs", ["lemons"]),
        ("Eggs and dairy", ["medium eggs"]),
        ("Flour and grain", ["plain flour", "rye flour"]),
        ("From the tap", ["water"]),
    ]


@pytest.mark.parametrize(
    ("exact", "printed"),
    [("3960", "3.96\u00a0kg"), ("133/3", "44\u00a0g"), ("1572", "1.57\u00a0kg")],
)
def test_sums_are_rounded_as_a_scale_shows_them(exact: str, printed: str) -> None:
    (row,) = rows(grams("plain flour", exact))
    assert row.amount == printed


def test_a_part_of_a_lemon_is_a_lemon_to_buy() -> None:
    (row,) = rows(pieces("lemon", "5/2"))
    assert (row.what, row.amount) == ("lemons", "3")
    (row,) = rows(pieces("lemon", "1/2"))
    assert (row.what, row.amount) == ("lemon", "1")


@pytest.mark.parametrize(
    ("packs", "text"),
    [
        (Packs(2, Amount(single(Fraction(3, 2)), "kg")), "2\u00a0packs of 1.5\u00a0kg"),
        (Packs(1, Amount(single(284), "ml")), "1\u00a0pack of 284\u00a0ml"),
        (Packs(3, Amount(single(12), "")), "3\u00a0packs of 12"),
        (Packs(8, Amount(single(1), "")), ""),
        (None, ""),
    ],
)
def test_packs_in_words(packs: Packs | None, text: str) -> None:
    assert packs_text(packs) == text


def test_a_region_buys_under_its_own_names() -> None:
    (row,) = rows(grams("caster sugar", "100", "icing sugar"), edition="us-cups")
    assert (row.what, row.note) == ("superfine sugar", "or powdered sugar")


def test_lemons_for_zest_give_juice_and_those_for_juice_have_none_to_spare() -> None:
    """The juice of a lemon weighs 48 g (USDA SR28, NDB 09152): two give 96 g, said as about 95 g."""
    juice = grams("lemon juice", "80")
    assert rows(juice, pieces("lemon", "2", "zest"))[1].note == (
        "the lemons bought for zest give about 95\u00a0g of it"
    )
    assert rows(juice, pieces("lemon", "2", "zest", "juice"))[1].note == ""


def test_spare_whites_and_yolks_stand_with_the_eggs() -> None:
    eggs = EggsToBuy("large", Fraction(6), Fraction(2), Fraction(9, 2))
    (row,) = rows(eggs=(eggs,))
    assert (row.what, row.amount) == ("large eggs", "11")
    assert row.note.startswith("6 whole, 5 separated; left over: 3\u00a0whites, covered in the fridge")


def test_whole_eggs_alone_need_no_word() -> None:
    assert rows(eggs=(EggsToBuy("medium", Fraction(1)),)) == [ShoppingRow("medium egg", "1")]


def test_what_cannot_be_weighed_is_said_in_its_own_unit() -> None:
    (row,) = rows(ToBuy(choice("plain flour"), Fraction(100), (amount("9/4", "tbsp"),)))
    assert row.amount == "100\u00a0g + 2½\u00a0tbsp"


def test_optional_and_unmeasured_things() -> None:
    bought = Shopping(
        (), (), (), (grams("demerara sugar", "26"),), (choice("sunflower oil"), choice("sunflower oil"))
    )
    assert [row.what for row in optional_rows(bought, setting())] == ["demerara sugar"]
    assert names_to_hand(bought, setting()) == ("sunflower oil",)
