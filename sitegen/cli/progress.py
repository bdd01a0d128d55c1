"""How far a build is: a bar on a terminal, plain lines elsewhere."""

import os
import sys
import time
from collections.abc import Callable
from types import TracebackType
from typing import Self

import click
from rich.console import Console
from rich.progress import BarColumn, Progress, ProgressColumn, Task, TaskID, TextColumn
from rich.table import Column
from rich.text import Text

from sitegen.cli.figures import duration
from sitegen.release.steps import Step

_WIDE, _NARROW = 90, 66
"""Columns of a terminal that has room for a bar beside the words, and for a time beside them."""

_COUNT = len(" 10000 of 10000 ")
"""Columns that a count may take with the space about it."""

_LINE_EVERY = 30.0
"""Seconds: a log hears this often how far a long step is."""


class Bar:
    """One row for each step, on the standard error of a terminal; the step that runs has a bar."""

    def __init__(self, console: Console | None = None) -> None:
        """console: another terminal than the standard error's."""
        shown = console or Console(stderr=True)
        self._progress = Progress(*_columns(shown.width), console=shown, transient=True)
        self._task: TaskID | None = None
        self._done = 0
        self._total = 0

    def __enter__(self) -> Self:
        self._progress.start()
        return self

    def __exit__(
        self, kind: type[BaseException] | None, problem: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._progress.stop()

    def begin(self, step: Step, total: int) -> None:
        self._end_step()
        self._done, self._total = 0, total
        self._task = self._progress.add_task(_title(step), total=total or None, count=self._count())

    def advance(self) -> None:
        self._go_on(1)

    def reuse(self, count: int) -> None:
        self._go_on(count)

    def _go_on(self, count: int) -> None:
        if self._task is not None:
            self._done += count
            self._progress.update(self._task, completed=self._done, count=self._count())

    def _end_step(self) -> None:
        """A step that ends stands full and still, one that counts nothing too."""
        if self._task is not None:
            self._progress.update(self._task, total=self._done or 1, completed=self._done or 1)
            self._progress.stop_task(self._task)

    def _count(self) -> str:
        return f"{self._done} of {self._total}" if self._total else ""


class Lines:
    """One line for each step, and one now and then in a long step, for logs."""

    def __init__(self, clock: Callable[[], float] = time.monotonic) -> None:
        """clock: seconds, from any beginning."""
        self._clock = clock
        self._said = clock()
        self._done = 0
        self._total = 0

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, problem: BaseException | None, trace: TracebackType | None
    ) -> None:
        """Nothing to put away."""

    def begin(self, step: Step, total: int) -> None:
        self._done, self._total = 0, total
        self._say(f"{_title(step)}: {total}" if total else _title(step))

    def advance(self) -> None:
        self._go_on(1)

    def reuse(self, count: int) -> None:
        self._go_on(count)

    def _go_on(self, count: int) -> None:
        self._done += count
        if self._clock() - self._said >= _LINE_EVERY:
            self._say(f"    {self._done} of {self._total}")

    def _say(self, line: str) -> None:
        self._said = self._clock()
        click.echo(line, err=True)


class _Elapsed(ProgressColumn):
    """How long a step has run."""

    def render(self, task: Task) -> Text:
        return Text(duration(task.elapsed or 0.0, 0), style="progress.elapsed", justify="right")


class _Left(ProgressColumn):
    """How long the step that runs will take yet, once that can be told."""

    max_refresh = 0.5

    def render(self, task: Task) -> Text:
        left = task.time_remaining
        return Text("" if not left else f"{duration(left, 0)} left", style="progress.remaining")


def build_progress() -> Bar | Lines:
    """The bar where someone watches; lines where a log is kept or the terminal cannot move its cursor."""
    is_log = "CI" in os.environ or os.environ.get("TERM") in {"dumb", "unknown"}
    return Bar() if sys.stderr.isatty() and not is_log else Lines()


def _columns(width: int) -> tuple[ProgressColumn, ...]:
    """width: of the terminal, in columns. Where it is narrow, titles are cut short and the count is whole."""
    counted = TextColumn("{task.fields[count]}", justify="right", table_column=Column(no_wrap=True))
    if width < _NARROW:
        room = Column(no_wrap=True, max_width=max(width - _COUNT, 4))
        return TextColumn("{task.description}", table_column=room), counted
    title = TextColumn("{task.description}")
    if width < _WIDE:
        return title, counted, _Elapsed()
    return title, BarColumn(24), counted, _Elapsed(), _Left()


def _title(step: Step) -> str:
    return f"{step.value}/{len(Step)} {step.title}"
