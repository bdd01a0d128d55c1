"""A production day on paper and as plain text."""

from dataclasses import replace
from io import BytesIO
from pathlib import Path

import pikepdf
import pytest

from sitegen.press.order_page import NoOrderTemplate, clock_days, order_html, print_order
from sitegen.press.plain_order import plain_order
from sitegen.press.theme import Theme, load_theme
from sitegen.sheet.order_values import (
    Counter,
    CounterRow,
    OrderCost,
    OrderProduct,
    OrderSheet,
    ProductCost,
    ShoppingRow,
    ShoppingSection,
    WeighLine,
    WeighOut,
)
from sitegen.sheet.values import EditionLabel, SheetCaution
from sitegen.sheet.work_values import ClockRow, DayPlan, PlanRow
from tests.press.sample_parts import TABLE_IMPRINT

THEME = Path(__file__).parents[2] / "themes" / "oatcloth"


def clock(start: str, component: str, day: str = "Saturday 28 November 2026", product: str = "") -> ClockRow:
    row = PlanRow(1, component, "Beat it", "0:00", "10 min", "20 min", 0, 10, 20, True, "oven", product)  # type: ignore[arg-type]
    return ClockRow(row, day, start, "", "10:30", must_start="out of the oven")


ORDER = OrderSheet(
    title="Market <day>",
    edition=EditionLabel("british-metric", "British metric", "en-GB"),
    products=(
        OrderProduct(
            "Iced buns", "36 buns", "three times the recipe", "three tins", "160 C", "3 oven loads", "1 day"
        ),
    ),
    shopping=(
        ShoppingSection("Flour and grain", (ShoppingRow("plain flour", "1.1 kg", "1 pack of 1.5 kg"),)),
    ),
    optional=(ShoppingRow("demerara sugar", "60 g"),),
    to_hand=("sunflower oil",),
    egg_note="Eggs are UK medium.",
    weigh_outs=(
        WeighOut(
            "Batter",
            "Iced buns",
            "about 1.7 kg",
            (WeighLine("900 g", "plain flour", "", "or spelt", "sifted", ("wheat",)),),
        ),
        WeighOut(
            "Icing",
            "",
            "",
            (WeighLine("420 g", "unsalted butter"),),
            (("720 g", "Buns"), ("240 g", "Cake")),
            "about 70 g of Icing",
        ),
    ),
    plan=DayPlan(
        "Market",
        (clock("10:00", "Icing", "Friday 27 November 2026"), clock("09:00", "Batter", product="Iced buns")),
        "2 h",
        "1 h",
        "1 h",
        "3 h",
        "10:00, Friday 27 November 2026",
        "09:00, Saturday 28 November 2026",
        "Proved.",
        ("Switch the oven on.",),
        None,
    ),
    counter=Counter(("wheat", "milk"), (CounterRow("Iced buns", ("yes", "may")),), ("Check the label.",)),
    cautions=(SheetCaution("hot", "red", "Hot sugar", "It burns.", "NHS"),),
    estimates_note="Estimates only.",
    cost=OrderCost(
        "GBP",
        (ProductCost("Iced buns", "8.47", "0.24 a bun"),),
        (("the whole day", "35.26"),),
        ("rose water (no price)",),
        ("A note.",),
    ),
)


@pytest.fixture(scope="module")
def theme() -> Theme:
    return load_theme(THEME)


def test_what_is_weighed_bought_and_timed_stands_on_the_page(theme: Theme) -> None:
    html = order_html(theme, ORDER, TABLE_IMPRINT)
    for text in (
        "Market &lt;day&gt;",
        "36 buns",
        "3 oven loads",
        "1 pack of 1.5 kg",
        "May be left out",
        "sunflower oil",
        "900 g",
        "or spelt",
        "sifted",
        "for Iced buns",
        "<strong>720 g</strong> for Buns",
        "about 70 g of Icing",
        "Friday 27 November 2026",
        "Saturday 28 November 2026",
        "On time: out of the oven",
        "<strong>1. Batter</strong>",
        "until <strong>10:30",
        "Hot sugar",
        "rose water (no price)",
        "35.26",
    ):
        assert text in html


def test_marks_of_the_counter_are_words_and_not_colours_alone(theme: Theme) -> None:
    html = order_html(theme, ORDER, TABLE_IMPRINT)
    assert '<td class="yes">yes</td><td class="may">may</td>' in html


def test_an_order_without_costs_has_no_page_for_them(theme: Theme) -> None:
    assert "What it costs" not in order_html(theme, replace(ORDER, cost=None), TABLE_IMPRINT)


def test_a_day_begins_a_table_of_its_own() -> None:
    assert [(day.day, len(day.rows)) for day in clock_days(ORDER.plan.rows)] == [
        ("Friday 27 November 2026", 1),
        ("Saturday 28 November 2026", 1),
    ]


@pytest.mark.parametrize(("paper", "points"), [("a4", (595, 842)), ("letter", (612, 792))])
def test_it_is_printed_on_the_paper_that_is_asked_for_and_always_alike(
    paper: str, points: tuple[int, int], theme: Theme
) -> None:
    printed = print_order(theme, ORDER, TABLE_IMPRINT, paper)
    assert printed == print_order(theme, ORDER, TABLE_IMPRINT, paper)
    with pikepdf.open(BytesIO(printed)) as pdf:
        assert {tuple(round(float(side)) for side in sheet.mediabox[2:]) for sheet in pdf.pages} == {points}
        assert len(pdf.pages) == 6


def test_a_theme_without_its_page_is_told_apart(theme: Theme) -> None:
    without = replace(theme, styles={})
    with pytest.raises(NoOrderTemplate) as problem:
        print_order(without, ORDER, TABLE_IMPRINT, "a4")
    assert problem.value.missing == "styles/order.css"


def test_pages_for_readers_carry_nothing_of_its_style(theme: Theme) -> None:
    assert ".shopping" in theme.styles["order.css"]
    assert ".shopping" not in theme.stylesheet


def test_plain_text_tells_the_same() -> None:
    text = plain_order(ORDER)
    for fact in (
        "36 buns: Iced buns (three times the recipe)",
        "plain flour",
        "1 pack of 1.5 kg",
        "Batter, for Iced buns, makes about 1.7 kg",
        "plain flour or spelt, sifted   900 g",
        "Of which: 720 g for Buns, 240 g for Cake.",
        "Left over: about 70 g of Icing.",
        "To hand, without an amount: sunflower oil.",
        "Hot sugar: It burns.",
        "Not in these sums: rose water (no price).",
    ):
        assert fact in text
