"""What can be made the day before."""

from dataclasses import replace
from fractions import Fraction

from sitegen.kitchen.amounts import Span
from sitegen.kitchen.method import Step
from sitegen.kitchen.recipe import Component, Keeps
from sitegen.timing.ahead import made_ahead

STIR = Step(())
TWO_DAYS = Keeps("fridge", Span(Fraction(48), Fraction(48)))
HALF_A_DAY = Keeps("room", Span(Fraction(12), Fraction(12)))
CREAM = Component("Cream", (), (STIR,), keeping=(TWO_DAYS,))
CAKE = Component("Cake", (), (STIR,), keeping=(TWO_DAYS,))


def test_what_keeps_a_day_can_be_made_the_day_before() -> None:
    assert made_ahead([CREAM, CAKE]) == ("Cream",)


def test_the_last_component_is_what_is_made() -> None:
    assert made_ahead([CAKE]) == ()


def test_half_a_day_or_nothing_said_is_no_day() -> None:
    short = replace(CREAM, keeping=(HALF_A_DAY,))
    assert made_ahead([short, replace(CREAM, keeping=()), CAKE]) == ()


def test_the_longest_place_counts() -> None:
    assert made_ahead([replace(CREAM, keeping=(HALF_A_DAY, TWO_DAYS)), CAKE]) == ("Cream",)


def test_what_must_be_used_within_hours_of_its_last_step_does_not_wait_for_a_night() -> None:
    whipped = replace(CREAM, steps=(STIR, replace(STIR, holds_min=Fraction(240))))
    assert made_ahead([whipped, CAKE]) == ()


def test_haste_between_its_own_steps_does_not_hinder() -> None:
    boiled = replace(CREAM, steps=(replace(STIR, within_min=Fraction(5)), STIR))
    assert made_ahead([boiled, CAKE]) == ("Cream",)
