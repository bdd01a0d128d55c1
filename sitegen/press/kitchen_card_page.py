"""The kitchen card as one HTML page, before it is printed: amounts, tin, oven and times, for the wall."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from sitegen.press.card_columns import ColumnWidth, card_columns
from sitegen.press.card_parts import latest_revision, qr_code, typed
from sitegen.press.imprint import Imprint
from sitegen.press.theme import Theme
from sitegen.sheet.values import Sheet, SheetComponent

KITCHEN_TEMPLATE, KITCHEN_STYLE = "kitchen-card.html", "kitchen-card.css"
_WIDTH = ColumnWidth(columns=2, line=22, run_on=30, note=1)
_LINE = 52
"""Letters of a line in the table of times."""


@dataclass(frozen=True)
class WatchedStep:
    """A step that the oven or the clock has a part in. start: '' without a plan. words: what it is about."""

    number: int
    start: str
    words: str
    oven: str
    wait: str


def kitchen_card_html(theme: Theme, sheet: Sheet, imprint: Imprint, page_address: str) -> str:
    """The page of a kitchen card. page_address: of the recipe's page, in full."""
    return theme.environment.printed(
        KITCHEN_TEMPLATE,
        sheet=sheet,
        head=sheet.head,
        imprint=imprint,
        page_address=page_address,
        columns=card_columns(_plain_lists(sheet), (), _WIDTH),
        has_beside=False,
        watched=tuple(_watched(sheet)),
        reds=[caution.title for caution in sheet.cautions if caution.level == "red"],
        revised=latest_revision(sheet),
        qr=qr_code,
        typed=typed,
    )


def _plain_lists(sheet: Sheet) -> list[SheetComponent]:
    """The ingredient lists without preparation and without what may be taken instead."""
    return [
        replace(part, makes="", lines=tuple(replace(line, extra="", others=()) for line in part.lines))
        for part in sheet.components
    ]


def _watched(sheet: Sheet) -> Iterator[WatchedStep]:
    """In the order of the plan, or as written where there is none."""
    rows = {row.step: row for row in sheet.plan}
    steps = {step.number: (part, step) for part in sheet.components for step in part.steps}
    for number in rows or steps:
        part, step = steps[number]
        if step.oven or step.wait:
            row = rows.get(number)
            yield WatchedStep(
                number=number,
                start=row.start if row else "",
                words=_words(part.title, row.summary if row else ""),
                oven=step.oven,
                wait=step.wait,
            )


def _words(component: str, summary: str) -> str:
    """What is done, and to what where the line has room for it."""
    both = f"{component}: {summary}" if summary else component
    return both if len(both) <= _LINE or not summary else summary
