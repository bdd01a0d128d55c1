"""Energy, daily values and the rounding of labels, as the laws lay them down."""

from fractions import Fraction

import pytest

from sitegen.kitchen.label_rounding import RoundingRule, percent_of
from sitegen.kitchen.nutrition import Nutrients, Quantity, nutrients_of, quantities
from sitegen.kitchen.nutrition_table import Label
from sitegen.source.tables import read_tables

TABLES, _ = read_tables()
NUTRITION = TABLES.nutrition
HUNDRED_GRAMS = Fraction(100)


def label(region: str) -> Label:
    found = NUTRITION.label(region)
    assert found is not None
    return found


def rule(region: str, quantity: Quantity) -> RoundingRule:
    figures = [figure for row in label(region).rows for figure in row.figures]
    return next(figure.rule for figure in figures if figure.quantity is quantity)


def printed(region: str, quantity: Quantity, value: str) -> str:
    rounded = rule(region, quantity).rounded(Fraction(value))
    figure = f"{float(rounded.figure):g}"
    return f"less than {figure}" if rounded.is_less_than else figure


def energy(ingredient: str, quantity: Quantity) -> Fraction:
    row = TABLES.larder.find(ingredient)
    assert row is not None
    assert row.composition is not None
    return quantities(nutrients_of(row.composition, HUNDRED_GRAMS), NUTRITION.factors)[quantity]


@pytest.mark.parametrize(
    ("nutrient", "kj", "kcal"),
    [
        ("carbohydrate", 17, "4"),
        ("polyols", 10, "2.4"),
        ("protein", 17, "4"),
        ("fat", 37, "9"),
        ("alcohol", 29, "7"),
        ("organic_acids", 13, "3"),
        ("fibre", 8, "2"),
    ],
)
def test_a_gram_gives_the_energy_of_annex_xiv(nutrient: str, kj: int, kcal: str) -> None:
    """Source: Regulation (EU) No 1169/2011, Annex XIV."""
    found = quantities(Nutrients(**{nutrient: Fraction(1)}), NUTRITION.factors)
    assert found[Quantity.ENERGY_KJ] == kj
    assert found[Quantity.ENERGY_KCAL] == Fraction(kcal)


@pytest.mark.parametrize("nutrient", ["saturates", "sugars", "salt", "water"])
def test_what_is_part_of_another_or_burns_nothing_gives_no_energy(nutrient: str) -> None:
    """Source: Regulation (EU) No 1169/2011, Annex XIV, which does not name them."""
    found = quantities(Nutrients(**{nutrient: Fraction(1)}), NUTRITION.factors)
    assert found[Quantity.ENERGY_KJ] == found[Quantity.ENERGY_KCAL] == 0


@pytest.mark.parametrize(
    ("ingredient", "ndb", "usda_kcal", "kcal"),
    [
        ("plain flour", "20081", 364, 350),
        ("whole almonds", "12061", 579, 595),
        ("unsalted butter", "01145", 717, 734),
        ("caster sugar", "19335", 387, 400),
        ("lemon juice", "09152", 22, 31),
        ("cocoa powder", "19165", 228, 359),
    ],
)
def test_a_food_has_the_energy_of_the_law_and_not_of_usdas_own_factors(
    ingredient: str, ndb: str, usda_kcal: int, kcal: int
) -> None:
    """Worked by hand from the row of SR28: carbohydrate less fibre 4, fibre 2, protein 4, fat 9.

    Protein at nitrogen x 6.25 takes from the carbohydrate what it gains, at the same factor.
    """
    row = TABLES.larder.find(ingredient)
    assert row is not None
    assert row.composition is not None
    assert row.composition.source == f"usda-sr28 {ndb}"
    ours = energy(ingredient, Quantity.ENERGY_KCAL)
    assert abs(ours - kcal) < Fraction(3, 5)
    assert abs(ours - usda_kcal) > 8


