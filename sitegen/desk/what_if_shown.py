"""An answer as its page prints it: every text made, what differs from the tested batch beside it."""

from collections.abc import Iterator
from dataclasses import dataclass

from sitegen.desk.what_if import Answer
from sitegen.press.order_page import ClockDay, clock_days
from sitegen.press.plain_sheet import line_amount
from sitegen.sheet.drift import ComponentDrift, LineDrift, SheetDrift, sheet_drift
from sitegen.sheet.drift_words import percent_text, points_text, scale_text
from sitegen.sheet.values import SheetComponent, SheetLine, SheetStep


@dataclass(frozen=True)
class ShownLine:
    """tested: the amount in the tested batch, where that is another; '' else."""

    line: SheetLine
    tested: str


@dataclass(frozen=True)
class ShownStep:
    """changed: what the tested batch says of heat and time, where that is another."""

    step: SheetStep
    changed: tuple[str, ...]


@dataclass(frozen=True)
class ShownPart:
    title: str
    makes: str
    lines: tuple[ShownLine, ...]
    steps: tuple[ShownStep, ...]


@dataclass(frozen=True)
class DriftRow:
    """One line.

    meant, printed: weights. tested, as_printed: shares of the base. mark: 'most', 'too far' or ''.
    """

    name: str
    amount: str
    meant: str
    printed: str
    tested: str
    as_printed: str
    points: str
    mark: str


@dataclass(frozen=True)
class DriftPart:
    title: str
    base: str
    rows: tuple[DriftRow, ...]


@dataclass(frozen=True)
class ShownDrift:
    """told: the whole in a sentence."""

    told: str
    parts: tuple[DriftPart, ...]


@dataclass(frozen=True)
class Shown:
    """said: the answer in a sentence, for a voice."""

    parts: tuple[ShownPart, ...]
    drift: ShownDrift
    days: tuple[ClockDay, ...]
    said: str


def shown(answer: Answer) -> Shown:
    pairs = zip(answer.tested.components, answer.sheet.components, strict=True)
    return Shown(
        parts=tuple(_part(tested, part) for tested, part in pairs),
        drift=_drift(sheet_drift(answer.sheet)),
        days=tuple(clock_days(answer.plan.rows)) if answer.plan else (),
        said=_said(answer),
    )


def _part(tested: SheetComponent, part: SheetComponent) -> ShownPart:
    return ShownPart(
        part.title,
        part.makes,
        tuple(_line(*two) for two in zip(tested.lines, part.lines, strict=True)),
        tuple(ShownStep(two[1], tuple(_changed(*two))) for two in zip(tested.steps, part.steps, strict=True)),
    )


def _line(tested: SheetLine, line: SheetLine) -> ShownLine:
    before = line_amount(tested)
    return ShownLine(line, before if before != line_amount(line) else "")


def _changed(tested: SheetStep, step: SheetStep) -> Iterator[str]:
    if tested.oven != step.oven:
        yield tested.oven or "no oven"
    if tested.hands_on != step.hands_on:
        yield f"{tested.hands_on or 'no time'} hands-on"
    if tested.wait != step.wait:
        yield f"{tested.wait or 'no wait'}{' in the oven' if tested.oven and tested.wait else ''}"


def _drift(drift: SheetDrift) -> ShownDrift:
    worst = drift.worst
    parts = tuple(
        DriftPart(part.title, part.base, tuple(_row(line, worst) for line in part.lines))
        for part in drift.components
    )
    return ShownDrift(_drift_told(drift, worst), parts)


def _row(line: LineDrift, worst: LineDrift | None) -> DriftRow:
    mark = "too far" if line.is_too_far else "most" if line is worst and line.points else ""
    return DriftRow(
        name=line.name,
        amount=line.amount,
        meant=scale_text(line.exact_g) if line.exact_g is not None else "",
        printed=scale_text(line.printed_g) if line.printed_g is not None else "",
        tested=percent_text(line.before),
        as_printed=percent_text(line.after),
        points=points_text(line.points).replace("-", "\N{MINUS SIGN}"),
        mark=mark,
    )


def _drift_told(drift: SheetDrift, worst: LineDrift | None) -> str:
    if worst is None:
        return "Nothing can be weighed, so there is no balance to hold."
    if not worst.points:
        return "Rounding moves nothing: each ingredient keeps its share."
    part = next(part for part in drift.components if any(line is worst for line in part.lines))
    moved = f"{worst.name}, from {percent_text(worst.before)} to {percent_text(worst.after)} {_of(part)}"
    if drift.is_too_far:
        return f"Too far: {moved}. The balance may drift by 4 points."
    return f"Rounding moves {moved}; nothing moves more."


def _of(part: ComponentDrift) -> str:
    return f"of the {part.base} ({part.title})"


def _said(answer: Answer) -> str:
    head = answer.sheet.head
    told = list(dict.fromkeys(each for each in (head.makes, head.batch.title) if each))
    told.append(head.edition.title)
    if answer.plan is not None:
        told.append(f"ready {answer.plan.ready}" if answer.plan.ready else f"{answer.plan.total} in all")
    count = len(answer.faults)
    left = (
        ""
        if not count
        else " One field cannot be followed."
        if count == 1
        else f" {count} fields cannot be followed."
    )
    return f"Worked out: {'; '.join(told)}.{left}"
