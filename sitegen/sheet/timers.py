"""What a timer for a step's own wait is set to, in whole seconds."""

from fractions import Fraction

from sitegen.kitchen.method import Step
from sitegen.sheet.amounts import duration_text
from sitegen.sheet.values import StepTimer

LONGEST_MIN = Fraction(12 * 60)
"""Nobody keeps a page open for longer; such a wait ends at an hour of the clock."""
SECONDS_IN_MINUTE = 60


def step_timer(step: Step) -> StepTimer | None:
    """The timer of a step's wait, of one load where it bakes in several; None without one, or over 12 h."""
    wait = step.wait_min
    if not wait or not 0 < wait.high <= LONGEST_MIN:
        return None
    rings = (wait.low, wait.high) if wait.low else (wait.high,)
    seconds = (round(minutes * SECONDS_IN_MINUTE) for minutes in rings)
    return StepTimer(duration_text(wait), tuple(dict.fromkeys(seconds)))
