"""Measures against the program GNU units (`units`), which has its own table of them."""

import shutil
import subprocess
from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import Amount, single
from sitegen.kitchen.measures import Measures
from sitegen.source.tables import read_tables


@pytest.fixture(scope="module")
def measures() -> Measures:
    return read_tables()[0].measures


def converted(from_unit: str, to_unit: str) -> float:
    """How many of one are in the other, as GNU units says."""
    program = shutil.which("units")
    if program is None:
        pytest.fail("GNU units is missing: install the package 'units'")
    said = subprocess.run(
        [program, "--terse", "--digits", "15", from_unit, to_unit], capture_output=True, text=True, check=True
    )
    return float(said.stdout)


@pytest.mark.parametrize(
    ("ours", "theirs"),
    [
        ("metric_teaspoon", "brteaspoon"),
        ("metric_dessertspoon", "brdessertspoon"),
        ("metric_tablespoon", "brtablespoon"),
        ("metric_teaspoon", "australiateaspoon"),
        ("australian_tablespoon", "australiatablespoon"),
        ("metric_cup", "metriccup"),
        ("us_teaspoon", "usteaspoon"),
        ("us_tablespoon", "ustablespoon"),
        ("us_cup", "uscup"),
        ("us_fluid_ounce", "usfloz"),
        ("us_pint", "uspint"),
        ("us_quart", "usquart"),
        ("us_gallon", "usgallon"),
        ("us_label_cup", "legalcup"),
        ("us_label_tablespoon", "legaltablespoon"),
        ("imperial_fluid_ounce", "brfloz"),
        ("imperial_pint", "brpint"),
        ("imperial_gallon", "brgallon"),
        ("liter", "litre"),
    ],
)
def test_a_volume_is_that_of_gnu_units(measures: Measures, ours: str, theirs: str) -> None:
    assert float(measures.unit_ml(ours)) == pytest.approx(converted(theirs, "ml"), rel=1e-9)


@pytest.mark.parametrize(
    ("ours", "theirs"), [("oz", "oz"), ("lb", "lb"), ("kg", "kg"), ("mg", "mg"), ("stick", "stickbutter")]
)
def test_a_weight_is_that_of_gnu_units(measures: Measures, ours: str, theirs: str) -> None:
    grams = measures.grams(Amount(single(1), ours)).middle
    assert float(grams) == pytest.approx(converted(theirs, "g"), rel=1e-9)


@pytest.mark.parametrize(("ours", "theirs"), [("in", "inch"), ("mm", "mm"), ("cm", "cm")])
def test_a_length_is_that_of_gnu_units(measures: Measures, ours: str, theirs: str) -> None:
    cm = measures.centimetres(Amount(single(1), ours)).middle
    assert float(cm) == pytest.approx(converted(theirs, "cm"), rel=1e-9)


@pytest.mark.parametrize(
    ("name", "method", "theirs"),
    [
        ("plain flour", "scooped", "flour_scooped"),
        ("plain flour", "sifted", "flour_sifted"),
        ("strong white flour", "spooned", "breadflour_spooned"),
        ("strong white flour", "sifted", "breadflour_sifted"),
        ("cake flour", "spooned", "cakeflour_spooned"),
        ("cake flour", "sifted", "cakeflour_sifted"),
        ("cocoa powder", "scooped", "cocoa_scooped"),
        ("cocoa powder", "sifted", "cocoa_sifted"),
    ],
)
def test_a_cup_filled_another_way_is_that_of_gnu_units(name: str, method: str, theirs: str) -> None:
    row = read_tables()[0].larder.find(name)
    assert row is not None
    ours = {density.method: density.grams_per_ml for density in row.densities}[method]
    assert float(ours) == pytest.approx(converted(theirs, "g/ml"), rel=1e-9)


# Where USDA and GNU units both weigh a thing, they are within 10 %: the method differs, not the thing.
@pytest.mark.parametrize(
    ("name", "theirs"),
    [
        ("plain flour", "flour_spooned"),
        ("granulated sugar", "sugar"),
        ("icing sugar", "powdered_sugar"),
        ("soft light brown sugar", "brownsugar_light"),
        ("soft dark brown sugar", "brownsugar_dark"),
        ("unsalted butter", "butter"),
        ("white vegetable fat", "shortening"),
        ("sunflower oil", "oil"),
        ("whole milk", "milk"),
        ("whipping cream", "heavycream"),
        ("soured cream", "sourcream"),
        ("honey", "honey"),
        ("black treacle", "molasses"),
        ("glucose syrup", "cornsyrup"),
        ("cornflour", "cornstarch"),
        ("cocoa powder", "cocoa_spooned"),
        ("alkalised cocoa powder", "dutchcocoa_spooned"),
        ("baking powder", "baking_powder"),
        ("fine salt", "salt"),
    ],
)
def test_the_usual_density_is_within_a_tenth_of_gnu_units(name: str, theirs: str) -> None:
    row = read_tables()[0].larder.find(name)
    assert row is not None
    assert row.density is not None
    assert float(row.density.grams_per_ml) == pytest.approx(converted(theirs, "g/ml"), rel=0.10)


@pytest.mark.parametrize(
    ("us", "exact"),
    [("us_gallon", "3785.411784"), ("us_cup", "236.5882365"), ("us_fluid_ounce", "29.5735295625")],
)
def test_us_measures_are_exact_fractions(measures: Measures, us: str, exact: str) -> None:
    """NIST Handbook 44, Appendix C: the gallon is 231 cubic inches."""
    assert measures.unit_ml(us) == Fraction(exact)
