"""Australian measures against the published chart, and what follows from them.

New South Wales Government, Healthy Kids, conversion chart ('approved by the Standards Association of
Australia'): cup 250 ml, half a cup 125, tablespoon 20, teaspoon 5, half a teaspoon 2.5, a quarter 1.25 ml.
The chart prints a third of a cup as 80 ml and a quarter as 60: to the nearest ten.
"""

from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import Amount, single
from sitegen.kitchen.editions import Edition
from sitegen.kitchen.scoops import choose_scoops
from sitegen.kitchen.tables import Tables
from sitegen.source.tables import read_tables


@pytest.fixture(scope="module")
def tables() -> Tables:
    return read_tables()[0]


@pytest.fixture(scope="module")
def edition(tables: Tables) -> Edition:
    return tables.editions["australian"]


@pytest.mark.parametrize(
    ("number", "unit", "chart_ml"),
    [
        ("1", "cup", "250"),
        ("1/2", "cup", "125"),
        ("1", "tbsp", "20"),
        ("1", "tsp", "5"),
        ("1/2", "tsp", "2.5"),
        ("1/4", "tsp", "1.25"),
    ],
)
def test_a_measure_holds_what_the_chart_says(
    tables: Tables, edition: Edition, number: str, unit: str, chart_ml: str
) -> None:
    amount = Amount(single(Fraction(number)), unit)
    assert tables.measures.millilitres(amount, edition) == single(Fraction(chart_ml))


@pytest.mark.parametrize(("number", "chart_ml"), [("1/3", 80), ("1/4", 60)])
def test_a_third_and_a_quarter_cup_are_printed_to_the_ten(
    tables: Tables, edition: Edition, number: str, chart_ml: int
) -> None:
    ml = tables.measures.millilitres(Amount(single(Fraction(number)), "cup"), edition).middle
    assert abs(ml - chart_ml) < 5


def test_four_tablespoons_are_nearly_a_third_of_a_cup_and_no_quarter(
    tables: Tables, edition: Edition
) -> None:
    four = 4 * tables.measures.unit_ml(edition.tablespoon)
    assert four == 80
    assert abs(four / (Fraction(250, 3)) - 1) <= Fraction(4, 100)
    assert four / Fraction(125, 2) > Fraction(5, 4)


def test_twelve_and_a_half_tablespoons_fill_a_cup(tables: Tables, edition: Edition) -> None:
    cup, tablespoon = (tables.measures.unit_ml(name) for name in (edition.cup, edition.tablespoon))
    assert cup / tablespoon == Fraction(25, 2)


def test_an_american_and_an_australian_cup_and_tablespoon_are_not_the_same(tables: Tables) -> None:
    """NIST Handbook 44, Appendix C, for the US ones: 236.59 and 14.79 ml."""
    us, au = tables.editions["us-cups"], tables.editions["australian"]
    ratio = {
        name: tables.measures.unit_ml(getattr(au, name)) / tables.measures.unit_ml(getattr(us, name))
        for name in ("cup", "tablespoon")
    }
    assert float(ratio["cup"]) == pytest.approx(1.057, abs=0.001)
    assert float(ratio["tablespoon"]) == pytest.approx(1.353, abs=0.001)


@pytest.mark.parametrize(
    ("name", "cup_g"),
    # From memory of Australian books, which count so; GNU units' scooped cup says the same to 3 %.
    [("plain flour", 150), ("cocoa powder", 100)],
)
def test_a_cup_that_packs_is_filled_as_australian_books_count_it(
    tables: Tables, edition: Edition, name: str, cup_g: int
) -> None:
    row = tables.larder.find(name)
    assert row is not None
    density = row.density_by(edition.cup_fill)
    assert density is not None
    assert float(density.grams_per_ml * 250) == pytest.approx(cup_g, rel=0.03)


@pytest.mark.parametrize("ml", ["20", "40", "60", "125", "250", "270", "375"])
def test_what_the_chart_holds_is_printed_in_its_measures_exactly(
    tables: Tables, edition: Edition, ml: str
) -> None:
    sizes = [tables.measures.unit_ml(name) for name in (edition.teaspoon, edition.tablespoon, edition.cup)]
    chosen = choose_scoops(Fraction(ml), *sizes, fine=False, spoons_only=False)
    assert chosen is not None
    assert chosen.millilitres == Fraction(ml)