@pytest.mark.parametrize(
    ("ingredient", "protein"),
    [
        ("plain flour", "11.33"),  # 10.33 x 6.25 / 5.70
        ("whole almonds", "25.5"),  # 21.15 x 6.25 / 5.18
        ("whole milk", "3.09"),  # 3.15 x 6.25 / 6.38
        ("egg", "12.56"),  # 6.25 already
    ],
)
def test_protein_is_nitrogen_by_6_25(ingredient: str, protein: str) -> None:
    """Source: Regulation (EU) No 1169/2011, Annex I (10); nitrogen factors of SR28, FOOD_DES.txt."""
    row = TABLES.larder.find(ingredient)
    assert row is not None
    assert row.composition is not None
    assert abs(row.composition.protein - Fraction(protein)) < Fraction(1, 50)


@pytest.mark.parametrize(
    ("ingredient", "salt"),
    [("salted butter", "1.6075"), ("fine salt", "96.895"), ("self-raising flour", "2.9825")],
)
def test_salt_is_sodium_by_2_5(ingredient: str, salt: str) -> None:
    """Source: Regulation (EU) No 1169/2011, Annex I (11): 643, 38758 and 1193 mg of sodium in SR28."""
    row = TABLES.larder.find(ingredient)
    assert row is not None
    assert row.composition is not None
    assert row.composition.salt == Fraction(salt)


@pytest.mark.parametrize(
    ("paragraph", "quantity", "value", "text"),
    [
        ("(c)(1)", Quantity.ENERGY_KCAL, "4.9", "0"),
        ("(c)(1)", Quantity.ENERGY_KCAL, "5", "5"),
        ("(c)(1)", Quantity.ENERGY_KCAL, "7.5", "10"),
        ("(c)(1)", Quantity.ENERGY_KCAL, "47.4", "45"),
        ("(c)(1)", Quantity.ENERGY_KCAL, "50", "50"),
        ("(c)(1)", Quantity.ENERGY_KCAL, "50.1", "50"),
        ("(c)(1)", Quantity.ENERGY_KCAL, "55", "60"),
        ("(c)(1)", Quantity.ENERGY_KCAL, "234", "230"),
        ("(c)(2)", Quantity.FAT, "0.49", "0"),
        ("(c)(2)", Quantity.FAT, "0.5", "0.5"),
        ("(c)(2)", Quantity.FAT, "4.7", "4.5"),
        ("(c)(2)", Quantity.FAT, "4.8", "5"),
        ("(c)(2)", Quantity.FAT, "5.5", "6"),
        ("(c)(2)(i)", Quantity.SATURATES, "0.4", "0"),
        ("(c)(2)(i)", Quantity.SATURATES, "2.3", "2.5"),
        ("(c)(4)", Quantity.SODIUM_MG, "4.9", "0"),
        ("(c)(4)", Quantity.SODIUM_MG, "5", "5"),
        ("(c)(4)", Quantity.SODIUM_MG, "138", "140"),
        ("(c)(4)", Quantity.SODIUM_MG, "140", "140"),
        ("(c)(4)", Quantity.SODIUM_MG, "144", "140"),
        ("(c)(4)", Quantity.SODIUM_MG, "145", "150"),
        ("(c)(6)", Quantity.TOTAL_CARBOHYDRATE, "0.49", "0"),
        ("(c)(6)", Quantity.TOTAL_CARBOHYDRATE, "0.5", "less than 1"),
        ("(c)(6)", Quantity.TOTAL_CARBOHYDRATE, "0.99", "less than 1"),
        ("(c)(6)", Quantity.TOTAL_CARBOHYDRATE, "12.5", "13"),
        ("(c)(6)(i)", Quantity.FIBRE, "0.7", "less than 1"),
        ("(c)(6)(i)", Quantity.FIBRE, "1.4", "1"),
        ("(c)(6)(ii)", Quantity.SUGARS, "0.3", "0"),
        ("(c)(6)(ii)", Quantity.SUGARS, "20.5", "21"),
        ("(c)(7)", Quantity.PROTEIN, "0.4", "0"),
        ("(c)(7)", Quantity.PROTEIN, "0.8", "less than 1"),
        ("(c)(7)", Quantity.PROTEIN, "3.5", "4"),
    ],
)
def test_a_serving_is_rounded_by_21_cfr_101_9(
    paragraph: str, quantity: Quantity, value: str, text: str
) -> None:
    """Source: 21 CFR 101.9, the paragraph named; FDA, Food Labeling Guide, Appendix H."""
    assert printed("us", quantity, value) == text, paragraph


