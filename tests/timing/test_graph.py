"""What waits for what."""

from fractions import Fraction

import pytest

from sitegen.kitchen.amounts import Span
from sitegen.kitchen.method import Reference, RefKind, Step, Words
from sitegen.kitchen.recipe import Component, PartLine
from sitegen.timing.graph import TaskCircle, tasks_of


def step(hands_on: int = 5, after: tuple[str, ...] = (), uses: str = "") -> Step:
    prose: tuple[Words | Reference, ...] = (Words("Stir."),)
    if uses:
        prose += (Reference(uses, RefKind.COMPONENT, target=uses),)
    return Step(prose, hands_on_min=Span(Fraction(hands_on), Fraction(hands_on)), after=after)


def part(source: str) -> PartLine:
    return PartLine(f"half of {source}", source, Fraction(1, 2), None, from_base=False)


def test_a_step_follows_the_one_before_it_in_its_component() -> None:
    tasks = tasks_of([Component("Sponge", (), (step(), step(), step()))], {})
    assert [set(task.after) for task in tasks] == [set(), {0}, {1}]


def test_components_that_share_nothing_do_not_wait_for_each_other() -> None:
    tasks = tasks_of([Component("Sponge", (), (step(),)), Component("Icing", (), (step(),))], {})
    assert [set(task.after) for task in tasks] == [set(), set()]


def test_the_step_that_names_a_component_waits_for_its_last_step() -> None:
    icing = Component("Icing", (), (step(), step(uses="Sponge")))
    tasks = tasks_of([Component("Sponge", (), (step(), step())), icing], {})
    assert tasks[2].after == frozenset()
    assert tasks[3].after == {1, 2}


def test_a_part_line_that_no_step_names_makes_the_first_step_wait() -> None:
    flavoured = Component("Lemon half", (part("Batter"),), (step(), step()))
    tasks = tasks_of([Component("Batter", (), (step(),)), flavoured], {})
    assert [set(task.after) for task in tasks] == [set(), {0}, {1}]


def test_a_base_recipe_is_finished_by_its_last_component() -> None:
    filling = Component("Filling", (part("Base cream"),), (step(),))
    tasks = tasks_of(
        [Component("Boiled part", (), (step(),)), Component("Cream part", (), (step(),)), filling],
        {"Base cream": "Cream part"},
    )
    assert tasks[2].after == {1}


def test_after_adds_to_what_a_step_waits_for() -> None:
    assembly = Component("Assembly", (), (step(after=("Sponge", "Icing")),))
    tasks = tasks_of([Component("Sponge", (), (step(),)), Component("Icing", (), (step(),)), assembly], {})
    assert tasks[2].after == {0, 1}


def test_components_that_wait_for_each_other_are_refused_by_name() -> None:
    with pytest.raises(TaskCircle) as caught:
        tasks_of(
            [Component("Sponge", (), (step(uses="Icing"),)), Component("Icing", (), (step(uses="Sponge"),))],
            {},
        )
    assert set(caught.value.components) == {"Sponge", "Icing"}
