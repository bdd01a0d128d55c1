"""Steps without a time, and bakes without a cue."""

from collections.abc import Iterator

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.kitchen.recipe import Recipe
from sitegen.kitchen.tables import Tables

NO_TIME = FaultCode(
    "no-time",
    Severity.ADVICE,
    "A step with neither hands-on nor waiting time: the plan takes it as no time at all.",
    "Add `hands-on`, `wait` or both.",
    good="        hands-on: 5 min\n        fill: 2/3\n",
    bad="        fill: 2/3\n",
)
NO_CUE = FaultCode(
    "no-cue",
    Severity.ADVICE,
    "A step in the oven with no sign to look for: every oven is different, and the cue rules over the clock.",
    "Add `until: the tops spring back when pressed`.",
    good="        until: the tops spring back when pressed\n",
    bad="",
)
NO_BAKE = FaultCode(
    "no-baking-time",
    Severity.ADVICE,
    "A step in the oven with no waiting time.",
    "Add `wait: 22-24 min`.",
    good="        wait: 22-24 min\n",
    bad="        hands-on: 1 min\n",
)
CODES = (NO_TIME, NO_CUE, NO_BAKE)


def steps_have_times(recipe: Recipe, _tables: Tables) -> Iterator[Fault]:
    """Each step says how long it takes, and each bake what to look for."""
    for component in recipe.components:
        for number, step in enumerate(component.steps, 1):
            which = f"step {number} of '{component.title}'"
            if step.hands_on_min is None and step.wait_min is None:
                yield NO_TIME.fault(step.at, f"{which} says no time")
            if step.oven is not None and step.wait_min is None:
                yield NO_BAKE.fault(step.at, f"{which} says not how long it bakes")
            if step.oven is not None and not step.until:
                yield NO_CUE.fault(step.at, f"{which} says not what to look for")


CHECKS = (steps_have_times,)
