"""What a step says of its time, its tools and what may wait, as its file writes it."""

from fractions import Fraction
from pathlib import Path

import pytest

from sitegen.kitchen.amounts import Span
from sitegen.kitchen.method import Step
from sitegen.source.library import read_content

SITE = """
name: Tansy Row
tagline: Baking taught one careful step at a time
address: https://tansyrow.example/
subscribers-address: https://tansyrow.example/table/
language: en-GB
written-in: british-metric
egg-size: medium
editions: [british-metric]
papers: [a4]
time-zone: Europe/London
"""
BUNS = """
title: Buns
summary: Small and round.
makes: 12 buns
components:
  Dough:
    ingredients:
      - 300 g strong white flour
      - 180 g water
    method:
      - text: Knead {strong white flour} with {water}.
        hands-on: 10 min
"""


def told(root: Path, *keys: str) -> tuple[Step | None, list[tuple[str, str, int]]]:
    """The only step with these keys more, and the faults: code, sentence, column of the mark."""
    folder = root / "content" / "recipes" / "buns"
    folder.mkdir(parents=True)
    (root / "content" / "site.yaml").write_text(SITE)
    (folder / "recipe.yaml").write_text(BUNS + "".join(f"        {key}\n" for key in keys))
    content = read_content(root)
    steps = [step for recipe in content.recipes for part in recipe.components for step in part.steps]
    faults = [(fault.code, fault.sentence, fault.place.column) for fault in content.faults]
    return (steps[0] if steps else None), faults


def test_a_step_says_what_it_keeps_busy_where_it_waits_and_how_long_it_may(tmp_path: Path) -> None:
    step, faults = told(
        tmp_path,
        "wait: 1 h-1 h 30 min",
        "tools: [mixer, scraper]",
        "waits-in: proofing box",
        "heat: fridge",
        "within: 10 min",
        "holds: 2 days chilled",
        "grows: yes",
    )
    assert faults == []
    assert step is not None
    assert step.wait_min == Span(Fraction(60), Fraction(90))
    assert (step.tools, step.waits_in, step.heat, step.grows) == (
        ("mixer", "scraper"),
        "proofing box",
        "fridge",
        True,
    )
    assert (step.within_min, step.holds_min, step.holds_how) == (10, 2880, "chilled")


def test_a_step_that_says_nothing_keeps_nothing_busy(tmp_path: Path) -> None:
    step, _ = told(tmp_path)
    assert step is not None
    assert (step.tools, step.waits_in, step.heat, step.grows) == ((), "", "", False)
    assert (step.wait_min, step.within_min, step.holds_min) == (None, None, None)


@pytest.mark.parametrize(
    ("key", "text"),
    [
        ("wait", "22-"),
        ("wait", "overnight"),
        ("within", "-10 min"),
        ("holds", "-2 days"),
        ("holds", "chilled"),
    ],
)
def test_a_time_that_no_clock_can_take_is_a_fault_at_its_place(tmp_path: Path, key: str, text: str) -> None:
    _, faults = told(tmp_path, f"{key}: {text}")
    assert faults == [("duration", f"'{text}' cannot be put on a clock", len(f"        {key}: ") + 1)]


def test_a_heat_that_no_kitchen_has_is_a_fault(tmp_path: Path) -> None:
    _, faults = told(tmp_path, "heat: moon")
    assert ("unknown-word", "'moon' is none of: hob, fridge, freezer", 15) in faults
