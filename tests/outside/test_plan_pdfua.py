"""Plans of the day on paper, held against PDF/UA-1.

Source: ISO 14289-1 as the package `page-validation` checks it, 104 rules.
"""

from dataclasses import replace
from datetime import datetime, time
from pathlib import Path
from zoneinfo import ZoneInfo

import page
import pytest

from sitegen.press.bundles import BundleContents, ContentsCard, ContentsPress, ContentsRecipe
from sitegen.press.fonts import subset
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


def test_the_contents_of_a_bundle_of_cards_are_valid(theme: Theme, tmp_path: Path) -> None:
    cards = (ContentsCard("British metric, A4", "cards/bay-british-metric-a4.pdf", "3 pages"),)
    news = (("3 July 2026", "new."), ("20 July 2026", "Oil corrected from 150 g to 105 g."))
    recipes = tuple(ContentsRecipe(f"Bay cake {number}", news, cards) for number in range(12))
    contents = BundleContents("Changed since 1 July 2026", "Print them again.", recipes)
    printed = tmp_path / "contents.pdf"
    fonts = {font: subset(font) for font in theme.fonts}
    printed.write_bytes(ContentsPress(theme, fonts).pdf(contents, TABLE_IMPRINT, "a4"))
    found = page.validate_pdf(str(printed), profile="ua1")
    assert [failure.rule_id for failure in found.failures] == []
