"""Steps that no order of work can keep, in a baker's words."""

from collections.abc import Sequence

from sitegen.faults import Place
from sitegen.kitchen.recipe import Component
from sitegen.sheet.amounts import joined
from sitegen.timing.conflict import DAY, NIGHT, CannotPlan
from sitegen.timing.graph import TaskCircle

UNKNOWN_PLACE = Place("")
MOST_NAMED = 5


class StepsInConflict(Exception):
    """Steps whose bounds on waiting no order of work can keep.

    names: (component, its step from 1). at: the place of the first. wanted: see `CannotPlan`, with 'ovens'
    where the steps want the oven at two settings. is_certain: False where the search gave up.
    """

    def __init__(
        self,
        names: tuple[tuple[str, int], ...],
        at: Place,
        wanted: tuple[str, ...] = (),
        is_certain: bool = True,
    ) -> None:
        super().__init__(names)
        self.names = names
        self.at = at
        self.wanted = wanted
        self.is_certain = is_certain


class TooManySteps(Exception):
    """More steps than are set on one clock. count: of the recipe and its base recipes."""

    def __init__(self, count: int) -> None:
        super().__init__(count)
        self.count = count


CANNOT_BE_PLANNED = (TaskCircle, StepsInConflict, TooManySteps)
"""What a sheet raises for a recipe whose work has no order."""


def steps_in_conflict(components: Sequence[Component], problem: CannotPlan) -> StepsInConflict:
    """The same with the names of steps. components: as planned, so that a step's place among all is known."""
    numbered = [
        (component.title, number, step)
        for component in components
        for number, step in enumerate(component.steps, start=1)
    ]
    found = [numbered[task] for task in problem.tasks]
    ovens = {step.oven for _, _, step in found if step.oven is not None}
    wanted = tuple("ovens" if each == "oven" and len(ovens) > 1 else each for each in problem.wanted)
    names = tuple((title, number) for title, number, _ in found)
    return StepsInConflict(names, found[0][2].at if found else UNKNOWN_PLACE, wanted, problem.is_certain)


def conflict_text(problem: StepsInConflict) -> str:
    """What stands in each other's way, in a sentence without a full stop."""
    told = tuple(f"step {number} of '{component}'" for component, number in problem.names[:MOST_NAMED])
    more = len(problem.names) - len(told)
    steps = joined((*told, f"{more} more") if more else told)
    if DAY in problem.wanted:
        return f"no day between two nights off is long enough for {steps}"
    if not problem.is_certain:
        return f"no order of work was found that keeps every `within` and `holds`: {steps}"
    wanted = problem.wanted[0] if problem.wanted else ""
    why = _REASONS.get(wanted, f"they want the {wanted} at one time")
    return f"no order of work keeps every `within` and `holds`: {steps}; {why}"


_REASONS = {
    "": "what stands between them takes longer",
    NIGHT: "they cannot wait for the end of a night off",
    "hands": "they want the same hands at one time",
    "ovens": "they want the oven at two settings at one time",
}
