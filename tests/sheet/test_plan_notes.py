"""What a plan says beside its rows."""

from dataclasses import replace
from datetime import datetime
from fractions import Fraction
from zoneinfo import ZoneInfo

from sitegen.kitchen.method import OvenSetting, Step
from sitegen.kitchen.recipe import Component, Keeps
from sitegen.sheet.clock_words import PlanClock
from sitegen.sheet.plan_notes import plan_notes
from sitegen.timing.graph import tasks_of
from sitegen.timing.kitchens import Kitchen
from sitegen.timing.plan import plan
from tests.sheet.pantry import minutes, says, setting

FAN_160 = OvenSetting(Fraction(160), "celsius", fan=True)
FAN_200 = OvenSetting(Fraction(200), "celsius", fan=True)
BEAT = says("Beat.", hands_on_min=minutes(20))
BAKE = says("Bake.", wait_min=minutes(40), oven=FAN_160)
CAKE = Component("Cake", (), (BEAT, BAKE))
SATURDAY_9_AM = datetime(2026, 12, 5, 9, tzinfo=ZoneInfo("Europe/London"))


def notes(
    *components: Component, edition: str = "british-metric", clock: PlanClock | None = None
) -> list[str]:
    made = plan(tasks_of(components, {}))
    told = plan_notes(made, components, setting(edition), Kitchen(), clock or PlanClock())
    return [note.replace("\N{NO-BREAK SPACE}", " ") for note in told]


def test_the_oven_is_switched_on_in_time() -> None:
    assert notes(CAKE)[0] == ("Switch the oven on at +0:05: 160 °C fan (180 °C conventional, 350 °F, gas 4).")


def test_a_bake_that_comes_first_is_told_before_the_work() -> None:
    at_once = replace(CAKE, steps=(says("Fill.", hands_on_min=minutes(5)), BAKE))
    assert notes(at_once)[0].startswith("Switch the oven on 10 min before you begin: 160 °C fan")
    told = notes(at_once, clock=PlanClock(SATURDAY_9_AM))[0]
    assert told.startswith("Switch the oven on at 08:50, before you begin: 160 °C fan")


def test_another_temperature_is_told_at_its_hour() -> None:
    second = Component("Tart", (), (BEAT, replace(BAKE, oven=FAN_200)))
    assert notes(CAKE, second, clock=PlanClock(SATURDAY_9_AM))[1].startswith(
        "Set the oven at 10:00 to 200 °C fan"
    )


def test_free_stretches_are_told_with_the_day_where_it_changes() -> None:
    starter = Component("Starter", (), (says("Stir.", hands_on_min=minutes(5), wait_min=minutes(720)),))
    loaf = Component("Loaf", (), (replace(BEAT, after=("Starter",)), BAKE))
    friday = PlanClock(SATURDAY_9_AM.replace(day=4, hour=22))
    assert "Your hands are free from 22:05 to 10:05 on Saturday and from 10:25 to the end." in notes(
        starter, loaf, clock=friday
    )


def test_a_stretch_of_a_quarter_of_an_hour_is_no_free_time() -> None:
    """Over 15 minutes, not 15."""
    assert not any(note.startswith("Your hands") for note in notes(Component("Part", (), (waits(15), BEAT))))
    assert any(note.startswith("Your hands") for note in notes(Component("Part", (), (waits(16), BEAT))))


def waits(wait: int) -> Step:
    return says("Soak.", hands_on_min=minutes(5), wait_min=minutes(wait))


def test_the_chain_that_decides_the_total_is_told_by_steps() -> None:
    glaze = Component("Glaze", (), (says("Stir.", hands_on_min=minutes(5)),))
    finish = Component("Finish", (), (says("Join.", hands_on_min=minutes(10), after=("Cake", "Glaze")),))
    assert (
        "What decides the total: Cake (steps 1–2) and Finish (step 4). A delay there delays everything."
        in notes(CAKE, glaze, finish)
    )


def test_a_plan_of_one_component_need_not_say_what_decides_it() -> None:
    assert not any("decides" in note for note in notes(CAKE))


def test_what_keeps_can_be_made_the_day_before() -> None:
    cream = Component("Cream", (), (BEAT,), keeping=(Keeps("fridge", minutes(48)),))
    assert "Can be made the day before: Cream." in notes(cream, CAKE)


def test_a_plan_without_time_says_nothing() -> None:
    assert notes(Component("Part", (), (says("Look."),))) == []
