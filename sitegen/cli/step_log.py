"""How long each step of a build took, how much it made, and how much it found in kept work."""

import time
from collections.abc import Callable
from dataclasses import dataclass, replace

from sitegen.cli.stopping import go_on
from sitegen.release.steps import Progress, Step


@dataclass(frozen=True)
class StepRow:
    """seconds: by the wall clock. made, reused: things that the step counts, 0 where it counts none."""

    step: Step
    seconds: float = 0.0
    made: int = 0
    reused: int = 0


class StepLog:
    """Passes on what it is told of a build, keeps a row for each step, and ends a build that is to stop."""

    def __init__(self, told: Progress, clock: Callable[[], float] = time.monotonic) -> None:
        """told: who watches the build. clock: seconds, from any beginning."""
        self._told = told
        self._clock = clock
        self._since = clock()
        self._row: StepRow | None = None
        self._ended: list[StepRow] = []

    def begin(self, step: Step, total: int) -> None:
        go_on()
        self._end_step()
        self._row = StepRow(step)
        self._told.begin(step, total)

    def advance(self) -> None:
        go_on()
        if self._row is not None:
            self._row = replace(self._row, made=self._row.made + 1)
        self._told.advance()

    def reuse(self, count: int) -> None:
        if self._row is not None:
            self._row = replace(self._row, reused=self._row.reused + count)
        self._told.reuse(count)

    def rows(self) -> tuple[StepRow, ...]:
        """One for each step that has begun, in their order. The last one ends with this call."""
        self._end_step()
        return tuple(self._ended)

    def _end_step(self) -> None:
        now = self._clock()
        if self._row is not None:
            self._ended.append(replace(self._row, seconds=now - self._since))
            self._row = None
        self._since = now
