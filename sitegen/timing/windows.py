"""Windows in which tasks may start, narrowed by the gaps between them."""

from collections.abc import Sequence

from sitegen.timing.problem import Gap, Problem

NO_GAP = -(10**9)


class Windows:
    """The earliest and latest start of each task. A copy is cheap; `gaps` are kept by `Network`."""

    __slots__ = ("earliest", "latest")

    def __init__(self, earliest: list[int], latest: list[int]) -> None:
        self.earliest = earliest
        self.latest = latest

    def copy(self) -> "Windows":
        return Windows(self.earliest[:], self.latest[:])

    @classmethod
    def until(cls, problem: Problem, deadline: int) -> "Windows":
        """All of the time from 0 to a deadline, by which every task ends; fixed ones at their start."""
        fixed, lengths = problem.fixed, problem.lengths
        return cls(
            [fixed.get(task, 0) for task in range(len(lengths))],
            [fixed.get(task, deadline - length) for task, length in enumerate(lengths)],
        )


class Network:
    """Gaps between starts, to which a search adds and from which it takes away, last in first out."""

    def __init__(self, tasks: int, gaps: Sequence[Gap]) -> None:
        self._after: list[list[tuple[int, int]]] = [[] for _ in range(tasks)]
        self._before: list[list[tuple[int, int]]] = [[] for _ in range(tasks)]
        for gap in gaps:
            self.add(gap.first, gap.then, gap.lag)

    def add(self, first: int, then: int, lag: int) -> None:
        self._after[first].append((then, lag))
        self._before[then].append((first, lag))

    def take_last(self, first: int, then: int) -> None:
        """Take away the gap that was added last; it must be one between these two."""
        self._after[first].pop()
        self._before[then].pop()

    def narrow(self, windows: Windows, moved: list[int]) -> bool:
        """Narrow all windows by the gaps, beginning at tasks whose windows have moved.

        Returns False where a window closes: then no plan keeps all gaps.
        """
        earliest, latest = windows.earliest, windows.latest
        while moved:
            task = moved.pop()
            start, end = earliest[task], latest[task]
            if start > end:
                return False
            for then, lag in self._after[task]:
                if start + lag > earliest[then]:
                    earliest[then] = start + lag
                    moved.append(then)
            for first, lag in self._before[task]:
                if end - lag < latest[first]:
                    latest[first] = end - lag
                    moved.append(first)
        return True


def longest_gaps(problem: Problem) -> list[list[int]] | None:
    """The least time from each start to each other that all gaps together ask for; NO_GAP for none.

    None where gaps contradict each other (a step that must follow itself).
    Source: longest paths between all pairs (R. W. Floyd, 1962).
    """
    tasks = range(len(problem.lengths))
    table = [[0 if one == other else NO_GAP for other in tasks] for one in tasks]
    for gap in problem.gaps:
        table[gap.first][gap.then] = max(table[gap.first][gap.then], gap.lag)
    for middle in tasks:
        onward = [(then, lag) for then, lag in enumerate(table[middle]) if lag != NO_GAP]
        for row in table:
            so_far = row[middle]
            if so_far == NO_GAP:
                continue
            for then, lag in onward:
                if so_far + lag > row[then]:
                    row[then] = so_far + lag
    return None if any(table[task][task] > 0 for task in tasks) else table
