"""How far a build is: a bar on a terminal, a line a step elsewhere."""

from types import TracebackType
from typing import Self

import click
from rich.console import Console
from rich.progress import BarColumn, MofNCompleteColumn, Progress, TaskID, TextColumn, TimeElapsedColumn

from sitegen.release.steps import Step


class Bar:
    """One bar for each step, on the standard error of a terminal."""

    def __init__(self) -> None:
        columns = (TextColumn("{task.description}"), BarColumn(), MofNCompleteColumn(), TimeElapsedColumn())
        self._progress = Progress(*columns, console=Console(stderr=True), transient=True)
        self._task: TaskID | None = None

    def __enter__(self) -> Self:
        self._progress.start()
        return self

    def __exit__(
        self, kind: type[BaseException] | None, problem: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._progress.stop()

    def begin(self, step: Step, total: int) -> None:
        self._task = self._progress.add_task(_title(step), total=total or None)

    def advance(self) -> None:
        if self._task is not None:
            self._progress.advance(self._task)


class Lines:
    """One line for each step, for logs."""

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, problem: BaseException | None, trace: TracebackType | None
    ) -> None:
        """Nothing to put away."""

    def begin(self, step: Step, total: int) -> None:
        click.echo(f"{_title(step)}: {total}" if total else _title(step), err=True)

    def advance(self) -> None:
        """A log needs no line for each."""


def build_progress() -> Bar | Lines:
    """The bar where someone watches, lines where a log is kept."""
    return Bar() if Console(stderr=True).is_terminal else Lines()


def _title(step: Step) -> str:
    return f"{step.value}/{len(Step)} {step.title}"
