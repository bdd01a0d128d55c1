"""A plan of the day on paper."""

from dataclasses import replace
from io import BytesIO
from pathlib import Path

import pikepdf
import pytest

from sitegen.press.plan_page import NoPlanTemplate, plan_html, print_plan
from sitegen.press.theme import Theme, load_theme
from tests.press.plans import FRIDAY, LOAF, SATURDAY
from tests.press.sample_parts import TABLE_IMPRINT

THEME = Path(__file__).parents[2] / "themes" / "oatcloth"


@pytest.fixture(scope="module")
def theme() -> Theme:
    return load_theme(THEME)


def test_the_page_has_the_picture_the_notes_and_every_step_at_its_hour(theme: Theme) -> None:
    html = plan_html(theme, LOAF, TABLE_IMPRINT, "en-GB")
    assert '<html lang="en-GB">' in html
    assert "<svg" in html
    for words in (*LOAF.notes, LOAF.proof, FRIDAY, SATURDAY, "20:00", "until <strong>09:00</strong>"):
        assert words in html
    assert "On time: out of the oven" in html
    assert "<em>flour</em>" in html


def test_a_plan_on_its_own_clock_has_no_day(theme: Theme) -> None:
    rows = tuple(replace(row, day="") for row in LOAF.rows)
    html = plan_html(theme, replace(LOAF, rows=rows, starts="", ready=""), TABLE_IMPRINT, "en-GB")
    assert "Ready" not in html
    assert 'class="day"' not in html


def test_the_paper_is_tagged_titled_and_always_the_same(theme: Theme) -> None:
    """ISO 14289-1: marked content, a title that viewers show, a language."""
    printed = print_plan(theme, LOAF, TABLE_IMPRINT, "en-GB", "a4")
    assert printed == print_plan(theme, LOAF, TABLE_IMPRINT, "en-GB", "a4")
    with pikepdf.open(BytesIO(printed)) as pdf:
        assert bool(pdf.Root.MarkInfo.Marked)
        assert str(pdf.Root.Lang) == "en-GB"
        assert str(pdf.docinfo["/Title"]).startswith("Honey, sesame; a loaf")
        with pdf.open_metadata() as facts:
            assert facts["pdfuaid:part"] == "1"


def test_a_theme_without_the_template_is_named(theme: Theme) -> None:
    bare = replace(
        theme, templates={name: text for name, text in theme.templates.items() if "plan-page" not in name}
    )
    with pytest.raises(NoPlanTemplate) as refused:
        print_plan(bare, LOAF, TABLE_IMPRINT, "en-GB", "a4")
    assert refused.value.missing == "templates/plan-page.html"
