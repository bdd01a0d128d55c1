"""Whether jobs that must go through one pair of hands can all be done in time."""

from collections.abc import Iterable
from heapq import heapify, heappop, heappush


def all_in_time(jobs: Iterable[tuple[int, int, int]]) -> bool:
    """Whether each job can be done between its earliest start and its latest end, one at a time.

    jobs: (earliest start, latest end, length). Jobs may be interrupted here, so that True proves nothing and
    False proves that no order will do.
    Source: Jackson's preemptive schedule, the earliest due date first (J. R. Jackson, 1955).
    """
    coming = sorted(jobs, reverse=True)
    begun: list[tuple[int, int]] = []
    now = coming[-1][0] if coming else 0
    while coming or begun:
        if not begun:
            now = max(now, coming[-1][0])
        while coming and coming[-1][0] <= now:
            _, due, length = coming.pop()
            heappush(begun, (due, length))
        due, left = begun[0]
        next_start = coming[-1][0] if coming else now + left
        if now + left > next_start:
            begun[0] = (due, left - (next_start - now))
            heapify(begun)
            now = next_start
            continue
        heappop(begun)
        now += left
        if now > due:
            return False
    return True
