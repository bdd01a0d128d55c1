"""The water for a dough."""

from fractions import Fraction

import pytest

from sitegen.kitchen.dough_temperature import (
    DoughTemperatures,
    WaterAdvice,
    friction_of,
    ice_share,
    measured_friction,
    water_for,
    water_temperature,
)
from sitegen.kitchen.recipe import DoughAim

TABLE = DoughTemperatures(
    friction={"stand mixer": Fraction(10), "by hand": Fraction(3)},
    room=Fraction(22),
    rooms=(Fraction(18),),
    tap=Fraction(12),
    hottest=Fraction(43),
    coldest=Fraction(2),
)


def test_a_straight_dough_goes_by_three_factors_and_a_preferment_adds_one() -> None:
    assert water_temperature(Fraction(25), Fraction(21), Fraction(20), Fraction(9)) == 25
    assert water_temperature(Fraction(25), Fraction(21), Fraction(20), Fraction(9), Fraction(18)) == 32


def test_the_friction_that_was_measured_gives_the_water_back() -> None:
    friction = measured_friction(Fraction(27), Fraction(21), Fraction(20), Fraction(30), Fraction(18))
    assert friction == 19
    assert water_temperature(Fraction(27), Fraction(21), Fraction(20), friction, Fraction(18)) == 30


def test_ice_brings_tap_water_down() -> None:
    """1 kg at 12 C down to 2 C: 10 kcal, which 109 g of ice take up in melting and warming to 2 C."""
    share = ice_share(Fraction(12), Fraction(2))
    assert share * 80 + share * 2 == (1 - share) * 10


@pytest.mark.parametrize(
    ("wanted", "room", "advice"),
    [
        (25, 21, WaterAdvice(Fraction(30))),
        (28, 18, WaterAdvice(Fraction(43), too_hot=True)),
        (20, 28, WaterAdvice(Fraction(2), ice=Fraction(11, 92))),
    ],
)
def test_water_is_neither_hotter_than_43_nor_colder_than_2(
    wanted: int, room: int, advice: WaterAdvice
) -> None:
    assert water_for(DoughAim(Fraction(wanted)), Fraction(room), has_preferment=False, table=TABLE) == advice


def test_what_the_baker_says_of_flour_and_preferment_goes_first() -> None:
    aim = DoughAim(Fraction(25), flour=Fraction(18), preferment=Fraction(10), friction=Fraction(9))
    assert water_for(aim, Fraction(21), has_preferment=True, table=TABLE) == WaterAdvice(Fraction(42))
    assert water_for(aim, Fraction(21), has_preferment=False, table=TABLE) == WaterAdvice(Fraction(27))


def test_unsaid_friction_is_that_of_hands() -> None:
    assert friction_of(DoughAim(Fraction(25)), TABLE) == 3
