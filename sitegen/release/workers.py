"""Dear work, such as cards and pictures, shared among as many processes as the machine has cores."""

import multiprocessing
import os
import signal
import tempfile
import threading
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import FIRST_COMPLETED, Future, ProcessPoolExecutor, wait
from concurrent.futures.process import BrokenProcessPool
from contextlib import suppress
from functools import partial
from itertools import islice
from pathlib import Path
from types import TracebackType
from typing import Generic, Protocol, TypeVar

Made = TypeVar("Made", covariant=True)


_FEW = 8
"""Pieces of work for which no process is begun: each takes a second of a core before it does anything."""

_AHEAD = 4
"""Pieces of work that are handed out for each process, so that none waits for the next."""
_PATIENCE_S = 10
"""Seconds without any result, after which it is asked whether anybody is left."""


class Task(Protocol, Generic[Made]):
    """A piece of work that can be sent to another process: values in, a value out."""

    def made(self) -> Made:
        """Do it. What it raises is raised again where the work was ordered."""


class WorkerDied(Exception):
    """A process was ended from outside, most often because the machine had no memory left."""


class Pool(Protocol):
    """Processes that are warm and take one task each at a time. size: how many there are.

    deaths: what a result raises where the process that worked on it has ended.
    """

    @property
    def size(self) -> int: ...

    @property
    def deaths(self) -> tuple[type[BaseException], ...]: ...

    def submit(self, task: Task[Made]) -> "Future[Made]":
        """Hand a task on."""

    def has_anybody(self) -> bool:
        """Whether a process is left that may end what was handed out; not asked while results come."""

    def end(self, at_once: bool) -> None:
        """Part with them. at_once: without waiting for what they are at."""


class Workers:
    """Processes that begin with the first work for them and stay to the end of a `with`.

    What one has imported and read for one piece of work it has for all that follow.
    """

    def __init__(
        self, jobs: int, temporary: Path | None = None, cluster: Callable[[], Pool] | None = None
    ) -> None:
        """jobs: processes; 1 does everything in this one. temporary: where they put temporary files, None for
        the system's folder. cluster: joins processes of other machines, which are then used instead."""
        self._joined = cluster or partial(_Processes, jobs, temporary)
        self._is_alone = jobs == 1 and cluster is None
        self._pool: Pool | None = None

    def __enter__(self) -> "Workers":
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if self._pool is not None:
            self._pool.end(at_once=kind is not None and not issubclass(kind, Exception))

    def make_ready(self, task: Task[object]) -> None:
        """Have every process begin with this task, while this one goes on. What it raises is lost."""
        if not self._is_alone:
            pool = self._begun()
            with suppress(*pool.deaths):  # the work that follows says so
                for _ in range(pool.size):
                    pool.submit(task)

    def rest(self) -> None:
        """Let the processes of this machine go, with all memory that they hold.

        Others begin with the next work that is worth it.
        """
        if isinstance(self._pool, _Processes):
            self._pool.end(at_once=False)
            self._pool = None

    def worked_off(self, tasks: Sequence[Task[Made]], on_each: Callable[[], None]) -> tuple[Made, ...]:
        """The results of all tasks, in the order of the tasks, however they were shared out.

        on_each: called as each task ends. Raises WorkerDied, or the first task's own exception; work that
        has not begun is then dropped.
        """
        if self._is_alone or len(tasks) < 2 or (self._pool is None and len(tasks) < _FEW):
            return tuple(_done_here(task, on_each) for task in tasks)
        pool = self._begun()
        try:
            results = dict(_as_made(pool, tasks, on_each))
        except pool.deaths as problem:
            raise WorkerDied from problem
        return tuple(results[number] for number in range(len(tasks)))

    def _begun(self) -> Pool:
        if self._pool is None:
            self._pool = self._joined()
        return self._pool


def _as_made(
    pool: Pool, tasks: Sequence[Task[Made]], on_each: Callable[[], None]
) -> Iterator[tuple[int, Made]]:
    """(place in the order, result) of each task as it ends. Few are handed out at a time, so that a long list
    fills no process's memory."""
    upcoming = iter(enumerate(tasks))
    waiting: dict[Future[Made], int] = {}
    try:
        while True:
            for number, task in islice(upcoming, _AHEAD * pool.size - len(waiting)):
                waiting[pool.submit(task)] = number
            if not waiting:
                return
            ended, _ = wait(waiting, _PATIENCE_S, FIRST_COMPLETED)
            if not ended and not pool.has_anybody():
                raise WorkerDied
            for each in ended:
                yield waiting.pop(each), each.result()
                on_each()
    finally:
        for each in waiting:
            each.cancel()


class _Processes:
    """Processes of this machine."""

    deaths = (BrokenProcessPool,)

    def __init__(self, jobs: int, temporary: Path | None) -> None:
        self.size = jobs
        self._others = frozenset(multiprocessing.active_children())
        self._pool = ProcessPoolExecutor(
            max_workers=jobs,
            # Spawned processes inherit neither the lock of the build nor the threads of a progress bar.
            mp_context=multiprocessing.get_context("spawn"),
            initializer=_begin_work,
            initargs=(temporary,),
        )

    def submit(self, task: Task[Made]) -> "Future[Made]":
        """Hand a task on. A process that is begun for it hears no Ctrl-C until it leaves that to this one."""
        held = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
        try:
            return self._pool.submit(made, task)
        finally:
            signal.pthread_sigmask(signal.SIG_SETMASK, held)

    def has_anybody(self) -> bool:
        """Always: a process that ends is told by what it worked on."""
        return True

    def end(self, at_once: bool) -> None:
        """Whoever stops a build waits for no card that is being printed."""
        if at_once:
            for process in multiprocessing.active_children():
                if process not in self._others:
                    process.kill()
        self._pool.shutdown(cancel_futures=True)


def _done_here(task: Task[Made], on_each: Callable[[], None]) -> Made:
    result = task.made()
    on_each()
    return result


def made(task: Task[Made]) -> Made:
    """What is called in the other process."""
    return task.made()


def _begin_work(temporary: Path | None) -> None:
    """Leave Ctrl-C to the process that ordered the work, and end with it even if it is killed."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    tempfile.tempdir = str(temporary) if temporary else None
    parent = multiprocessing.parent_process()
    if parent is not None:
        threading.Thread(target=_end_with, args=(parent.join,), daemon=True).start()


def _end_with(parent_ended: Callable[[], object]) -> None:
    parent_ended()
    os._exit(1)
