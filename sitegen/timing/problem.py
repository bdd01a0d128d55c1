"""Work to be put on a clock, as whole numbers: lengths, demands on hands and ovens, gaps between starts.

The time unit is whatever the caller chose (`plan.py` takes the largest that makes all its figures whole).
"""

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True)
class Resource:
    """What several tasks want. capacity: how much of it there is; change: time lost between two states."""

    name: str
    capacity: int = 1
    change: int = 0


@dataclass(frozen=True)
class Demand:
    """What a task takes of a resource, from `offset` after its start, for `length`.

    resource: its place in `Problem.resources`. amount: how much of it, at most its capacity.
    state: tasks that want it in different states (an oven at 160 and at 200 degrees) never share it.
    """

    task: int
    resource: int
    offset: int
    length: int
    amount: int = 1
    state: str = ""


@dataclass(frozen=True)
class Gap:
    """`then` starts at least `lag` after the start of `first`; a negative lag bounds the gap from above."""

    first: int
    then: int
    lag: int


@dataclass(frozen=True)
class Problem:
    """lengths: of each task. fixed: task -> its start, for what is no work (a night) but takes a resource.

    unchanged: twos of tasks between which no resource loses time to a change of state.
    """

    lengths: tuple[int, ...]
    resources: tuple[Resource, ...]
    demands: tuple[Demand, ...]
    gaps: tuple[Gap, ...]
    fixed: Mapping[int, int] = field(default_factory=dict, hash=False)
    unchanged: frozenset[frozenset[int]] = frozenset()

    def span(self, starts: tuple[int, ...]) -> int:
        """When the last piece of work ends."""
        return max(
            (start + self.lengths[i] for i, start in enumerate(starts) if i not in self.fixed), default=0
        )


def backwards(problem: Problem, end: int = 0) -> Problem:
    """The same work seen from its end: a task begins when it would have ended, counted back.

    end: of the work on its own clock; what is fixed is counted back from there.
    A plan of it that begins everything early is a plan of the work that ends everything late.
    """
    lengths = problem.lengths
    return Problem(
        lengths=lengths,
        resources=problem.resources,
        demands=tuple(
            Demand(
                one.task,
                one.resource,
                lengths[one.task] - one.offset - one.length,
                one.length,
                one.amount,
                one.state,
            )
            for one in problem.demands
        ),
        gaps=tuple(
            Gap(gap.then, gap.first, gap.lag + lengths[gap.then] - lengths[gap.first]) for gap in problem.gaps
        ),
        unchanged=problem.unchanged,
        fixed={task: end - start - lengths[task] for task, start in problem.fixed.items()},
    )