@pytest.mark.parametrize(
    ("quantity", "value", "text"),
    [
        (Quantity.ENERGY_KJ, "1046.5", "1047"),
        (Quantity.ENERGY_KCAL, "250.4", "250"),
        (Quantity.FAT, "10", "10"),
        (Quantity.FAT, "12.5", "13"),
        (Quantity.FAT, "9.96", "10"),
        (Quantity.FAT, "0.51", "0.5"),
        (Quantity.FAT, "0.5", "less than 0.5"),
        (Quantity.FAT, "0", "0"),
        (Quantity.CARBOHYDRATE, "54.4", "54"),
        (Quantity.SUGARS, "3.14", "3.1"),
        (Quantity.FIBRE, "0.2", "less than 0.5"),
        (Quantity.PROTEIN, "4.25", "4.3"),
        (Quantity.SATURATES, "0.1", "less than 0.1"),
        (Quantity.SATURATES, "0.14", "0.1"),
        (Quantity.SATURATES, "12.2", "12"),
        (Quantity.SALT, "1.26", "1.3"),
        (Quantity.SALT, "0.464", "0.46"),
        (Quantity.SALT, "0.0126", "0.01"),
        (Quantity.SALT, "0.0125", "less than 0.01"),
    ],
)
def test_a_figure_is_rounded_by_the_commissions_guidance(quantity: Quantity, value: str, text: str) -> None:
    """Source: European Commission, guidance on tolerances (December 2012), rounding, from memory."""
    assert printed("uk", quantity, value) == text


@pytest.mark.parametrize(
    ("key", "daily"),
    [("fat", 78), ("saturates", 20), ("sodium", 2300), ("carbohydrate", 275), ("fibre", 28)],
)
def test_the_daily_values_are_the_laws(key: str, daily: int) -> None:
    """Source: 21 CFR 101.9(c)(9), daily reference values for adults, 2000 calories."""
    assert {row.key: row.daily for row in label("us").rows}[key] == daily


def test_sugars_and_protein_have_no_percentage() -> None:
    """Source: 21 CFR 101.9(c)(9) has no value for total sugars, (c)(7)(i) frees protein without a claim."""
    without = {row.key for row in label("us").rows if row.daily is None}
    assert without == {"energy", "sugars", "protein"}


@pytest.mark.parametrize(("grams", "daily", "percent"), [("12", 78, 15), ("2.5", 20, 13), ("0.3", 78, 0)])
def test_a_daily_value_is_told_to_the_percent(grams: str, daily: int, percent: int) -> None:
    """Source: 21 CFR 101.9(d)(7)(ii): 12 g of fat are 15 %, 2.5 g of saturated fat 13 %."""
    assert percent_of(Fraction(grams), Fraction(daily)) == percent


def test_the_lines_stand_in_the_laws_order() -> None:
    """Source: Regulation (EU) No 1169/2011, Annex XV; 21 CFR 101.9(d); FSANZ Standard 1.2.8."""
    orders = {region: " ".join(row.key for row in label(region).rows) for region in ("uk", "us", "au")}
    assert orders == {
        "uk": "energy fat saturates carbohydrate sugars fibre protein salt",
        "us": "energy fat saturates sodium carbohydrate fibre sugars protein",
        "au": "energy protein fat saturates carbohydrate sugars fibre sodium",
    }
