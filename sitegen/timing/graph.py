"""What waits for what: the steps of a recipe as a graph of tasks."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.kitchen.amounts import Span
from sitegen.kitchen.method import OvenSetting, RefKind, Step
from sitegen.kitchen.recipe import Component, PartLine

NO_TIME = Span(Fraction(0), Fraction(0))
OUT_OF_OVEN_MIN = Fraction(3)
"""Within which a cook is at the oven door. Source: common practice."""


@dataclass(frozen=True)
class Task:
    """One step, ready to be put on a clock.

    index: its number in the whole recipe, from 0, in written order. component: its title.
    hands_on_min, wait_min: minutes, exact; a step without a time counts as none.
    oven: the setting that it needs while it waits, or None. after: indices of the tasks it follows.
    tools: what its hands-on time keeps busy ('mixer'); space: what its wait does ('proofing box'), or ''.
    most_gap_min: minutes within which whatever follows it must begin; None for no bound.
    loads: how often it goes through its wait in an oven as large as the tested one; tins: in all loads.
    """

    index: int
    component: str
    hands_on_min: Span
    wait_min: Span
    oven: OvenSetting | None
    after: frozenset[int]
    tools: frozenset[str] = frozenset()
    most_gap_min: Fraction | None = None
    space: str = ""
    loads: int = 1
    tins: int = 1

    @property
    def kit(self) -> frozenset[str]:
        """Every tool and space that it keeps busy."""
        return self.tools | ({self.space} if self.space else frozenset())


def most_gap(first: Task, then: Task) -> Fraction | None:
    """Minutes within which a task must begin after one that it follows, or None.

    What comes out of an oven is taken in hand at once by the next step of its component.
    """
    is_next = then.component == first.component and then.index == first.index + 1
    if first.most_gap_min is None and first.oven is not None and first.wait_min.high and is_next:
        return OUT_OF_OVEN_MIN
    return first.most_gap_min


class TaskCircle(Exception):
    """Tasks that wait for each other.

    components: titles on the circle, in order.
    """

    def __init__(self, components: tuple[str, ...]) -> None:
        super().__init__(components)
        self.components = components


def tasks_of(components: Sequence[Component], finished_by: Mapping[str, str]) -> tuple[Task, ...]:
    """The steps of all components as tasks, in written order.

    components: in the order they are printed, those of base recipes among them.
    finished_by: title that a part line may name -> title of the component whose last step finishes it
    (a base recipe is finished by its last component; a component by itself).
    A step follows the one before it in its component; the step that uses another component, and the
    step that names it in `after`, waits for the last step of that component. A component that no step
    names makes the first step wait.
    Raises TaskCircle where components wait for each other.
    """
    last_step = _last_steps(components)
    tasks: list[Task] = []
    for component in components:
        waits = _component_waits(component, finished_by)
        for position, step in enumerate(component.steps):
            index = len(tasks)
            after = {index - 1} if position else set()
            after |= {last_step[title] for title in waits.get(position, ()) if title in last_step}
            tasks.append(
                Task(
                    index,
                    component.title,
                    step.hands_on_min or NO_TIME,
                    step.wait_min or NO_TIME,
                    step.oven,
                    frozenset(after),
                    frozenset(tool.casefold() for tool in step.tools),
                    _most_gap(step),
                    step.waits_in.casefold(),
                    step.loads,
                    step.tins,
                )
            )
    _refuse_circles(tasks)
    return tuple(tasks)


def _most_gap(step: Step) -> Fraction | None:
    """How long what a step made may wait for what follows it, as the baker says."""
    return min((most for most in (step.within_min, step.holds_min) if most is not None), default=None)


def _last_steps(components: Iterable[Component]) -> dict[str, int]:
    count = 0
    last: dict[str, int] = {}
    for component in components:
        count += len(component.steps)
        if component.steps:
            last[component.title] = count - 1
    return last


def _component_waits(component: Component, finished_by: Mapping[str, str]) -> dict[int, set[str]]:
    """Position of a step -> titles of the components that it waits for."""
    waits: dict[int, set[str]] = {}
    named: set[str] = set()
    for position, step in enumerate(component.steps):
        sources = _sources_used(component, step) | set(step.after)
        named |= sources
        waits[position] = {finished_by.get(title, title) for title in sources}
    parts = {line.source for line in component.lines if isinstance(line, PartLine)}
    waits.setdefault(0, set()).update(finished_by.get(title, title) for title in parts - named)
    return {
        position: {title for title in titles if title != component.title}
        for position, titles in waits.items()
    }


def _sources_used(component: Component, step: Step) -> set[str]:
    sources = set()
    for reference in step.references:
        if reference.kind is RefKind.COMPONENT:
            sources.add(reference.target)
        elif reference.line is not None:
            line = component.lines[reference.line]
            if isinstance(line, PartLine):
                sources.add(line.source)
    return sources


def _refuse_circles(tasks: Sequence[Task]) -> None:
    """Take away tasks that wait for nothing until none is left; what stays waits in a circle."""
    left = {task.index: set(task.after) for task in tasks}
    while left:
        free = [index for index, after in left.items() if not after & left.keys()]
        if not free:
            raise TaskCircle(_circle_among(tasks, left))
        for index in free:
            del left[index]


def _circle_among(tasks: Sequence[Task], left: Mapping[int, set[int]]) -> tuple[str, ...]:
    index = next(iter(left))
    walked: list[int] = []
    while index not in walked:
        walked.append(index)
        index = min(left[index] & left.keys())
    titles = [tasks[step].component for step in walked[walked.index(index) :]]
    return tuple(dict.fromkeys(titles))
