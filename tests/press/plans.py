"""A plan of the day to print: a loaf that goes through a night."""

from datetime import UTC, datetime, timedelta
from fractions import Fraction

from sitegen.sheet.work_values import (
    ClockCall,
    ClockRow,
    DayPlan,
    PlanRow,
    Timeline,
    TimelineBar,
    TimelineLane,
)

EIGHT_PM = datetime(2026, 12, 4, 20, tzinfo=UTC)
FRIDAY, SATURDAY = "Friday 4 December 2026", "Saturday 5 December 2026"


def row(
    step: int,
    start_min: int,
    hands_on: int,
    wait: int,
    summary: str,
    heat: str = "",
    must: str = "",
    called: bool = False,
    product: str = "",
) -> ClockRow:
    begins = EIGHT_PM + timedelta(minutes=start_min)
    free = begins + timedelta(minutes=hands_on)
    ends = free + timedelta(minutes=wait)
    return ClockRow(
        PlanRow(
            step,
            "Starter" if step == 1 else "Loaf",
            summary,
            "0:00",
            f"{hands_on}\N{NO-BREAK SPACE}min" if hands_on else "",
            f"{wait}\N{NO-BREAK SPACE}min" if wait else "",
            Fraction(start_min),
            Fraction(hands_on),
            Fraction(wait),
            heat == "oven",
            heat,
            product,
        ),
        FRIDAY if begins.day == 4 else SATURDAY,
        f"{begins:%H:%M}",
        f"{free:%H:%M}",
        f"{ends:%H:%M}",
        must,
        begins,
        free,
        ends,
        called,
    )


LOAF = DayPlan(
    title="Honey, sesame; a loaf",
    rows=(
        row(1, 0, 5, 715, "Stir the *flour*, water & yeast", called=True),
        row(2, 720, 20, 0, "Knead", must="the rest waits for it", called=True, product="Sandwich bread"),
        row(3, 740, 0, 40, "Bake", heat="oven", must="within 5 min of step 2"),
        row(4, 780, 2, 60, "Turn out", must="out of the oven", called=True),
    ),
    total="14 h",
    hands_on="25 min",
    waiting="13 h 35 min",
    written_order="15 h",
    starts="20:00, Friday 4 December 2026",
    ready="10:02, Saturday 5 December 2026",
    proof="No plan for one cook and this oven is shorter: proved.",
    notes=("Your hands are free from 20:05 to 08:00 on Saturday.", "Can be made the day before: Starter."),
    timeline=Timeline(
        (TimelineLane("Loaf", (TimelineBar(2, Fraction(0), Fraction(1, 2), Fraction(1)),)),),
        ((Fraction(0), "0:00"),),
        (),
        "The plan as a picture; the table has the same facts.",
    ),
    oven=(
        ClockCall(
            "08:05", "Switch the oven on: 180\N{NO-BREAK SPACE}°C fan", EIGHT_PM + timedelta(minutes=725)
        ),
    ),
    chain=(1, 2, 3, 4),
)
