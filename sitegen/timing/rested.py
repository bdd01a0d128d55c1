"""Plans for a day on the wall, with as many nights off as the work goes through."""

from collections.abc import Sequence
from datetime import datetime, time
from itertools import pairwise
from math import ceil

from sitegen.timing.conflict import DAY, NIGHT, CannotPlan
from sitegen.timing.graph import Task
from sitegen.timing.hours import MINUTES_IN_DAY
from sitegen.timing.kitchens import Kitchen, Night
from sitegen.timing.nights import nights_after, nights_before
from sitegen.timing.plan import Anchor, Plan, highest, plan

Rest = tuple[time, time]
"""Hours on the wall between which nobody works: begins, ends."""
FIRST_DAYS = 2


def plan_with_nights(
    tasks: Sequence[Task], kitchen: Kitchen, hour: datetime, rest: Rest, anchor: Anchor = Anchor.END
) -> Plan:
    """The plan of work that is ready by an hour, or begins then, with nights off in between.

    hour: with its time zone. Nights are counted in for as many days as the plan turns out to need: each one
    more makes the search longer. Raises CannotPlan: with DAY where a step is longer than any day, with NIGHT
    where steps that must follow each other are.
    """
    _refuse_steps_longer_than_a_day(tasks, hour, rest)
    days, most_days = FIRST_DAYS, _most_days(tasks, kitchen)
    while days < 2 * most_days:
        made = plan(tasks, kitchen, nights=_nights(hour, rest, anchor, days), anchor=anchor)
        if made.begins_min + made.total_min <= (days - 1) * MINUTES_IN_DAY:
            return made
        days *= 2
    raise CannotPlan(
        tuple(place for place, task in enumerate(tasks) if task.most_gap_min is not None), (NIGHT,)
    )


def _most_days(tasks: Sequence[Task], kitchen: Kitchen) -> int:
    """Days in which all is done, one step after another, even if every step waits for a new day."""
    work = sum(highest(task.hands_on_min) + kitchen.wait(task, highest) for task in tasks)
    return FIRST_DAYS + ceil(work / MINUTES_IN_DAY) + len(tasks)


def _nights(hour: datetime, rest: Rest, anchor: Anchor, days: int) -> tuple[Night, ...]:
    nights = nights_before if anchor is Anchor.END else nights_after
    return nights(hour, *rest, days)


def _refuse_steps_longer_than_a_day(tasks: Sequence[Task], hour: datetime, rest: Rest) -> None:
    """Work in hand is never broken off: each step must fit between two nights."""
    nights = nights_before(hour, *rest, FIRST_DAYS + 1)
    awake = max(later.start_min - earlier.end_min for earlier, later in pairwise(nights))
    too_long = tuple(place for place, task in enumerate(tasks) if highest(task.hands_on_min) > awake)
    if too_long:
        raise CannotPlan(too_long, (DAY,))
