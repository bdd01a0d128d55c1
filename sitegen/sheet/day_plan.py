"""The work of a recipe, or of an order, put at hours of a day."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, time, timedelta
from fractions import Fraction

from sitegen.kitchen.recipe import Component, single
from sitegen.kitchen.rounding import rounded_minutes
from sitegen.sheet.amounts import duration_text
from sitegen.sheet.days import WEEKDAYS, weekday_text
from sitegen.sheet.plan_notes import plan_notes
from sitegen.sheet.setting import Setting
from sitegen.sheet.timeline import timeline_of
from sitegen.sheet.work import plan_rows
from sitegen.sheet.work_values import ClockRow, DayPlan, PlanRow
from sitegen.timing.chain import deciding_chain
from sitegen.timing.graph import tasks_of
from sitegen.timing.hours import clock
from sitegen.timing.kitchens import Kitchen, Night
from sitegen.timing.nights import nights_after, nights_before
from sitegen.timing.plan import Anchor, Plan, plan


@dataclass(frozen=True)
class Wish:
    """When and where the work is done.

    hour: it is ready by then, or begins then (anchor); None for a plan on its own clock. rest: the hours of
    the wall between which nobody works, or None.
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
    have had to begin before is refused. Raises TaskCircle, CannotPlan and TooLate.
    """
    tasks = tasks_of(components, {})
    made = plan(tasks, wish.kitchen, nights=_nights(wish), anchor=wish.anchor)
    begins = _begins(made, wish)
    if now is not None and begins is not None and begins < now:
        raise TooLate(_earliest(components, wish, now))
    rows = plan_rows(made, components, summaries, setting)
    return DayPlan(
        title=title,
        rows=tuple(_clock_rows(rows, made, begins, setting)),
        total=_text(made.total_min),
        hands_on=_text(made.hands_on_min),
        waiting=_text(max(made.total_min - made.hands_on_min, Fraction(0))),
        written_order=_text(sum((one.hands_on_min + one.wait_min for one in made.tasks), Fraction(0))),
        starts=_hour(begins, setting),
        ready=_hour(_after(begins, made.total_min), setting),
        proof=_proof(made, wish.kitchen),
        notes=plan_notes(made, components, {}, setting, lambda minute: _told(begins, minute)),
        timeline=timeline_of(rows, f"The plan of {title} as a picture; the table has the same facts."),
    )


def _nights(wish: Wish) -> tuple[Night, ...]:
    if wish.hour is None or wish.rest is None:
        return ()
    nights = nights_before if wish.anchor is Anchor.END else nights_after
    return nights(wish.hour, *wish.rest)


def _begins(made: Plan, wish: Wish) -> datetime | None:
    if wish.hour is None or wish.anchor is Anchor.START:
        return wish.hour
    return _after(wish.hour, -made.total_min)


def _earliest(components: Sequence[Component], wish: Wish, now: datetime) -> datetime:
    """When the work is done that begins now."""
    rest = () if wish.rest is None else nights_after(now, *wish.rest)
    soonest = plan(tasks_of(components, {}), wish.kitchen, nights=rest, anchor=Anchor.START)
    return (now.astimezone(UTC) + _minutes(soonest.total_min)).astimezone(now.tzinfo)


def _clock_rows(
    rows: Sequence[PlanRow], made: Plan, begins: datetime | None, setting: Setting
) -> Sequence[ClockRow]:
    bound = _bound_reasons(made)
    clocked = []
    for row in rows:
        free_min = row.start_min + row.hands_on_min
        start = _after(begins, row.start_min)
        free, end = _after(begins, free_min), _after(begins, free_min + row.wait_min)
        clocked.append(
            ClockRow(
                row=row,
                day=weekday_text(start.date(), setting.edition) if start else "",
                start=_wall(start, row.start),
                free=_wall(free, ""),
                end=_wall(end, ""),
                must_start=bound.get(row.step - 1, ""),
                begins=start,
                free_at=free,
                ends=end,
            )
        )
    return clocked


def _bound_reasons(made: Plan) -> dict[int, str]:
    """Tasks that must not be missed -> why: out of the oven, used soon, or what the whole waits for."""
    reasons = {one.task.index: "the whole waits for it" for one in deciding_chain(made)}
    by_index = {one.task.index: one for one in made.tasks}
    for one in made.tasks:
        for first in sorted(one.task.after):
            before = by_index[first]
            if before.task.most_gap_min is not None:
                reasons[one.task.index] = f"what it needs holds for {_text(before.task.most_gap_min)} only"
            elif before.task.oven is not None and before.end_min == one.start_min:
                reasons[one.task.index] = "out of the oven"
    return reasons


def _proof(made: Plan, kitchen: Kitchen) -> str:
    hands = "one cook" if kitchen.cooks == 1 else f"{kitchen.cooks} cooks"
    if made.is_proved:
        return f"No plan for {hands} and this oven is shorter: proved."
    return (
        f"A plan for {hands} may be up to {_text(made.total_min - made.bound_min)} shorter; none was found."
    )


def _after(hour: datetime | None, minutes: Fraction) -> datetime | None:
    """An hour so many minutes later, true across a change of clocks."""
    if hour is None:
        return None
    return (hour.astimezone(UTC) + _minutes(minutes)).astimezone(hour.tzinfo)


def _told(begins: datetime | None, minute: Fraction) -> str:
    """A minute of the plan as its clock is printed, with the day where that is not the first."""
    hour = _after(begins, minute)
    if hour is None or begins is None:
        return clock(minute)
    is_first_day = hour.date() == begins.date()
    return f"{hour:%H:%M}" if is_first_day else f"{hour:%H:%M} on {WEEKDAYS[hour.weekday()]}"


def _minutes(minutes: Fraction) -> timedelta:
    return timedelta(seconds=round(minutes * 60))


def _wall(hour: datetime | None, otherwise: str) -> str:
    return f"{hour:%H:%M}" if hour else otherwise


def _hour(hour: datetime | None, setting: Setting) -> str:
    return f"{hour:%H:%M}, {weekday_text(hour.date(), setting.edition)}" if hour else ""


def _text(minutes: Fraction) -> str:
    return duration_text(single(rounded_minutes(minutes)))
