"""The plan as a picture: where each step lies on a line, long idle waits cut short."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from sitegen.kitchen.amounts import single
from sitegen.sheet.amounts import duration_text
from sitegen.sheet.work_values import PlanRow, Timeline, TimelineBar, TimelineLane
from sitegen.timing.hours import clock

LONGEST_IDLE_MIN = Fraction(150)
"""A stretch without work that is longer than this is cut, so that the rest stays readable."""
CUT_TO_MIN = Fraction(45)
MOST_TICKS = 8
TICK_STEPS_MIN = (5, 10, 15, 30, 60, 120, 180, 240)
NOTHING = Fraction(0)

Stretch = tuple[Fraction, Fraction]


def timeline_of(rows: Sequence[PlanRow], spoken: str) -> Timeline | None:
    """The picture of a plan; None for a plan in which nothing takes time.

    rows: by start, minutes exact. One lane a component, in the order in which they begin.
    """
    end = max((row.start_min + row.hands_on_min + row.wait_min for row in rows), default=NOTHING)
    if not end:
        return None
    ruler = _Ruler(end, tuple(_idle_stretches(rows, end)))
    titles = dict.fromkeys(row.component for row in rows)
    return Timeline(
        lanes=tuple(
            TimelineLane(title, tuple(_bar(row, ruler) for row in rows if row.component == title))
            for title in titles
        ),
        ticks=tuple((ruler.share(minute), clock(minute)) for minute in ruler.ticks()),
        cuts=tuple(
            (ruler.share((start + stop) / 2), duration_text(single(stop - start)))
            for start, stop in ruler.idle
        ),
        spoken=spoken,
    )


def _bar(row: PlanRow, ruler: "_Ruler") -> TimelineBar:
    free = row.start_min + row.hands_on_min
    return TimelineBar(
        step=row.step,
        start=ruler.share(row.start_min),
        free=ruler.share(free),
        end=ruler.share(free + row.wait_min),
        heat=row.heat,
    )


def _idle_stretches(rows: Iterable[PlanRow], end: Fraction) -> Iterable[Stretch]:
    """Stretches in which no step begins or ends, long enough to be cut."""
    edges = {NOTHING, end}
    for row in rows:
        free = row.start_min + row.hands_on_min
        edges |= {row.start_min, free, free + row.wait_min}
    for start, stop in pairwise(sorted(edges)):
        if stop - start > LONGEST_IDLE_MIN:
            yield start, stop


@dataclass(frozen=True)
class _Ruler:
    """Minutes to shares of the picture's width; idle stretches are drawn as if they were short."""

    end: Fraction
    idle: tuple[Stretch, ...]

    def share(self, minute: Fraction) -> Fraction:
        return self._drawn(minute) / self._drawn(self.end)

    def ticks(self) -> Iterable[Fraction]:
        """Round minutes on the parts that are drawn to scale, few enough to be read."""
        drawn = self._drawn(self.end)
        step = next((each for each in TICK_STEPS_MIN if drawn / each <= MOST_TICKS), TICK_STEPS_MIN[-1])
        starts = [NOTHING, *(stop for _, stop in self.idle)]
        stops = [*(start for start, _ in self.idle), self.end]
        for start, stop in zip(starts, stops, strict=True):
            yield start
            first = start if not start else start + Fraction(step, 2)
            minute = -(-first // step) * step
            while minute <= stop - (Fraction(step, 2) if stop != self.end else 0):
                if minute != start:
                    yield Fraction(minute)
                minute += step

    def _drawn(self, minute: Fraction) -> Fraction:
        """Minutes that are drawn before a minute of the plan."""
        drawn = minute
        for start, stop in self.idle:
            if minute >= stop:
                drawn -= stop - start - CUT_TO_MIN
            elif minute > start:
                drawn -= (minute - start) * (1 - CUT_TO_MIN / (stop - start))
        return drawn
