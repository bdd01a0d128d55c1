"""A production day on paper, for the kitchen's wall: what is made, bought, weighed out and done when."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby

from sitegen.press.imprint import Imprint
from sitegen.press.paper_press import PaperPress
from sitegen.press.theme import Theme
from sitegen.press.timeline import WIDE, timeline_svg
from sitegen.sheet.order_values import OrderSheet
from sitegen.sheet.work_values import ClockRow

TEMPLATE, STYLE = "order.html", "order.css"


class NoOrderTemplate(Exception):
    """The theme lays out no production day. missing: the file that it lacks."""

    def __init__(self, missing: str) -> None:
        super().__init__(missing)
        self.missing = missing


@dataclass(frozen=True)
class ClockDay:
    """The rows of one day; day: '' on a plan without an hour."""

    day: str
    rows: tuple[ClockRow, ...]


def print_order(theme: Theme, order: OrderSheet, imprint: Imprint, paper: str) -> bytes:
    """The production day as a tagged PDF. The same arguments give the same bytes. paper: 'a4' or 'letter'.

    Raises NoOrderTemplate, and OSError where the machine lacks what prints.
    """
    for name, files in ((f"templates/{TEMPLATE}", theme.templates), (f"styles/{STYLE}", theme.styles)):
        if name.partition("/")[2] not in files:
            raise NoOrderTemplate(name)
    return PaperPress(theme, STYLE).pdf(order_html(theme, order, imprint), paper, imprint.address)


def order_html(theme: Theme, order: OrderSheet, imprint: Imprint) -> str:
    """The page before it is printed."""
    timeline = order.plan.timeline
    return theme.environment.printed(
        TEMPLATE,
        order=order,
        plan=order.plan,
        imprint=imprint,
        days=clock_days(order.plan.rows),
        picture=timeline_svg(timeline, WIDE, "day", theme.tokens.type.sans) if timeline else "",
    )


def clock_days(rows: Sequence[ClockRow]) -> tuple[ClockDay, ...]:
    """The rows of a plan day by day, in their order."""
    return tuple(ClockDay(day, tuple(own)) for day, own in groupby(rows, key=lambda row: row.day))
