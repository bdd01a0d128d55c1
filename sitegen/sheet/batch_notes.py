"""What does not scale in proportion, said on the sheet instead of being multiplied in silence."""

from fractions import Fraction

from sitegen.kitchen.amounts import Span
from sitegen.kitchen.bake_times import BakeWindow, bake_window
from sitegen.kitchen.recipe import IngredientLine, Recipe
from sitegen.kitchen.rounding import rounded_minutes
from sitegen.kitchen.scaling import Batch
from sitegen.kitchen.tin_scaling import TinRule
from sitegen.sheet.amounts import duration_text
from sitegen.sheet.setting import Setting

LARGE_BATCH = 4
SMALL_BATCH = Fraction(1, 2)
SAME_DEPTH = Fraction(1, 20)
MUCH_DEEPER = Fraction(6, 5)
SLOW_TO_RISE = Fraction(3, 2)
RULE_NOTES = {
    TinRule.DEPTH: "Scaled by the area of the tins, so that the mixture lies as deep as in the tested one.",
    TinRule.FILL: "Scaled by what the tins hold, so that the new one is as full as the tested one.",
    TinRule.AS_IT_IS: "The tins are within a tenth of each other: the recipe goes in as it is.",
}


def batch_notes(recipe: Recipe, batch: Batch, setting: Setting) -> tuple[str, ...]:
    """Notes for a batch that is not the tested one; none for the tested batch.

    Sources: heat goes in by diffusion, so that time follows the depth (American Journal of Physics 74 (6),
    2006); the rest is common practice.
    """
    if batch.factor == 1 and batch.depth_ratio == 1:
        return ()
    notes = (
        "Worked out from the tested batch. Work that is done piece by piece is counted anew; other times are "
        "those of the test.",
        *_rule_notes(batch),
        *_bake_notes(recipe, batch.depth_ratio, setting),
        *_size_notes(batch.factor),
    )
    return tuple(setting.respelled(note) for note in notes)


def _rule_notes(batch: Batch) -> tuple[str, ...]:
    return (RULE_NOTES[batch.tin_rule],) if batch.tin_rule else ()


def _bake_notes(recipe: Recipe, depth_ratio: Fraction, setting: Setting) -> tuple[str, ...]:
    steps = (step for part in recipe.components for step in part.steps)
    bakes = [step.wait_min for step in steps if step.oven and step.wait_min]
    if not bakes:
        return ()
    if abs(depth_ratio - 1) <= SAME_DEPTH:
        return (
            "At the same depth the baking time is nearly the same: begin to look at the early end, trust the "
            "cue, and bake what does not fit as a second load.",
        )
    notes = [_window_note(max(bakes, key=lambda span: span.high), depth_ratio)]
    if depth_ratio > MUCH_DEEPER:
        notes.append("For a much deeper tin set the oven 10–15\u00a0°C (20–25\u00a0°F) lower.")
    if depth_ratio > SLOW_TO_RISE and _is_leavened(recipe, setting):
        notes.append(
            "So deep a cake rises slowly and may sink: take a tenth off the leavening, and test first."
        )
    return tuple(notes)


def _is_leavened(recipe: Recipe, setting: Setting) -> bool:
    lines = (line for part in recipe.components for line in part.lines if isinstance(line, IngredientLine))
    rows = (setting.row(line.chosen) for line in lines)
    return any("leavening" in row.roles for row in rows if row is not None)


def _window_note(bake: Span, depth_ratio: Fraction) -> str:
    """The window to expect, and when to look first."""
    window = bake_window(bake, depth_ratio)
    word = "deeper" if depth_ratio > 1 else "shallower"
    percent = round(abs(depth_ratio - 1) * 100)
    return (
        f"In this tin the mixture lies about {percent}\u00a0% {word}: where the recipe bakes for "
        f"{duration_text(bake)}, expect {_window_text(window)}. Begin to look after "
        f"{_minutes_text(window.first_look)}, and trust the cue before the clock. An estimate: the time "
        "grows with up to the square of the depth, and crust, tin and oven count too."
    )


def _window_text(window: BakeWindow) -> str:
    return duration_text(Span(rounded_minutes(window.expected.low), rounded_minutes(window.expected.high)))


def _minutes_text(minutes: Fraction) -> str:
    rounded = rounded_minutes(minutes)
    return duration_text(Span(rounded, rounded))


def _size_notes(factor: Fraction) -> tuple[str, ...]:
    if factor > LARGE_BATCH:
        return (
            "A very large batch: begin with three quarters of spices, extracts and alcohol, and taste; try "
            "the leavening out first; mix in bowls that are no more than half full.",
        )
    if factor < SMALL_BATCH:
        return (
            "A very small batch: weigh to a tenth of a gram, use a small pan and bowl, and go by cue and "
            "temperature, never by minutes.",
        )
    return ()
