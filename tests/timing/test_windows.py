"""Windows of starts, and the gaps that narrow them."""

from sitegen.timing.problem import Gap, Problem
from sitegen.timing.windows import NO_GAP, Network, Windows, longest_gaps

CHAIN = Problem((10, 20, 5), (), (), (Gap(0, 1, 10), Gap(1, 2, 20)))


def test_a_deadline_leaves_each_task_the_time_that_the_others_need() -> None:
    windows = Windows.until(CHAIN, deadline=40)
    assert Network(3, CHAIN.gaps).narrow(windows, [0, 1, 2])
    assert (windows.earliest, windows.latest) == ([0, 10, 30], [5, 15, 35])


def test_a_deadline_too_early_closes_a_window() -> None:
    assert not Network(3, CHAIN.gaps).narrow(Windows.until(CHAIN, deadline=34), [0, 1, 2])


def test_a_greatest_gap_pulls_the_first_task_later() -> None:
    """What follows begins within 2 of the end of a task of 10, and not before 30."""
    gaps = (Gap(0, 1, 10), Gap(1, 0, -12))
    windows = Windows([0, 30], [90, 90])
    assert Network(2, gaps).narrow(windows, [0, 1])
    assert windows.earliest == [18, 30]


def test_a_gap_that_is_taken_back_narrows_no_more() -> None:
    network = Network(2, ())
    network.add(0, 1, 50)
    network.take_last(0, 1)
    windows = Windows([0, 0], [90, 90])
    assert network.narrow(windows, [0, 1])
    assert windows.earliest == [0, 0]


def test_a_night_stands_where_it_stands() -> None:
    problem = Problem((10, 600), (), (), (), fixed={1: -700})
    windows = Windows.until(problem, deadline=100)
    assert (windows.earliest[1], windows.latest[1]) == (-700, -700)


def test_gaps_add_up_along_the_longest_way() -> None:
    table = longest_gaps(CHAIN)
    assert table is not None
    assert (table[0][2], table[2][0]) == (30, NO_GAP)


def test_gaps_that_contradict_each_other_have_no_table() -> None:
    assert longest_gaps(Problem((10, 5), (), (), (Gap(0, 1, 10), Gap(1, 0, -9)))) is None
