"""Written order is kept wherever it costs nothing, and everything ends as late as it may."""

from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

from hypothesis import given, reject, settings
from hypothesis import strategies as st

from sitegen.kitchen.amounts import Span
from sitegen.kitchen.method import OvenSetting
from sitegen.timing.chain import deciding_chain
from sitegen.timing.conflict import CannotPlan
from sitegen.timing.graph import Task, most_gap
from sitegen.timing.kitchens import worktop
from sitegen.timing.plan import AT_HOME, Anchor, Plan, PlannedTask, highest, plan
from sitegen.timing.problem import Gap
from sitegen.timing.search import OutOfTries, Search

OVENS = [
    None,
    None,
    OvenSetting(Fraction(160), "celsius", fan=True),
    OvenSetting(Fraction(200), "celsius", fan=True),
]
TRIES = 3000


@st.composite
def component_steps(draw: st.DrawFn, most_gaps: bool = False) -> tuple[Task, ...]:
    """Two to four components of one to four steps; the last one may use the others."""
    tasks: list[Task] = []
    for component in range(draw(st.integers(2, 4))):
        for position in range(draw(st.integers(1, 4))):
            index = len(tasks)
            after = {index - 1} if position else set()
            if component and draw(st.integers(0, 3)) == 0:
                after.add(draw(st.integers(0, index - 1)))
            hands, wait = draw(st.integers(0, 30)), draw(st.integers(0, 60))
            most = draw(st.sampled_from([None, None, None, 5, 30])) if most_gaps else None
            tasks.append(
                Task(
                    index,
                    f"Part {component}",
                    Span(Fraction(hands), Fraction(hands)),
                    Span(Fraction(wait), Fraction(wait)),
                    draw(st.sampled_from(OVENS)),
                    frozenset(after),
                    most_gap_min=None if most is None else Fraction(most),
                )
            )
    return tuple(tasks)


def planned(tasks: tuple[Task, ...], anchor: Anchor = Anchor.END) -> Plan:
    try:
        return plan(tasks, anchor=anchor)
    except CannotPlan:
        reject()


def can_be_done(tasks: tuple[Task, ...], made: Plan, in_hand: list[PlannedTask]) -> bool:
    """Whether hands can do the steps in this order within the plan's total."""
    problem = worktop(tasks, AT_HOME, highest).problem
    turns = [
        Gap(first.task.index, then.task.index, int(first.hands_on_min)) for first, then in pairwise(in_hand)
    ]
    search = Search(replace(problem, gaps=(*problem.gaps, *turns)))
    try:
        return search.starts_within(int(made.total_min), TRIES) is not None
    except OutOfTries:
        return False


@settings(deadline=None)
@given(component_steps(most_gaps=True))
def test_no_two_neighbours_in_hand_could_be_turned_round_into_written_order(tasks: tuple[Task, ...]) -> None:
    made = planned(tasks)
    in_hand = sorted((one for one in made.tasks if one.hands_on_min), key=lambda one: one.start_min)
    for place, (earlier, later) in enumerate(pairwise(in_hand)):
        if later.task.index < earlier.task.index:
            turned = [*in_hand[:place], later, earlier, *in_hand[place + 2 :]]
            assert not can_be_done(tasks, made, turned), (earlier.task.index, later.task.index)


@settings(deadline=None)
@given(component_steps())
def test_no_step_could_end_later_while_all_others_stay(tasks: tuple[Task, ...]) -> None:
    """Nothing is finished before it must be: another step, the cook or the oven is what each step meets, or
    what comes out of the oven is taken in hand at once."""
    made = planned(tasks)
    placed = {one.task.index: one.task for one in made.tasks}
    in_hand = {one.start_min for one in made.tasks if one.hands_on_min}
    bakes = [one for one in made.tasks if one.task.oven is not None and one.wait_min]
    for one in made.tasks:
        followers = {other.start_min for other in made.tasks if one.task.index in other.task.after}
        meets_oven = one in bakes and any(
            one.end_min + change == other.free_min
            for other in bakes
            for change in (Fraction(0), AT_HOME.change_min)
        )
        meets_cook = bool(one.hands_on_min) and one.free_min in in_hand
        is_held = any(most_gap(placed[index], one.task) is not None for index in one.task.after)
        is_last = one.end_min == made.total_min
        assert one.end_min in followers or is_last or meets_cook or meets_oven or is_held


def is_held_back(task: Task, tasks: tuple[Task, ...]) -> bool:
    return any(task.index in other.after and most_gap(task, other) is not None for other in tasks)


def has_oven_after(earlier: PlannedTask, later: PlannedTask) -> bool:
    ovens = earlier.task.oven is not None and later.task.oven is not None
    return ovens and later.free_min - earlier.end_min in (0, AT_HOME.change_min)


@settings(deadline=None)
@given(component_steps(), st.sampled_from(list(Anchor)))
def test_the_deciding_chain_reaches_from_the_first_start_to_the_last_end(
    tasks: tuple[Task, ...], anchor: Anchor
) -> None:
    """Unless one in it, or a bake whose oven it or the last end waits for, is held back by a follower that
    must not be late, such as taking that bake out. A bake of no time, which stands in no chain, is left out.
    """
    tasks = tuple(task if task.wait_min.high else replace(task, oven=None) for task in tasks)
    made = planned(tasks, anchor)
    chain = deciding_chain(made)
    if made.total_min:
        held = [one for one in made.tasks if is_held_back(one.task, tasks)]
        in_chain = any(one in chain for one in held)
        last = [one for one in made.tasks if one.end_min == made.total_min]
        before_it = any(has_oven_after(one, other) for one in held for other in (*chain, *last))
        assert chain[0].start_min == 0 or in_chain or before_it
        assert chain[-1].end_min == made.total_min


@settings(deadline=None)
@given(component_steps(most_gaps=True))
def test_who_begins_at_an_hour_finishes_as_late_as_who_is_ready_by_one(tasks: tuple[Task, ...]) -> None:
    """Without nights both ends mean the same work."""
    ready, begun = planned(tasks), planned(tasks, Anchor.START)
    if ready.is_proved and begun.is_proved:
        assert begun.begins_min == 0
        assert begun.total_min == ready.total_min
