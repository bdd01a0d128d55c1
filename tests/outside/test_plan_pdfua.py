"""Plans of the day on paper, held against PDF/UA-1.

Source: ISO 14289-1 as the package `page-validation` checks it, 104 rules.
"""

from dataclasses import replace
from datetime import datetime, time
from pathlib import Path
from zoneinfo import ZoneInfo

import page
import pytest

from sitegen.press.paper_press import PAPERS
from sitegen.press.plan_page import print_plan
from sitegen.press.theme import Theme, load_theme
from sitegen.sheet.day_plan import Wish
from sitegen.sheet.work_values import DayPlan
from sitegen.timing.kitchens import Kitchen
from tests.outside.demo_plans import SLUGS, demo_plan
from tests.press.sample_parts import TABLE_IMPRINT

THEME = Path(__file__).parents[2] / "themes" / "oatcloth"
READY = datetime(2026, 12, 5, 16, tzinfo=ZoneInfo("Europe/London"))


@pytest.fixture(scope="module")
def theme() -> Theme:
    return load_theme(THEME)


def assert_pdf_ua_1(theme: Theme, plan: DayPlan, paper: str, folder: Path) -> None:
    printed = folder / "plan.pdf"
    printed.write_bytes(print_plan(theme, plan, TABLE_IMPRINT, "en-GB", paper))
    found = page.validate_pdf(str(printed), profile="ua1")
    assert [failure.rule_id for failure in found.failures] == []
    assert found.is_compliant


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("slug", SLUGS)
def test_a_plan_keeps_every_rule_of_pdf_ua_1(slug: str, paper: str, theme: Theme, tmp_path: Path) -> None:
    plan = demo_plan(slug, Wish(Kitchen(), READY, rest=(time(22), time(7))))
    assert_pdf_ua_1(theme, plan, paper, tmp_path)


def test_a_plan_on_its_own_clock_and_one_without_a_picture_keep_them_too(
    theme: Theme, tmp_path: Path
) -> None:
    plan = demo_plan(SLUGS[0], Wish(Kitchen()))
    assert_pdf_ua_1(theme, plan, "a4", tmp_path)
    assert_pdf_ua_1(theme, replace(plan, timeline=None, notes=()), "a4", tmp_path)
