"""A plan of the day on paper: the picture, what to heed, and the steps at their hours, to be ticked off."""

from sitegen.press.imprint import Imprint
from sitegen.press.order_page import clock_days
from sitegen.press.paper_press import PaperPress
from sitegen.press.theme import Theme
from sitegen.press.timeline import WIDE, timeline_svg
from sitegen.sheet.work_values import DayPlan

TEMPLATE, STYLE = "plan-page.html", "order.css"


class NoPlanTemplate(Exception):
    """The theme lays out no plan. missing: the file that it lacks."""

    def __init__(self, missing: str) -> None:
        super().__init__(missing)
        self.missing = missing


def print_plan(theme: Theme, plan: DayPlan, imprint: Imprint, language: str, paper: str) -> bytes:
    """The plan as a tagged PDF. The same arguments give the same bytes.

    language: a BCP 47 tag. paper: 'a4' or 'letter'. Raises NoPlanTemplate, and OSError where the machine
    lacks what prints.
    """
    for folder, name, files in (("templates", TEMPLATE, theme.templates), ("styles", STYLE, theme.styles)):
        if name not in files:
            raise NoPlanTemplate(f"{folder}/{name}")
    html = plan_html(theme, plan, imprint, language)
    return PaperPress(theme, STYLE).pdf(html, paper, imprint.address)


def plan_html(theme: Theme, plan: DayPlan, imprint: Imprint, language: str) -> str:
    """The page before it is printed."""
    return theme.environment.printed(
        TEMPLATE,
        plan=plan,
        language=language,
        imprint=imprint,
        days=clock_days(plan.rows),
        picture=timeline_svg(plan.timeline, WIDE, "plan", theme.tokens.type.sans) if plan.timeline else "",
    )
