"""What holds for any plan of any steps."""

from fractions import Fraction
from itertools import combinations

from hypothesis import given, settings
from hypothesis import strategies as st

from sitegen.kitchen.recipe import OvenSetting, Span
from sitegen.timing.graph import Task
from sitegen.timing.plan import AT_HOME, plan

OVENS = [
    None,
    OvenSetting(Fraction(160), "celsius", fan=True),
    OvenSetting(Fraction(200), "celsius", fan=True),
]


@st.composite
def task_graphs(draw: st.DrawFn) -> list[Task]:
    count = draw(st.integers(1, 14))
    tasks = []
    for index in range(count):
        after = draw(st.frozensets(st.integers(0, index - 1), max_size=3)) if index else frozenset()
        low, more = draw(st.integers(0, 60)), draw(st.integers(0, 20))
        hands_on = Fraction(draw(st.integers(0, 40)))
        tasks.append(
            Task(
                index,
                "Part",
                Span(hands_on, hands_on),
                Span(Fraction(low), Fraction(low + more)),
                draw(st.sampled_from(OVENS)),
                after,
            )
        )
    return tasks


@settings(deadline=None)
@given(task_graphs())
def test_no_two_hands_on_tasks_overlap_and_the_oven_holds_one_load(tasks: list[Task]) -> None:
    for one, other in combinations(plan(tasks).tasks, 2):
        assert (
            one.free_min <= other.start_min
            or other.free_min <= one.start_min
            or one.hands_on_min == 0
            or other.hands_on_min == 0
        )
        if one.task.oven and other.task.oven and one.wait_min and other.wait_min:
            assert one.end_min <= other.free_min or other.end_min <= one.free_min


@settings(deadline=None)
@given(task_graphs())
def test_every_task_waits_for_its_forerunners(tasks: list[Task]) -> None:
    placed = {one.task.index: one for one in plan(tasks).tasks}
    for task in tasks:
        assert all(placed[index].end_min <= placed[task.index].start_min for index in task.after)


@settings(deadline=None)
@given(task_graphs())
def test_the_total_lies_between_the_longest_chain_and_all_tasks_in_a_row(tasks: list[Task]) -> None:
    made = plan(tasks)
    changes = AT_HOME.change_min * sum(task.oven is not None for task in tasks)
    in_a_row = sum((task.hands_on_min.high + task.wait_min.high for task in tasks), changes)
    assert made.hands_on_min <= made.total_min <= in_a_row


@settings(deadline=None)
@given(task_graphs())
def test_the_same_tasks_give_the_same_plan(tasks: list[Task]) -> None:
    assert plan(tasks) == plan(list(tasks))
