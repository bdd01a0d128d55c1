"""An answer as its page prints it: every text made, what differs from the tested batch beside it."""

from collections.abc import Iterator
from dataclasses import dataclass

from sitegen.desk.what_if import Answer
from sitegen.press.order_page import ClockDay, clock_days
from sitegen.press.plain_sheet import line_amount
from sitegen.release.tally import counted
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
    """A component. makes: 'about 640 g' or ''."""

    title: str
    makes: str
    lines: tuple[ShownLine, ...]
    steps: tuple[ShownStep, ...]


@dataclass(frozen=True)
class DriftRow:
    """One line.

    meant, printed: its weight, exact and as printed, '' where it has none. share: of the base, as printed.
    points: by how much that is another share than the exact one. mark: 'most', 'too far' or ''.
    """

    name: str
    meant: str
    printed: str
    share: str
    points: str
    mark: str


@dataclass(frozen=True)
class DriftPart:
    """A component. base: what its shares are of, 'flour'."""

    title: str
    base: str
    rows: tuple[DriftRow, ...]


@dataclass(frozen=True)
class ShownDrift:
    """told: the whole in a sentence."""

    told: str
    parts: tuple[DriftPart, ...]


@dataclass(frozen=True)
class ShownAnswer:
    """All texts of a what-if page.

    otherwise: the steps whose heat or time is not the tested one. method: 'The method, 18 steps', '' for
    none. days: the plan, a table a day, () where there is none. said: the answer in a sentence.
    """

    parts: tuple[ShownPart, ...]
    otherwise: tuple[ShownStep, ...]
    method: str
    drift: ShownDrift
    days: tuple[ClockDay, ...]
    said: str


def shown_answer(answer: Answer) -> ShownAnswer:
    """The texts of an answer that its sheet and plan do not have by themselves."""
    pairs = zip(answer.tested.components, answer.sheet.components, strict=True)
    parts = tuple(_part(tested, part) for tested, part in pairs)
    steps = [step for part in parts for step in part.steps]
    drift = sheet_drift(answer.sheet)
    return ShownAnswer(
        parts=parts,
        otherwise=tuple(step for step in steps if step.changed),
        method=f"The method, {counted(len(steps), 'step')}" if steps else "",
        drift=_drift(drift),
        days=tuple(clock_days(answer.plan.rows)) if answer.plan else (),
        said=_said(answer, drift.worst),
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
        meant=scale_text(line.exact_g) if line.exact_g is not None else "",
        printed=scale_text(line.printed_g) if line.printed_g is not None else "",
        share=percent_text(line.after),
        points=_points(line),
        mark=mark,
    )


def _points(line: LineDrift) -> str:
    return points_text(line.points).replace("-", "\N{MINUS SIGN}")


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


def _said(answer: Answer, worst: LineDrift | None) -> str:
    head = answer.sheet.head
    told = list(dict.fromkeys(each for each in (head.makes, head.batch.title) if each))
    told.append(head.edition.title)
    if answer.plan is not None:
        told.append(f"ready {answer.plan.ready}" if answer.plan.ready else f"{answer.plan.total} in all")
    if worst is not None and worst.points:
        told.append(f"rounding moves {worst.name} most, by {_points(worst)} points")
    worked_out = f"Worked out: {'; '.join(told)}."
    if not answer.faults:
        return worked_out
    return f"{worked_out} {counted(len(answer.faults), 'field')} cannot be followed."
