"""The work of a recipe on a clock: rows, picture, totals. Frozen, ready for print; exact minutes beside."""

from dataclasses import dataclass
from datetime import datetime
from fractions import Fraction


@dataclass(frozen=True)
class PlanRow:
    """A step on the clock. start: '0:00', '+1:25'. The *_min are exact.

    heat: where it waits, 'oven', 'fridge', 'freezer', 'hob', or ''. product: on a plan of several recipes,
    the one that the component is part of; '' where it is that recipe itself.
    """

    step: int
    component: str
    summary: str
    start: str
    hands_on: str
    wait: str
    start_min: Fraction
    hands_on_min: Fraction
    wait_min: Fraction
    uses_oven: bool
    heat: str = ""
    product: str = ""


@dataclass(frozen=True)
class TimelineBar:
    """A step on the timeline. All positions are shares of its width, from 0 to 1.

    start to free: hands are at work; free to end: it waits. heat: 'oven', 'fridge', 'freezer', 'hob' or ''.
    """

    step: int
    start: Fraction
    free: Fraction
    end: Fraction
    heat: str = ""


@dataclass(frozen=True)
class TimelineLane:
    """One component. title: as on the sheet. bars: by start."""

    title: str
    bars: tuple[TimelineBar, ...]


@dataclass(frozen=True)
class Timeline:
    """The plan as a picture. ticks: (position, '+1:25'). cuts: (position, '9 h') where a long wait is cut.

    spoken: the same in a sentence, for readers who cannot see it.
    """

    lanes: tuple[TimelineLane, ...]
    ticks: tuple[tuple[Fraction, str], ...]
    cuts: tuple[tuple[Fraction, str], ...]
    spoken: str


@dataclass(frozen=True)
class ClockRow:
    """A step at its hours. day: 'Saturday 5 December 2026', '' without an hour; start: '14:05' or '+1:25'.

    must_start: why it must not be missed ('out of the oven'), '' where work in hand leads to it.
    is_called: whether it could be forgotten, so that a calendar should ring for it.
    begins, free, ends: with their time zone; None on a plan without an hour.
    """

    row: PlanRow
    day: str
    start: str
    free: str
    end: str
    must_start: str = ""
    begins: datetime | None = None
    free_at: datetime | None = None
    ends: datetime | None = None
    is_called: bool = False


@dataclass(frozen=True)
class ClockCall:
    """A hand on the oven's switch. start: '13:55'; words: 'Switch the oven on: 160 C fan'. at: the hour."""

    start: str
    words: str
    at: datetime | None = None


@dataclass(frozen=True)
class DayPlan:
    """The work of one or more recipes at hours of a day.

    total, hands_on, waiting: '4 h 25 min'. starts, ready: '10:40, Saturday 5 December 2026', or ''.
    proof: what is known of its length, a sentence. written_order: how long the steps take one after another,
    '' where that is no longer. oven: what is to be done at its switch, by hour. chain: numbers of the steps
    that decide the total, in their order.
    """

    title: str
    rows: tuple[ClockRow, ...]
    total: str
    hands_on: str
    waiting: str
    written_order: str
    starts: str
    ready: str
    proof: str
    notes: tuple[str, ...]
    timeline: Timeline | None
    oven: tuple[ClockCall, ...] = ()
    chain: tuple[int, ...] = ()


@dataclass(frozen=True)
class Times:
    """hands_on: '1 h 10 min'; start_to_finish: '4 h 25 min'.

    The *_iso are ISO 8601 durations: of work at no heat, of what stands at a heat ('' for nothing), of all.
    The *_min are the upper figures of work and of the whole, minutes, exact.
    """

    hands_on: str
    waiting: str
    start_to_finish: str
    hands_on_iso: str
    cook_iso: str
    total_iso: str
    hands_on_min: Fraction = Fraction(0)
    total_min: Fraction = Fraction(0)
