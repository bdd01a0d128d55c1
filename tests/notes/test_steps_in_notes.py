"""What the words of a method say of oven, time and cue goes into the keys of a step."""

import pytest

from sitegen.notes.facts import facts_in, facts_of_cells
from sitegen.notes.heats_in_notes import heats_in
from sitegen.notes.steps import NotedStep, Ovens, steps_in
from sitegen.notes.times_in_notes import times_in
from sitegen.notes.values import Lore


def steps(text: str, lore: Lore, oven: str = "") -> list[NotedStep]:
    ovens = Ovens(lore.context.tables.ovens, None)
    ovens.now = oven
    return list(steps_in(text, 1, ovens))


HEATS = {
    "Oven 180 C / 160 fan / gas 4.": "160 C fan",
    "Preheat oven to 350°F (177°C)": "350 F",
    "180C/350F": "180 C conventional",
    "190C/gas 5": "190 C conventional",
    "Bake at 180°C (160°C fan)": "160 C fan",
    "gas mark 4": "gas 4",
    "gas 1/2 for an hour": "gas 1/2",
    "Bake 180 (fan 160) 35 min": "160 C fan",
    "200C (fan) for 10 min": "200 C fan",
    "180 °C (top/bottom heat)": "180 C conventional",
    "oven on to 180 degrees (160 fan)": "160 C fan",
    "heat the oven to 325 degrees": "325 F",
    "bake at 350 for 20 minutes": "350 F",
    "oven 180C": "180 C",
}


@pytest.mark.parametrize("written", HEATS)
def test_an_oven_is_the_one_that_the_words_name(written: str, lore: Lore) -> None:
    """180 C with gas 4 beside it is conventional, since both are the same heat; 180 C alone says no oven."""
    heats = next(heats_in(written))
    assert heats.oven(lore.context.tables.ovens) == HEATS[written]


TIMES = {
    "50-55 mins": "50-55 min",
    "18 to 20 minutes": "18-20 min",
    "1 1/2 hrs": "1 h 30 min",
    "half an hour": "30 min",
    "an hour and a half": "1 h 30 min",
    "1 hour 15 minutes": "1 h 15 min",
    "a couple of minutes": "2 min",
    "35–40 minutes": "35-40 min",
    "2 days": "2 days",
}


@pytest.mark.parametrize("written", TIMES)
def test_a_time_is_put_on_a_clock(written: str) -> None:
    assert [one.text for one in times_in(f"leave it {written} or so")] == [TIMES[written]]


def test_bake_has_the_oven_that_was_set_before(lore: Lore) -> None:
    (step,) = steps("Press into the pan and bake for 18 to 20 minutes, until light golden.", lore, "350 F")
    assert step == NotedStep("Press into the pan and bake.", 1, "350 F", "", "18-20 min", "light golden")


def test_an_oven_of_its_own_goes_first(lore: Lore) -> None:
    (step,) = steps("Bake 22-25 minutes at 350°F, until set.", lore, "160 C fan")
    assert (step.text, step.oven, step.wait, step.until) == ("Bake.", "350 F", "22-25 min", "set")


def test_two_waits_are_two_steps(lore: Lore) -> None:
    chill, bake = steps("Chill for 1 hour, then bake at 180C fan for 20 minutes.", lore)
    assert (chill.wait, chill.heat, bake.wait, bake.oven) == ("1 h", "fridge", "20 min", "180 C fan")


def test_work_is_hands_on_and_stays_in_words(lore: Lore) -> None:
    (step,) = steps("Cream the butter and sugar for 5 minutes.", lore)
    assert (step.hands_on, step.wait) == ("5 min", "")
    assert "5 minutes" in step.text


@pytest.mark.parametrize(
    "text", ["Gas 1 for 4 hrs approx.", "Bake 160 fan, 30-35 min.", "Oven 160 fan 20 min"]
)
def test_a_time_behind_an_oven_is_baked_and_taken_out_of_the_words(text: str, lore: Lore) -> None:
    (step,) = steps(text, lore)
    assert step.text == "Bake."
    assert step.oven
    assert step.wait


def test_no_time_is_made_up(lore: Lore) -> None:
    (step,) = steps("Fold in the flour.", lore)
    assert step == NotedStep("Fold in the flour.", 1)


@pytest.mark.parametrize(
    "text",
    [
        "I do this in my stand mixer and it takes around 5 minutes.",
        "The mix will keep for 5 minutes.",
    ],
)
def test_a_time_that_no_verb_governs_is_no_wait(text: str, lore: Lore) -> None:
    (step,) = steps(text, lore)
    assert step.wait == ""


def test_a_cue_with_another_deed_behind_it_stays_in_words(lore: Lore) -> None:
    (step,) = steps("Whisk until smooth, then fold in the flour.", lore)
    assert step.until == ""


def test_a_cue_with_a_temperature_stays_in_words(lore: Lore) -> None:
    (step,) = steps("Heat the syrup until it reads 118C.", lore)
    assert (step.until, step.oven) == ("", "")


@pytest.mark.parametrize(
    "step", ["Bake at 160C fan for 20 minutes.", "Chill for 1 hour.", "Prove 45 minutes", "Rest 10 min"]
)
def test_a_step_with_a_time_is_never_taken_for_a_fact_about_the_whole(step: str, lore: Lore) -> None:
    assert facts_in(step, lore) == ()


def test_times_side_by_side_are_facts(lore: Lore) -> None:
    facts = facts_of_cells(("Makes 9", "Prep 15 minutes", "Bake 20-22 minutes"), lore)
    assert (facts[0].key, facts[0].value) == ("makes", "9 pieces")
    assert [fact.reason for fact in facts[1:]] == ["times are worked out from the steps"] * 2
