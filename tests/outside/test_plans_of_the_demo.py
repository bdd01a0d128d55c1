"""The plan of every demo recipe: proved shortest, and independent of what the wall's clock shows."""

from datetime import UTC, datetime, timedelta
from fractions import Fraction
from itertools import pairwise
from zoneinfo import ZoneInfo

import pytest

from sitegen.sheet.day_plan import Wish
from sitegen.timing.graph import tasks_of
from sitegen.timing.kitchens import Kitchen, worktop
from sitegen.timing.plan import AT_HOME, forget_plans, highest, lowest, plan
from tests.outside.demo_plans import SLUGS, demo_makings, demo_plan
from tests.outside.test_shortest_plans_ortools import span_by_cp_sat

LONDON = ZoneInfo("Europe/London")
ANY_RECIPE = pytest.mark.parametrize("slug", SLUGS)


@ANY_RECIPE
@pytest.mark.parametrize("pick", [lowest, highest])
def test_no_plan_is_shorter(slug: str, pick: object) -> None:
    """By our own bound, and by OR-Tools CP-SAT, a general-purpose constraint solver.

    The solver is told of no time for a change of the oven, so that its span may be shorter where the oven
    is set anew.
    """
    figure = lowest if pick is lowest else highest
    tasks = tasks_of(demo_makings()[slug].in_batch, {})
    made = plan(tasks, pick=figure)
    assert made.is_proved
    problem = worktop(tasks, Kitchen(change_min=Fraction(0)), figure)
    least = span_by_cp_sat(problem.problem)
    assert least is not None
    changes = len({task.oven for task in tasks if task.oven}) - 1
    unchanged = plan(tasks, Kitchen(change_min=Fraction(0)), pick=figure).total_min
    assert unchanged == problem.minutes(least)
    assert unchanged <= made.total_min <= unchanged + max(changes, 0) * AT_HOME.change_min


@ANY_RECIPE
def test_the_plan_is_never_longer_than_one_step_after_another(slug: str) -> None:
    made = plan(tasks_of(demo_makings()[slug].in_batch, {}))
    assert made.total_min <= sum(one.hands_on_min + one.wait_min for one in made.tasks)


@ANY_RECIPE
def test_the_same_recipe_gives_the_same_plan(slug: str) -> None:
    tasks = tasks_of(demo_makings()[slug].in_batch, {})
    made = plan(tasks)
    forget_plans()
    assert plan(tasks) == made


@ANY_RECIPE
@pytest.mark.parametrize(
    "ready",
    [
        datetime(2026, 12, 6, 16, tzinfo=LONDON),
        datetime(2026, 3, 29, 11, tzinfo=LONDON),
        datetime(2026, 3, 29, 2, 30, tzinfo=LONDON),
        datetime(2026, 10, 25, 11, tzinfo=LONDON),
        datetime(2026, 10, 25, 1, 30, fold=1, tzinfo=LONDON),
        datetime(2026, 12, 5, 9, tzinfo=ZoneInfo("Australia/Lord_Howe")),
    ],
    ids=str,
)
def test_times_do_not_depend_on_the_hour_of_the_wall(slug: str, ready: datetime) -> None:
    """Every step lies as many minutes before the end as on any other day, a change of clocks included."""
    usual = datetime(2026, 12, 5, 16, tzinfo=UTC)
    assert before_the_end(slug, ready) == before_the_end(slug, usual)


def before_the_end(slug: str, ready: datetime) -> list[timedelta]:
    rows = demo_plan(slug, Wish(Kitchen(), ready)).rows
    return [ready.astimezone(UTC) - row.begins.astimezone(UTC) for row in rows if row.begins is not None]


@ANY_RECIPE
def test_rows_stand_in_the_order_of_the_day(slug: str) -> None:
    rows = demo_plan(slug, Wish(Kitchen(), datetime(2026, 12, 5, 16, tzinfo=LONDON))).rows
    starts = [row.begins for row in rows if row.begins is not None]
    assert len(starts) == len(rows)
    assert all(earlier <= later for earlier, later in pairwise(starts))
