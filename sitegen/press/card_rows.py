"""The steps of a card in rows: two short steps side by side, or a long one over both halves.

A row is a block of its own, whole on its page. Steps that ran in columns over the pages would mix their
order there, and cost more the more of them there are.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from sitegen.sheet.values import SheetComponent, SheetStep
from sitegen.sheet.work_values import PlanRow

_HALF, _NARROW = 54, 31
"""Letters of a line over half the width, and beside a photo there."""
_PHOTO_LINES = 4
_HEAD_LINES = 2
_TITLE_LINES = 1
_BROKEN_LINES = 1
"""What two steps must save to be worth a high row, which is more likely to miss the end of a page."""


@dataclass(frozen=True)
class StepCell:
    """A step at its place. start: on the plan's clock, '' without one. opens: what component it begins."""

    step: SheetStep
    start: str
    opens: SheetComponent | None


@dataclass(frozen=True)
class StepRow:
    """Two steps, or one that is spread over both halves: what it takes, then what is done."""

    cells: tuple[StepCell, ...]

    @property
    def is_spread(self) -> bool:
        return len(self.cells) == 1

    @cached_property
    def lines(self) -> int:
        """About how high the row is."""
        head = _HEAD_LINES + (_TITLE_LINES if any(cell.opens for cell in self.cells) else 0)
        if self.is_spread:
            step = self.cells[0].step
            return head + max(_lines(_needs(step), step), _lines(_does(step)))
        steps = [cell.step for cell in self.cells]
        return head + _BROKEN_LINES + max(_lines((*_needs(step), *_does(step)), step) for step in steps)


def step_rows(components: Sequence[SheetComponent], plan: Sequence[PlanRow]) -> tuple[StepRow, ...]:
    """Every step, in order, in those rows that are the least high together."""
    cells = tuple(_cells(components, {row.step: row.start for row in plan}))
    first: dict[int, StepRow] = {}
    height = {len(cells): 0}
    for at in reversed(range(len(cells))):
        ways = [StepRow(cells[at : at + size]) for size in (1, 2) if at + size <= len(cells)]
        heights = [row.lines + height[at + len(row.cells)] for row in ways]
        height[at] = min(heights)
        first[at] = ways[heights.index(height[at])]
    return tuple(_from_the_first(first))


def _from_the_first(first: Mapping[int, StepRow]) -> Iterator[StepRow]:
    at = 0
    while at in first:
        yield first[at]
        at += len(first[at].cells)


def _cells(components: Sequence[SheetComponent], starts: Mapping[int, str]) -> Iterator[StepCell]:
    for part in components:
        for place, step in enumerate(part.steps):
            yield StepCell(step, starts.get(step.number, ""), part if place == 0 else None)


def _needs(step: SheetStep) -> tuple[int, ...]:
    """Letters of each paragraph of what a step takes."""
    uses = sum(len(f"{use.amount} {use.name}, ") for use in step.uses)
    oven = len(f"{step.oven} {step.fill}".strip())
    return uses, oven, sum(len(caution) for caution in step.cautions)


def _does(step: SheetStep) -> tuple[int, ...]:
    """Letters of each paragraph of what is done."""
    return (
        len(step.text),
        len(f"{step.until} {step.then}".strip()),
        len(step.tutorial.title) if step.tutorial else 0,
    )


def _lines(paragraphs: Sequence[int], beside: SheetStep | None = None) -> int:
    """Lines of paragraphs of so many letters. beside: the step whose photo the first of them stand beside."""
    narrow = _PHOTO_LINES if beside and beside.photo else 0
    lines = 0
    for letters in paragraphs:
        while letters > 0:
            letters -= _NARROW if lines < narrow else _HALF
            lines += 1
    return max(lines, narrow)
