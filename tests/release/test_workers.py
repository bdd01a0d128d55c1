"""Work shared among processes: results in order, and a clear end when a process dies."""

import os
import signal
from dataclasses import dataclass

import pytest

from sitegen.release.workers import WorkerDied, worked_off


@dataclass(frozen=True)
class Square:
    number: int

    def made(self) -> int:
        return self.number**2


@dataclass(frozen=True)
class Kill:
    def made(self) -> int:
        os.kill(os.getpid(), signal.SIGKILL)
        return 0


@dataclass(frozen=True)
class Fail:
    def made(self) -> int:
        raise ValueError("burnt")


@pytest.mark.parametrize("jobs", [1, 2])
def test_results_come_in_the_order_of_the_tasks(jobs: int) -> None:
    told: list[int] = []
    squares = worked_off([Square(number) for number in range(6)], jobs, lambda: told.append(1))
    assert squares == (0, 1, 4, 9, 16, 25)
    assert len(told) == 6


def test_a_process_that_is_killed_ends_the_work_with_a_reason() -> None:
    with pytest.raises(WorkerDied):
        worked_off([Square(2), Kill(), Square(3)], 2, lambda: None)


@pytest.mark.parametrize("jobs", [1, 2])
def test_what_a_task_raises_is_raised_where_the_work_was_ordered(jobs: int) -> None:
    with pytest.raises(ValueError, match="burnt"):
        worked_off([Square(1), Fail()], jobs, lambda: None)
