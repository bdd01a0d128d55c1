"""The work of a recipe, or of an order, put at hours of a day."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, time
from fractions import Fraction

from sitegen.kitchen.amounts import single
from sitegen.kitchen.recipe import Component
from sitegen.kitchen.rounding import rounded_minutes
from sitegen.sheet.amounts import duration_text
from sitegen.sheet.clock_words import PlanClock, hour_text, hours_after, nearest_minute
from sitegen.sheet.conflict_words import steps_in_conflict
from sitegen.sheet.days import weekday_text
from sitegen.sheet.on_time import OnTime, on_time
from sitegen.sheet.plan_notes import oven_words, plan_notes
from sitegen.sheet.setting import Setting
from sitegen.sheet.timeline import timeline_of
from sitegen.sheet.work import plan_rows
from sitegen.sheet.work_values import ClockCall, ClockRow, DayPlan, PlanRow
from sitegen.timing.chain import deciding_chain
from sitegen.timing.conflict import CannotPlan
from sitegen.timing.graph import Task, tasks_of
from sitegen.timing.kitchens import Kitchen
from sitegen.timing.oven_calls import oven_calls
from sitegen.timing.plan import Anchor, Plan, plan
from sitegen.timing.rested import plan_with_nights

NOTHING = Fraction(0)
MAY_SLIP = OnTime("", is_called=False)


@dataclass(frozen=True)
class Wish:
    """When and where the work is done.

    hour: it is ready by then, or does not begin before (anchor); None for a plan on its own clock. rest: the
    hours of the wall between which nobody works, or None.
    """

    kitchen: Kitchen
    hour: datetime | None = None
    anchor: Anchor = Anchor.END
    rest: tuple[time, time] | None = None


class TooLate(Exception):
    """It cannot be ready by the hour that is wished. earliest: when it can, if the work begins now."""

    def __init__(self, earliest: datetime) -> None:
        super().__init__(earliest)
        self.earliest = earliest


def day_plan(
    title: str,
    components: Sequence[Component],
    summaries: Sequence[str],
    wish: Wish,
    setting: Setting,
    now: datetime | None = None,
) -> DayPlan:
    """The plan at its hours, by the upper figure of each range.

    components: as a batch knows them, with its times. summaries: a short text a step. now: work that would
    have had to begin before is refused. Raises TaskCircle, StepsInConflict and TooLate.
    """
    tasks = tasks_of(components, {})
    try:
        made = _planned(tasks, wish)
        clock = PlanClock(_begins(made, wish))
        if now is not None and clock.begins is not None and clock.begins < now:
            raise TooLate(_earliest(tasks, wish, now))
    except CannotPlan as error:
        raise steps_in_conflict(components, error) from error
    rows = plan_rows(made, components, summaries, setting)
    return DayPlan(
        title=title,
        rows=_clock_rows(rows, made, clock, setting),
        total=_text(made.total_min),
        hands_on=_text(made.hands_on_min),
        waiting=_text(max(made.total_min - made.hands_on_min, NOTHING)),
        written_order=_written_order(made),
        starts=hour_text(clock.begins, setting.edition),
        ready=hour_text(clock.hour(made.total_min), setting.edition),
        proof=_proof(made, wish),
        notes=plan_notes(made, components, setting, wish.kitchen, clock),
        timeline=timeline_of(rows, f"The plan of {title} as a picture; the table has the same facts."),
        oven=tuple(_calls(made, clock, setting)),
        chain=tuple(one.task.index + 1 for one in deciding_chain(made, wish.kitchen)),
    )


def _planned(tasks: Sequence[Task], wish: Wish) -> Plan:
    if wish.hour is None or wish.rest is None:
        return plan(tasks, wish.kitchen, anchor=wish.anchor)
    return plan_with_nights(tasks, wish.kitchen, wish.hour, wish.rest, wish.anchor)


def _begins(made: Plan, wish: Wish) -> datetime | None:
    if wish.hour is None:
        return None
    return hours_after(wish.hour, made.begins_min if wish.anchor is Anchor.START else -made.total_min)


def _earliest(tasks: Sequence[Task], wish: Wish, now: datetime) -> datetime:
    """When the work is done that begins now; the wall says it in whole minutes, the next one."""
    made = _planned(tasks, replace(wish, hour=now, anchor=Anchor.START))
    ready = hours_after(now, made.begins_min + made.total_min)
    return hours_after(ready, Fraction(59, 60)).replace(second=0, microsecond=0)


def _clock_rows(
    rows: Sequence[PlanRow], made: Plan, clock: PlanClock, setting: Setting
) -> tuple[ClockRow, ...]:
    heeded = on_time(made)
    return tuple(_clock_row(row, heeded.get(row.step - 1, MAY_SLIP), clock, setting) for row in rows)


def _clock_row(row: PlanRow, heed: OnTime, clock: PlanClock, setting: Setting) -> ClockRow:
    free_min = row.start_min + row.hands_on_min
    end_min = free_min + row.wait_min
    begins = clock.hour(row.start_min)
    return ClockRow(
        row=row,
        day=weekday_text(nearest_minute(begins).date(), setting.edition) if begins else "",
        start=clock.on_wall(row.start_min) or row.start,
        free=clock.on_wall(free_min),
        end=clock.on_wall(end_min),
        must_start=heed.why,
        is_called=heed.is_called,
        begins=begins,
        free_at=clock.hour(free_min),
        ends=clock.hour(end_min),
    )


def _calls(made: Plan, clock: PlanClock, setting: Setting) -> Iterator[ClockCall]:
    for call in oven_calls(made):
        words = setting.respelled(oven_words(call, setting))
        start = clock.on_wall(call.at_min) or clock.told(max(call.at_min, NOTHING))
        yield ClockCall(start, words, clock.hour(call.at_min))


def _written_order(made: Plan) -> str:
    """How long the steps take one after another, where that is longer."""
    in_a_row = sum((one.hands_on_min + one.wait_min for one in made.tasks), NOTHING)
    return _text(in_a_row) if in_a_row > made.total_min else ""


def _proof(made: Plan, wish: Wish) -> str:
    cooks = wish.kitchen.cooks
    hands = "one cook" if cooks == 1 else f"{cooks} cooks"
    is_early = wish.hour is not None and wish.anchor is Anchor.START
    if made.is_proved:
        return f"No plan for {hands} and this oven is {'ready earlier' if is_early else 'shorter'}: proved."
    gap = _text(made.total_min - made.bound_min)
    better = "be ready up to {} earlier" if is_early else "be up to {} shorter"
    return f"A plan for {hands} may {better.format(gap)}; none was found."


def _text(minutes: Fraction) -> str:
    return duration_text(single(rounded_minutes(minutes)))
