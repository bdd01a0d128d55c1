"""Stages of boiled sugar against published tables, and against the boiling points of GNU units."""

import shutil
import subprocess
from fractions import Fraction

import pytest

from sitegen.kitchen.sugar import SugarStage, SugarStages
from sitegen.kitchen.temperatures import fahrenheit_of
from sitegen.source.tables import read_tables


@pytest.fixture(scope="module")
def sugar() -> SugarStages:
    return read_tables()[0].sugar


def stage(sugar: SugarStages, name: str) -> SugarStage:
    return next(row for row in sugar.stages if row.name == name)


def boiling_point_c(percent: str) -> float:
    """Degrees C at which a syrup of so much sugar boils at sea level."""
    program = shutil.which("units")
    if program is None:
        pytest.fail("GNU units is missing: install the package 'units'")
    asked = [program, "--terse", f"sugar_conc_bpe({percent})", "K"]
    said = subprocess.run(asked, capture_output=True, text=True, check=True)
    return 100 + float(said.stdout)


# Published candy-stage tables in degrees F (eight compared; they differ by up to 7 F at the edges).
@pytest.mark.parametrize(
    ("name", "from_f", "to_f"),
    [
        ("thread", 223, 234),
        ("soft ball", 234, 241),
        ("firm ball", 244, 248),
        ("hard ball", 250, 266),
        ("soft crack", 270, 290),
        ("hard crack", 295, 310),
        ("light caramel", 320, 338),
        ("dark caramel", 338, 360),
    ],
)
def test_a_stage_lies_where_the_tables_print_it(
    sugar: SugarStages, name: str, from_f: int, to_f: int
) -> None:
    row = stage(sugar, name)
    assert abs(fahrenheit_of(row.from_c) - from_f) <= 1
    assert abs(fahrenheit_of(row.to_c) - to_f) <= 1


# The share of sugar that the tables print beside a stage, and the boiling point that GNU units 2.22
# (definitions.units, sugar_conc_bpe) gives for it; within so many degrees C of the stage.
@pytest.mark.parametrize(
    ("name", "percent", "within_c"),
    [
        ("thread", "80", 0),
        ("soft ball", "85", 0),
        ("firm ball", "87", 2),
        ("hard ball", "92", 0),
        ("soft crack", "95", 0),
        ("hard crack", "99", 5),  # the last per cent moves the boiling point by 20 degrees
    ],
)
def test_a_syrup_of_the_stages_sugar_boils_in_it(
    sugar: SugarStages, name: str, percent: str, within_c: int
) -> None:
    row, boils = stage(sugar, name), boiling_point_c(percent)
    assert float(row.from_c) - within_c <= boils <= float(row.to_c) + within_c


@pytest.mark.parametrize(
    ("celsius", "percent"),
    [  # GNU units, the other way round: the boiling points of these syrups
        (104, "66"),
        (110, "80.8"),
        (118, "87.8"),
        (121, "89.4"),
        (130, "92.7"),
        (143, "95.8"),
    ],
)
def test_a_hotter_syrup_is_a_later_stage(sugar: SugarStages, celsius: int, percent: str) -> None:
    assert boiling_point_c(percent) == pytest.approx(celsius, abs=0.3)
    names = [row.name for row in sugar.stages]
    found = sugar.names_of(Fraction(celsius), Fraction(celsius))
    expected = {104: [], 110: ["thread"], 118: ["firm ball"], 121: ["hard ball"], 130: ["hard ball"]}
    assert list(found) == expected.get(celsius, ["soft crack"])
    assert sorted(found, key=names.index) == list(found)


# Common practice: what a cook boils a syrup to, and the word for it.
@pytest.mark.parametrize(
    ("use", "celsius", "name"),
    [
        ("fondant and fudge", 114, "soft ball"),
        ("Italian meringue", 118, "firm ball"),
        ("nougat", 125, "hard ball"),
        ("pulled taffy", 138, "soft crack"),
        ("brittle", 149, "hard crack"),
        ("dipping choux", 168, "light caramel"),
        ("caramel sauce", 175, "dark caramel"),
    ],
)
def test_a_use_has_its_stage(sugar: SugarStages, use: str, celsius: int, name: str) -> None:
    assert sugar.names_of(Fraction(celsius), Fraction(celsius)) == (name,), use


def test_stages_rise_and_never_overlap(sugar: SugarStages) -> None:
    pairs = list(zip(sugar.stages, sugar.stages[1:], strict=False))
    assert all(lower.from_c < lower.to_c <= upper.from_c for lower, upper in pairs)


@pytest.mark.parametrize("celsius", [40, 71, 82, 85, 100, 105])
def test_custard_meringue_chocolate_and_jam_have_no_stage(sugar: SugarStages, celsius: int) -> None:
    assert sugar.names_of(Fraction(celsius), Fraction(celsius)) == ()
