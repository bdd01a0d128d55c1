"""Dear work, such as cards and pictures, shared among as many processes as the machine has cores."""

import multiprocessing
import os
import signal
import threading
from collections.abc import Callable, Sequence
from concurrent.futures import Future, ProcessPoolExecutor, as_completed
from concurrent.futures.process import BrokenProcessPool
from typing import Generic, Protocol, TypeVar

Made = TypeVar("Made", covariant=True)


class Task(Protocol, Generic[Made]):
    """A piece of work that can be sent to another process: values in, a value out."""

    def made(self) -> Made:
        """Do it. What it raises is raised again where the work was ordered."""


class WorkerDied(Exception):
    """A process was ended from outside, most often because the machine had no memory left."""


def worked_off(tasks: Sequence[Task[Made]], jobs: int, on_each: Callable[[], None]) -> tuple[Made, ...]:
    """The results of all tasks, in the order of the tasks, however they were shared out.

    jobs: processes; 1 does everything in this one. on_each: called as each task ends.
    Raises WorkerDied, or the first task's own exception; work that has not begun is then dropped.
    """
    if jobs == 1 or len(tasks) < 2:
        return tuple(_done_here(task, on_each) for task in tasks)
    pool = ProcessPoolExecutor(
        max_workers=min(jobs, len(tasks)),
        # Spawned processes inherit neither the lock of the build nor the threads of a progress bar.
        mp_context=multiprocessing.get_context("spawn"),
        initializer=_begin_work,
    )
    try:
        ordered = [pool.submit(_make, task) for task in tasks]
        for each in as_completed(ordered):
            each.result()
            on_each()
        return tuple(_result(each) for each in ordered)
    except BrokenProcessPool as problem:
        raise WorkerDied from problem
    finally:
        pool.shutdown(cancel_futures=True)


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
