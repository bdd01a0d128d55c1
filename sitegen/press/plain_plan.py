"""A plan of the day as plain text, for a terminal or a note."""

from collections.abc import Iterator
from itertools import groupby

from sitegen.press.plain_tables import wrapped
from sitegen.press.prose import to_plain
from sitegen.sheet.work_values import ClockRow, DayPlan


def plain_plan(plan: DayPlan) -> str:
    """The rows by day, then the totals and notes; lines of at most 88 characters."""
    blocks = [
        plan.title,
        *_days(plan),
        "\n".join(_totals(plan)),
        "\n".join(wrapped(note) for note in plan.notes),
    ]
    return "\n\n".join(block for block in blocks if block).replace("\N{NO-BREAK SPACE}", " ") + "\n"


def _days(plan: DayPlan) -> Iterator[str]:
    for day, rows in groupby(plan.rows, key=lambda row: row.day):
        lines = [day] if day else []
        yield "\n".join([*lines, *(_row(row) for row in rows)])


def _row(row: ClockRow) -> str:
    step = row.row
    what = f"{step.component} ({step.product})" if step.product else step.component
    text = f"{row.start:>6}  {what}, step {step.step}: {to_plain(step.summary)}"
    facts = [f"{step.hands_on} hands-on" if step.hands_on else "", _wait(row)]
    told = "; ".join(fact for fact in facts if fact)
    mark = f" ! {row.must_start}" if row.must_start else ""
    return wrapped(f"{text} [{told}]{mark}", "        ")


def _wait(row: ClockRow) -> str:
    step = row.row
    if not step.wait:
        return ""
    until = f", until {row.end}" if row.end else ""
    place = f" in the {step.heat}" if step.heat in ("oven", "fridge", "freezer") else " waiting"
    return f"{step.wait}{place}{until}"


def _totals(plan: DayPlan) -> Iterator[str]:
    if plan.starts:
        yield f"Begin at {plan.starts}; ready at {plan.ready}."
    shares = (
        f"{plan.hands_on} hands-on" if plan.hands_on else "",
        f"{plan.waiting} waiting" if plan.waiting else "",
    )
    yield f"Start to finish {plan.total}: {', '.join(share for share in shares if share)}."
    if plan.written_order:
        yield f"One step after another it would take {plan.written_order}."
    yield plan.proof
