"""Whether one pair of hands can do jobs in time: earliest start, latest end, length."""

import pytest

from sitegen.timing.single_file import all_in_time


@pytest.mark.parametrize(
    ("jobs", "fits"),
    [
        ([], True),
        ([(0, 10, 10)], True),
        ([(0, 9, 10)], False),
        ([(0, 30, 10), (0, 30, 10), (0, 30, 10)], True),
        ([(0, 29, 10), (0, 29, 10), (0, 29, 10)], False),
        ([(0, 100, 50), (20, 30, 10)], True),
        ([(0, 100, 50), (20, 29, 10)], False),
        ([(50, 60, 10), (0, 10, 10)], True),
    ],
)
def test_jobs_in_time(jobs: list[tuple[int, int, int]], fits: bool) -> None:
    assert all_in_time(jobs) is fits
