"""Work shared among processes: results in order, and a clear end when a process dies."""

import os
import signal
import time
from dataclasses import dataclass

import pytest

from sitegen.release.workers import WorkerDied, Workers


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
class Who:
    """The process that does it."""

    def made(self) -> int:
        time.sleep(0.05)  # long enough for every process to get one
        return os.getpid()


@dataclass(frozen=True)
class Fail:
    def made(self) -> int:
        raise ValueError("burnt")


@pytest.mark.parametrize("jobs", [1, 2])
def test_results_come_in_the_order_of_the_tasks(jobs: int) -> None:
    told: list[int] = []
    with Workers(jobs) as workers:
        squares = workers.worked_off([Square(number) for number in range(6)], lambda: told.append(1))
    assert squares == (0, 1, 4, 9, 16, 25)
    assert len(told) == 6


def test_a_process_that_is_killed_ends_the_work_with_a_reason() -> None:
    with Workers(2) as workers, pytest.raises(WorkerDied):
        workers.worked_off([Square(2), Kill(), Square(3)], lambda: None)


@pytest.mark.parametrize("jobs", [1, 2])
def test_what_a_task_raises_is_raised_where_the_work_was_ordered(jobs: int) -> None:
    with Workers(jobs) as workers, pytest.raises(ValueError, match="burnt"):
        workers.worked_off([Square(1), Fail()], lambda: None)


def test_processes_stay_for_the_work_that_follows() -> None:
    with Workers(2) as workers:
        workers.make_ready(Who())
        first, second = (workers.worked_off([Who()] * 6, lambda: None) for _ in range(2))
    assert set(second) <= set(first)
    assert os.getpid() not in first


def test_what_making_ready_raises_shows_in_the_work_itself() -> None:
    with Workers(2) as workers:
        workers.make_ready(Fail())
        assert workers.worked_off([Square(2), Square(3)], lambda: None) == (4, 9)
