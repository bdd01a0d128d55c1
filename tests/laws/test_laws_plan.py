"""What holds for any plan of any steps."""

from dataclasses import replace
from datetime import UTC, datetime, time, timedelta
from fractions import Fraction
from itertools import combinations

from hypothesis import given, reject, settings
from hypothesis import strategies as st

from sitegen.kitchen.amounts import Span
from sitegen.kitchen.method import OvenSetting
from sitegen.timing.chain import deciding_chain, free_gaps
from sitegen.timing.conflict import CannotPlan
from sitegen.timing.graph import Task
from sitegen.timing.kitchens import Night
from sitegen.timing.nights import nights_before
from sitegen.timing.plan import AT_HOME, Anchor, Plan, PlannedTask, forget_plans, lowest, plan

OVENS = [
    None,
    OvenSetting(Fraction(160), "celsius", fan=True),
    OvenSetting(Fraction(200), "celsius", fan=True),
]
TOOLS = [frozenset[str](), frozenset({"mixer"})]


@st.composite
def task_graphs(draw: st.DrawFn, most_gaps: bool = False) -> tuple[Task, ...]:
    """Up to 12 steps; with greatest gaps where they are asked for."""
    tasks = []
    for index in range(draw(st.integers(1, 12))):
        after = draw(st.frozensets(st.integers(0, index - 1), max_size=3)) if index else frozenset()
        low, more = draw(st.integers(0, 60)), draw(st.integers(0, 20))
        hands_on = Fraction(draw(st.integers(0, 40)))
        gap = draw(st.sampled_from([None, None, 0, 15, 60])) if most_gaps else None
        tasks.append(
            Task(
                index,
                f"Part {index}",
                Span(hands_on, hands_on),
                Span(Fraction(low), Fraction(low + more)),
                draw(st.sampled_from(OVENS)),
                after,
                draw(st.sampled_from(TOOLS)),
                None if gap is None else Fraction(gap),
            )
        )
    return tuple(tasks)


def planned(tasks: tuple[Task, ...]) -> Plan:
    """The plan, where there is one."""
    try:
        return plan(tasks)
    except CannotPlan:
        reject()


def overlap(one: tuple[Fraction, Fraction], other: tuple[Fraction, Fraction]) -> bool:
    return max(one[0], other[0]) < min(one[1], other[1])


def hands(one: PlannedTask) -> tuple[Fraction, Fraction]:
    return one.start_min, one.free_min


@settings(deadline=None)
@given(task_graphs(most_gaps=True))
def test_no_two_hands_on_tasks_overlap(tasks: tuple[Task, ...]) -> None:
    assert not any(overlap(hands(one), hands(other)) for one, other in combinations(planned(tasks).tasks, 2))


@settings(deadline=None)
@given(task_graphs(most_gaps=True))
def test_the_oven_holds_one_load_and_has_time_to_change(tasks: tuple[Task, ...]) -> None:
    bakes = [one for one in planned(tasks).tasks if one.task.oven and one.wait_min]
    for one, other in combinations(bakes, 2):
        change = AT_HOME.change_min if one.task.oven != other.task.oven else 0
        assert one.end_min + change <= other.free_min or other.end_min + change <= one.free_min


@settings(deadline=None)
@given(task_graphs(most_gaps=True))
def test_every_gap_is_kept(tasks: tuple[Task, ...]) -> None:
    placed = {one.task.index: one for one in planned(tasks).tasks}
    for task in tasks:
        for index in task.after:
            gap = placed[task.index].start_min - placed[index].end_min
            most = placed[index].task.most_gap_min
            assert gap >= 0
            assert most is None or gap <= most


@settings(deadline=None)
@given(task_graphs())
def test_the_total_lies_between_its_bound_and_all_tasks_in_a_row(tasks: tuple[Task, ...]) -> None:
    made = plan(tasks)
    changes = AT_HOME.change_min * sum(task.oven is not None for task in tasks)
    in_a_row = sum((task.hands_on_min.high + task.wait_min.high for task in tasks), changes)
    assert made.hands_on_min <= made.bound_min <= made.total_min <= in_a_row


@settings(deadline=None, max_examples=50)
@given(task_graphs())
def test_shorter_waits_never_take_longer(tasks: tuple[Task, ...]) -> None:
    longest, shortest = plan(tasks), plan(tasks, pick=lowest)
    if longest.is_proved and shortest.is_proved:
        assert shortest.total_min <= longest.total_min


@settings(deadline=None)
@given(task_graphs(most_gaps=True))
def test_either_end_may_stand_fast(tasks: tuple[Task, ...]) -> None:
    backwards = planned(tasks)
    forwards = plan(tasks, anchor=Anchor.START)
    if backwards.is_proved and forwards.is_proved:
        assert forwards.total_min == backwards.total_min


@settings(deadline=None)
@given(task_graphs(), st.integers(1, 500))
def test_times_do_not_depend_on_the_unit(tasks: tuple[Task, ...], parts: int) -> None:
    """A step of no hands and a sliver of a wait, alone, makes all figures count in slivers."""
    sliver = Span(Fraction(1, parts), Fraction(1, parts))
    nothing = Span(Fraction(0), Fraction(0))
    more = (*tasks, Task(len(tasks), "Sliver", nothing, sliver, None, frozenset()))
    assert plan(more).total_min == max(plan(tasks).total_min, Fraction(1, parts))


@settings(deadline=None)
@given(task_graphs())
def test_the_deciding_chain_has_no_holes(tasks: tuple[Task, ...]) -> None:
    made = plan(tasks)
    chain = deciding_chain(made)
    assert (chain[-1].end_min if chain else 0) == made.total_min
    assert all(one.free_min <= other.free_min for one, other in combinations(chain, 2))


@settings(deadline=None)
@given(task_graphs())
def test_nobody_works_in_a_free_stretch(tasks: tuple[Task, ...]) -> None:
    made = plan(tasks)
    for stretch in free_gaps(made):
        assert stretch[1] - stretch[0] > 15
        assert not any(overlap(hands(one), stretch) for one in made.tasks)


@settings(deadline=None, max_examples=40)
@given(task_graphs(), st.integers(0, 900), st.integers(60, 600))
def test_nobody_works_at_night(tasks: tuple[Task, ...], before: int, length: int) -> None:
    night = Night(Fraction(-before - length), Fraction(-before))
    made = plan(tasks, nights=[night])
    for one in made.tasks:
        start, end = one.start_min - made.total_min, one.free_min - made.total_min
        assert not overlap((start, end), (night.start_min, night.end_min))


@settings(deadline=None, max_examples=40)
@given(
    task_graphs(),
    st.datetimes(datetime(2026, 1, 10), datetime(2027, 1, 10)),
    st.integers(0, 400),
)
def test_a_day_later_the_plan_is_the_same(tasks: tuple[Task, ...], hour: datetime, days: int) -> None:
    """On a wall whose clocks never change."""
    rest = (time(22), time(7))
    one = plan(tasks, nights=nights_before(hour.replace(tzinfo=UTC), *rest))
    later = plan(tasks, nights=nights_before(hour.replace(tzinfo=UTC) + timedelta(days=days), *rest))
    assert one == later


@settings(deadline=None)
@given(task_graphs(most_gaps=True))
def test_the_same_tasks_give_the_same_plan(tasks: tuple[Task, ...]) -> None:
    made = planned(tasks)
    forget_plans()
    assert plan(tuple(replace(task) for task in tasks)) == made
