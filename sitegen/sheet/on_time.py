"""Which steps of a plan must not be missed, and why."""

from dataclasses import dataclass

from sitegen.kitchen.amounts import single
from sitegen.sheet.amounts import duration_text
from sitegen.timing.graph import most_gap
from sitegen.timing.plan import Plan, PlannedTask

OUT_OF_OVEN = "out of the oven"
ALL_WAITS = "the rest waits for it"


@dataclass(frozen=True)
class OnTime:
    """why: in a few words. is_called: whether no work in hand leads to it, so that it could be forgotten."""

    why: str
    is_called: bool


def on_time(made: Plan) -> dict[int, OnTime]:
    """Index of a step -> why it must begin when it does.

    What comes out of the oven or must be used soon; and every step before which the cook's hands were free,
    since a plan that ends everything late has no minute to give away. What begins the work needs no reason.
    """
    by_index = {one.task.index: one for one in made.tasks}
    worked_until = {one.free_min for one in made.tasks if one.hands_on_min}
    found = {}
    for one in made.tasks:
        before = _bound_by(one, by_index)
        is_idle = one.start_min not in worked_until
        if before is not None:
            follows_on = bool(before.hands_on_min) and before.end_min == before.free_min == one.start_min
            found[one.task.index] = OnTime(_why(before), not follows_on)
        elif is_idle and (one.hands_on_min or one.wait_min):
            found[one.task.index] = OnTime(ALL_WAITS if one.start_min else "", is_called=True)
    return found


def _bound_by(one: PlannedTask, by_index: dict[int, PlannedTask]) -> PlannedTask | None:
    """The step whose bound on what follows is the tightest."""
    bounds = []
    for index in sorted(one.task.after):
        most = most_gap(by_index[index].task, one.task)
        if most is not None:
            bounds.append((by_index[index].end_min + most, index))
    return by_index[min(bounds)[1]] if bounds else None


def _why(before: PlannedTask) -> str:
    most = before.task.most_gap_min
    if most is None:
        return OUT_OF_OVEN
    return f"within {duration_text(single(most))} of step {before.task.index + 1}"
