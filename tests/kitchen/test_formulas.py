"""Baker's percentages of a dough, its preferment counted in."""

from fractions import Fraction

import pytest

from sitegen.kitchen.balances import BalanceTable, GroupTerm, Kind
from sitegen.kitchen.contents import Contents, Held
from sitegen.kitchen.formulas import DoughFormula, WaterShares, dough_formula
from sitegen.kitchen.larder import Composition, Ingredient
from sitegen.kitchen.recipe import Choice

ROLES = {
    "flour": "flour", "water": "liquid", "milk": "liquid", "instant yeast": "yeast", "salt": "salt",
    "sugar": "sugar", "butter": "fat", "egg": "egg", "ripe starter": "sour", "sesame": "seed",
}  # fmt: skip
ZERO = Fraction(0)
MILK = Composition(*[ZERO] * 7, source="packet", water=Fraction(90))


def held(name: str, grams: int | None, brought_by: str = "") -> Held:
    composition = MILK if name == "milk" else None
    row = Ingredient(name, {}, roles=frozenset({ROLES[name]}), composition=composition)
    return Held(Choice(name, name), row, None if grams is None else Fraction(grams), brought_by)


def group(role: str, half_of_starter: bool = False) -> tuple[GroupTerm, ...]:
    starter = GroupTerm(names=frozenset({"ripe starter"}), share=Fraction(1, 2))
    own = GroupTerm(roles=frozenset({role}))
    return (own, starter) if half_of_starter else (own,)


TABLE = BalanceTable(
    groups={
        "flour": group("flour", half_of_starter=True),
        "liquid": group("liquid", half_of_starter=True),
        "yeast": group("yeast"),
        "salt": group("salt"),
        "sugar": group("sugar"),
        "fat": group("fat"),
        "egg": group("egg"),
        "ripe starter": (GroupTerm(names=frozenset({"ripe starter"})),),
    },
    kinds=(),
)
WATER = WaterShares(
    {"water": Fraction(1), "egg": Fraction(3, 4), "milk": Fraction(1, 2), "butter": Fraction(1, 5)}
)
POOLISH = Kind("poolish", "preferment", ())


def formula(*contents: Held, parts: dict[str, Kind | None] | None = None) -> DoughFormula:
    found = dough_formula(contents, parts or {}, TABLE, WATER)
    assert found is not None
    return found


STRAIGHT: Contents = (
    held("flour", 500), held("water", 320), held("salt", 10), held("instant yeast", 5), held("sesame", 40),
)  # fmt: skip


def test_a_straight_dough() -> None:
    dough = formula(*STRAIGHT)
    assert (dough.flour_g, dough.dough_g) == (500, 875)
    assert (dough.hydration, dough.salt, dough.yeast) == (
        Fraction("0.64"),
        Fraction("0.02"),
        Fraction("0.01"),
    )
    assert [line.percent for line in dough.lines] == [
        1,
        Fraction("0.64"),
        Fraction("0.02"),
        Fraction("0.01"),
        Fraction("0.08"),
    ]
    assert (dough.preferments, dough.prefermented, dough.inoculation) == ((), 0, 0)


def test_the_flour_of_a_preferment_counts_and_has_a_second_figure() -> None:
    dough = formula(
        held("flour", 100, "Poolish"), held("water", 100, "Poolish"), held("flour", 300), held("water", 150),
        parts={"Poolish": POOLISH},
    )  # fmt: skip
    assert dough.flour_g == 400
    assert dough.hydration == Fraction(250, 400)
    assert [(part.title, part.flour, part.hydration) for part in dough.preferments] == [
        ("Poolish", Fraction(1, 4), 1)
    ]


@pytest.mark.parametrize(("with_yeast", "prefermented"), [(True, Fraction(1, 4)), (False, 0)])
def test_a_part_without_a_kind_is_a_preferment_where_it_has_yeast(
    with_yeast: bool, prefermented: Fraction
) -> None:
    """Flour and water alone are a soaker: its flour counts, and has not fermented."""
    part = [held("flour", 100, "Sponge"), held("water", 60, "Sponge")]
    part += [held("instant yeast", 1, "Sponge")] * with_yeast
    assert formula(*part, held("flour", 300), parts={"Sponge": None}).prefermented == prefermented


def test_a_dough_that_takes_another_dough_has_no_preferment() -> None:
    part = (held("flour", 100, "White"), held("water", 60, "White"), held("instant yeast", 1, "White"))
    assert (
        formula(*part, held("flour", 100), parts={"White": Kind("tin loaf", "dough", ())}).preferments == ()
    )


def test_all_water_counts_milk_egg_and_butter_by_what_they_hold() -> None:
    """Milk by its composition, the others by the table; seeds and flour bring none."""
    dough = formula(
        held("flour", 1000), held("water", 300), held("milk", 100), held("egg", 100), held("butter", 50),
        held("sesame", 100),
    )  # fmt: skip
    assert dough.hydration == Fraction(400, 1000)
    assert dough.all_water == Fraction(300 + 90 + 75 + 10, 1000)


def test_a_ripe_starter_is_half_flour_half_water_and_inoculates_the_rest() -> None:
    dough = formula(held("flour", 400), held("water", 250), held("ripe starter", 100))
    assert dough.flour_g == 450
    assert dough.hydration == dough.all_water == Fraction(300, 450)
    assert dough.inoculation == Fraction(100, 400)


def test_the_whole_of_a_sour_inoculates_the_flour_that_is_mixed_in() -> None:
    sour = (held("ripe starter", 20, "Sour"), held("flour", 90, "Sour"), held("water", 90, "Sour"))
    dough = formula(*sour, held("flour", 400), parts={"Sour": Kind("sour", "preferment", ())})
    assert dough.inoculation == Fraction(200, 400)
    assert dough.prefermented == Fraction(100, 500)


def test_an_unweighed_line_has_no_percentage() -> None:
    assert [line.percent for line in formula(held("flour", 100), held("sesame", None)).lines] == [1, None]


def test_without_flour_there_is_no_formula() -> None:
    assert dough_formula((held("water", 100),), {}, TABLE, WATER) is None
