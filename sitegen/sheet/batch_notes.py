"""What does not scale in proportion, said on the sheet instead of being multiplied in silence."""

from fractions import Fraction

from sitegen.kitchen.recipe import Recipe, Span
from sitegen.kitchen.rounding import rounded_minutes
from sitegen.kitchen.scaling import Batch
from sitegen.sheet.amounts import duration_text
from sitegen.sheet.setting import Setting

LARGE_BATCH = 4
SMALL_BATCH = Fraction(1, 2)
SAME_DEPTH = Fraction(1, 20)
MUCH_DEEPER = Fraction(6, 5)
FIRST_LOOK = Fraction(4, 5)


def batch_notes(recipe: Recipe, batch: Batch, setting: Setting) -> tuple[str, ...]:
    """Notes for a batch that is not the tested one; none for the tested batch.

    Sources: heat goes in by diffusion, so that time follows the depth (American Journal of Physics 74 (6),
    2006); the rest is common practice.
    """
    if batch.factor == 1 and batch.depth_ratio == 1:
        return ()
    notes = (
        "Worked out from the tested batch. Times are those of the test: shaping, piping and filling piece "
        "by piece grow with the number.",
        *_bake_notes(recipe, batch.depth_ratio),
        *_size_notes(batch.factor),
    )
    return tuple(setting.respelled(note) for note in notes)


def _bake_notes(recipe: Recipe, depth_ratio: Fraction) -> tuple[str, ...]:
    steps = (step for part in recipe.components for step in part.steps)
    bakes = [step.wait_min for step in steps if step.oven and step.wait_min]
    if not bakes:
        return ()
    if abs(depth_ratio - 1) <= SAME_DEPTH:
        return (
            "At the same depth the baking time is nearly the same: begin to look at the early end, trust the "
            "cue, and bake what does not fit as a second load.",
        )
    return _depth_notes(max(bakes, key=lambda span: span.high), depth_ratio)


def _depth_notes(bake: Span, depth_ratio: Fraction) -> tuple[str, ...]:
    """The window between the first and the second power of the depth, and when to look first."""
    ends = (
        bake.low * depth_ratio,
        bake.low * depth_ratio**2,
        bake.high * depth_ratio,
        bake.high * depth_ratio**2,
    )
    window = Span(rounded_minutes(min(ends)), rounded_minutes(max(ends)))
    look = rounded_minutes(min(ends) * FIRST_LOOK)
    word = "deeper" if depth_ratio > 1 else "shallower"
    percent = round(abs(depth_ratio - 1) * 100)
    notes: tuple[str, ...] = (
        f"In this tin the batter lies about {percent}\u00a0% {word}: where the recipe bakes for "
        f"{duration_text(bake)}, expect {duration_text(window)}. Begin to look after "
        f"{duration_text(Span(look, look))}, and trust the cue before the clock. An estimate.",
    )
    if depth_ratio > MUCH_DEEPER:
        notes += ("For a much deeper tin set the oven 10–15\u00a0°C (20–25\u00a0°F) lower.",)
    return notes


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
