"""Work shared among processes: results in order, and a clear end when a process dies."""

import os
import signal
import time
from concurrent.futures import BrokenExecutor, Future, ThreadPoolExecutor
from dataclasses import dataclass
from typing import Any

import pytest

from sitegen.release.workers import Made, Task, WorkerDied, Workers


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
        squares = workers.worked_off([Square(number) for number in range(20)], lambda: told.append(1))
    assert squares == tuple(number**2 for number in range(20))
    assert len(told) == 20


def test_a_process_that_is_killed_ends_the_work_with_a_reason() -> None:
    with Workers(2) as workers:
        workers.make_ready(Square(1))
        with pytest.raises(WorkerDied):
            workers.worked_off([Square(2), Kill(), Square(3)], lambda: None)


@pytest.mark.parametrize("jobs", [1, 2])
def test_what_a_task_raises_is_raised_where_the_work_was_ordered(jobs: int) -> None:
    with Workers(jobs) as workers:
        workers.make_ready(Square(1))
        with pytest.raises(ValueError, match="burnt"):
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


def test_for_little_work_no_process_is_begun() -> None:
    with Workers(2) as workers:
        assert set(workers.worked_off([Who()] * 3, lambda: None)) == {os.getpid()}


class Counting:
    """A pool that does everything itself, and sees how much was handed out at most."""

    size = 2
    deaths = (BrokenExecutor,)

    def __init__(self) -> None:
        self._pool = ThreadPoolExecutor(1)
        self._out: list[Future[Any]] = []
        self.most_out = 0

    def submit(self, task: Task[Made]) -> "Future[Made]":
        future = self._pool.submit(task.made)
        self._out = [each for each in (*self._out, future) if not each.done()]
        self.most_out = max(self.most_out, len(self._out))
        return future

    def has_anybody(self) -> bool:
        return True

    def end(self, at_once: bool) -> None:
        self._pool.shutdown(wait=not at_once)


def test_a_long_list_is_handed_out_little_by_little() -> None:
    pool = Counting()
    with Workers(1, cluster=lambda: pool) as workers:
        assert len(workers.worked_off([Square(number) for number in range(400)], lambda: None)) == 400
    assert 0 < pool.most_out <= 8


class Deserted:
    """A pool whose processes have all gone, so that nothing ever ends."""

    size = 1
    deaths = (BrokenExecutor,)

    def submit(self, _task: Task[Made]) -> "Future[Made]":
        return Future()

    def has_anybody(self) -> bool:
        return False

    def end(self, at_once: bool) -> None:
        """Nobody to part with."""


def test_where_nobody_is_left_the_work_ends_with_a_reason(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("sitegen.release.workers._PATIENCE_S", 0)
    with Workers(1, cluster=Deserted) as workers, pytest.raises(WorkerDied):
        workers.worked_off([Square(1)] * 9, lambda: None)
