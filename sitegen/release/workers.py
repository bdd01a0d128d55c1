"""Dear work, such as cards and pictures, shared among as many processes as the machine has cores."""

import multiprocessing
import os
import signal
import threading
from collections.abc import Callable, Sequence
from concurrent.futures import Future, ProcessPoolExecutor, as_completed
from concurrent.futures.process import BrokenProcessPool
from contextlib import suppress
from types import TracebackType
from typing import Generic, Protocol, TypeVar

Made = TypeVar("Made", covariant=True)


class Task(Protocol, Generic[Made]):
    """A piece of work that can be sent to another process: values in, a value out."""

    def made(self) -> Made:
        """Do it. What it raises is raised again where the work was ordered."""


class WorkerDied(Exception):
    """A process was ended from outside, most often because the machine had no memory left."""


class Workers:
    """Processes that begin with the first work for them and stay to the end of a `with`.

    What one has imported and read for one piece of work it has for all that follow.
    """

    def __init__(self, jobs: int) -> None:
        """jobs: processes; 1 does everything in this one."""
        self._jobs = jobs
        self._pool: ProcessPoolExecutor | None = None

    def __enter__(self) -> "Workers":
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if self._pool is not None:
            self._pool.shutdown(cancel_futures=True)

    def make_ready(self, task: Task[object]) -> None:
        """Have every process begin with this task, while this one goes on. What it raises is lost."""
        if self._jobs > 1:
            with suppress(BrokenProcessPool):  # the work that follows says so
                for _ in range(self._jobs):
                    self._begun().submit(_make, task)

    def worked_off(self, tasks: Sequence[Task[Made]], on_each: Callable[[], None]) -> tuple[Made, ...]:
        """The results of all tasks, in the order of the tasks, however they were shared out.

        on_each: called as each task ends. Raises WorkerDied, or the first task's own exception; work that
        has not begun is then dropped.
        """
        if self._jobs == 1 or len(tasks) < 2:
            return tuple(_done_here(task, on_each) for task in tasks)
        try:
            ordered = [self._begun().submit(_make, task) for task in tasks]
            for each in as_completed(ordered):
                each.result()
                on_each()
            return tuple(_result(each) for each in ordered)
        except BrokenProcessPool as problem:
            raise WorkerDied from problem

    def _begun(self) -> ProcessPoolExecutor:
        if self._pool is None:
            self._pool = ProcessPoolExecutor(
                max_workers=self._jobs,
                # Spawned processes inherit neither the lock of the build nor the threads of a progress bar.
                mp_context=multiprocessing.get_context("spawn"),
                initializer=_begin_work,
            )
        return self._pool


def _done_here(task: Task[Made], on_each: Callable[[], None]) -> Made:
    result = task.made()
    on_each()
    return result


def _make(task: Task[Made]) -> Made:
    return task.made()


def _result(each: "Future[Made]") -> Made:
    return each.result()


def _begin_work() -> None:
    """Leave Ctrl-C to the process that ordered the work, and end with it even if it is killed."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    parent = multiprocessing.parent_process()
    if parent is not None:
        threading.Thread(target=_end_with, args=(parent.join,), daemon=True).start()


def _end_with(parent_ended: Callable[[], object]) -> None:
    parent_ended()
    os._exit(1)
