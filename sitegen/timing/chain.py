"""What decides how long a plan takes, and when the cook is free in it."""

from fractions import Fraction
from itertools import pairwise

from sitegen.timing.heated import joined_stretches
from sitegen.timing.kitchens import Kitchen
from sitegen.timing.plan import AT_HOME, Plan, PlannedTask

LEAST_FREE_MIN = Fraction(15)


def deciding_chain(made: Plan, kitchen: Kitchen = AT_HOME) -> tuple[PlannedTask, ...]:
    """Tasks up to the last end, each of which begins the moment the one before lets it.

    A task lets another begin by its end where that one waits for it, or by what it frees: hands, oven, a
    tool, a space. Of several such chains the one that begins first is told: a delay in it delays all.
    What holds a task back from its follower's side, a bake that must be taken out in time, is not followed:
    the chain then begins with that task, or with work that it leaves time for.
    """
    chains: dict[int, tuple[PlannedTask, ...]] = {}
    for one in sorted(made.tasks, key=_turn):
        # What has its chain already is what comes before in turn.
        earlier = (other for other in made.tasks if other.task.index in chains)
        before = (chains[other.task.index] for other in earlier if _lets_begin(other, one, kitchen))
        # Long work that ends at the oven's door may have begun before the bake that it waits for.
        chains[one.task.index] = min(((one,), *((*chain, one) for chain in before)), key=_begins)
    to_the_end = [chains[one.task.index] for one in made.tasks if one.end_min == made.total_min]
    decides = min(to_the_end, key=_begins, default=())
    return tuple(one for one in decides if one.end_min > one.start_min)


def free_gaps(made: Plan) -> tuple[tuple[Fraction, Fraction], ...]:
    """Stretches of over 15 minutes in which nobody's hands are wanted: (start, end) in minutes."""
    busy = [(one.start_min, one.free_min) for one in made.tasks if one.hands_on_min]
    edges = [(Fraction(0), Fraction(0)), *joined_stretches(busy), (made.total_min, made.total_min)]
    gaps = ((before[1], after[0]) for before, after in pairwise(edges))
    return tuple((start, end) for start, end in gaps if end - start > LEAST_FREE_MIN)


def _begins(chain: tuple[PlannedTask, ...]) -> tuple[Fraction, int]:
    """The earliest chain first, and of two the longer."""
    return chain[0].start_min, -len(chain)


def _turn(one: PlannedTask) -> tuple[Fraction, Fraction, int]:
    """Where a task stands among those that let each other begin.

    By the moment when its hands are free, not by its start: work that ends at the oven's door just as the
    oven comes free may have begun before the bake that it waits for.
    """
    return one.free_min, one.start_min, one.task.index


def _lets_begin(earlier: PlannedTask, later: PlannedTask, kitchen: Kitchen) -> bool:
    """Whether a task begins just when another lets it, whose turn comes before."""
    follows = earlier.task.index in later.task.after and earlier.end_min == later.start_min
    handed = bool(earlier.hands_on_min and later.hands_on_min) and earlier.free_min == later.start_min
    return follows or handed or _frees_the_oven(earlier, later, kitchen) or _frees_a_tool(earlier, later)


def _frees_the_oven(earlier: PlannedTask, later: PlannedTask, kitchen: Kitchen) -> bool:
    if earlier.task.oven is None or later.task.oven is None:
        return False
    change = kitchen.change_min if earlier.task.oven != later.task.oven else 0
    return earlier.end_min + change == later.free_min


def _frees_a_tool(earlier: PlannedTask, later: PlannedTask) -> bool:
    """Whether something that both keep busy, at work or waiting, passes from one to the other."""
    return any(
        earlier.busy_min(name)[1] == later.busy_min(name)[0] for name in earlier.task.kit & later.task.kit
    )
