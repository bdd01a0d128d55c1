"""What stands around the recipe (swaps, formula, nutrition and their like), wherever a sheet is printed."""

import re
from collections.abc import Callable, Iterator
from dataclasses import astuple, replace
from html import unescape

import pytest

from sitegen.kitchen.recipe import PublicShows
from sitegen.press.card_page import card_html
from sitegen.press.card_photos import boxes_of
from sitegen.press.choices import Choices
from sitegen.press.plain_sheet import plain_sheet
from sitegen.press.recipe_page import recipe_page
from sitegen.press.theme import Theme, load_theme
from sitegen.release.audience import public_view
from sitegen.sheet.panel_values import Formula, SheetSwap
from sitegen.sheet.values import Sheet, View
from tests.press.sample_parts import FORMULA, IMPRINT, NUTRITION, PLAIN_FORMULA, TABLE_IMPRINT, US_NUTRITION
from tests.press.sample_sheets import HERE, SHEET, THEME_FOLDER

US_SHEET = replace(SHEET, nutrition=US_NUTRITION)
BARE = replace(SHEET, swaps=(), nutrition=None, formulas=(), unknowns=(), leftovers=(), keeping=())
FIELDS = ("swaps", "nutrition", "formulas", "unknowns", "leftovers", "keeping")
TITLES = ("If you cannot get", "Nutrition", "Formula", "Not worked out", "Left over", "Keeping")
NOT_PRINTED = {"eu", "us"}
"""The style of a nutrition table is no word of it."""


@pytest.fixture(scope="module")
def theme() -> Theme:
    return load_theme(THEME_FOLDER)


def shown(theme: Theme, view: View) -> str:
    """The words of a page's body."""
    imprint = TABLE_IMPRINT if isinstance(view, Sheet) else IMPRINT
    return words_in(recipe_page(theme, imprint, view, Choices(), {}, HERE).decode())


def words_in(html: str) -> str:
    return unescape(re.sub(r"<[^>]+>", " ", html.split("<body>")[1])).replace("’", "'")


def on_page(theme: Theme, sheet: Sheet) -> str:
    return shown(theme, sheet)


def on_card(theme: Theme, sheet: Sheet) -> str:
    photos = photo_places(sheet)
    return words_in(card_html(theme, sheet, TABLE_IMPRINT, photos, "https://tansyrow.example/x.html"))


def photo_places(sheet: Sheet) -> dict[str, str]:
    return dict.fromkeys(boxes_of(sheet), "")


def at_the_terminal(_theme: Theme, sheet: Sheet) -> str:
    return plain_sheet(sheet)


Printer = Callable[[Theme, Sheet], str]
EVERYWHERE: list[Printer] = [on_page, on_card, at_the_terminal]


def texts_of(value: object) -> Iterator[str]:
    if isinstance(value, str) and value not in NOT_PRINTED:
        yield value
    elif isinstance(value, tuple):
        for item in value:
            yield from texts_of(item)


def flat(text: str) -> str:
    """Without spaces and capitals: a card begins a total with a large letter."""
    return "".join(text.split()).lower()


@pytest.mark.parametrize("field", FIELDS)
@pytest.mark.parametrize("sheet", [SHEET, US_SHEET], ids=["eu", "us"])
@pytest.mark.parametrize("printer", EVERYWHERE)
def test_every_word_of_a_panel_is_printed(printer: Printer, sheet: Sheet, field: str, theme: Theme) -> None:
    printed = flat(printer(theme, sheet))
    whole = astuple(sheet)[[*Sheet.__dataclass_fields__].index(field)]
    sources = set() if printer is on_page else {swap.source for swap in sheet.swaps}
    texts = [text for text in texts_of(whole) if text not in sources]
    assert texts
    assert [text for text in texts if flat(text) not in printed] == []


@pytest.mark.parametrize("printer", EVERYWHERE)
def test_no_heading_stands_over_nothing(printer: Printer, theme: Theme) -> None:
    full, bare = printer(theme, SHEET), printer(theme, BARE)
    assert [title for title in TITLES if title not in full] == []
    assert [title for title in TITLES if title in bare] == []


@pytest.mark.parametrize("printer", EVERYWHERE)
def test_daily_values_have_a_column_only_where_the_region_has_them(printer: Printer, theme: Theme) -> None:
    assert "daily value" not in printer(theme, SHEET).lower()
    assert "daily value" in printer(theme, US_SHEET).lower()


@pytest.mark.parametrize("printer", EVERYWHERE)
def test_a_recipe_without_portions_is_told_for_100_g_alone(printer: Printer, theme: Theme) -> None:
    rows = tuple(replace(row, per_portion="") for row in NUTRITION.rows)
    printed = printer(theme, replace(SHEET, nutrition=replace(NUTRITION, portion="", rows=rows)))
    assert "403\u00a0kcal".replace("\u00a0", " ") in printed.replace("\u00a0", " ")
    assert "portion" not in printed.lower()


@pytest.mark.parametrize("printer", EVERYWHERE)
def test_figures_for_100_g_have_a_column_only_where_the_region_asks_for_them(
    printer: Printer, theme: Theme
) -> None:
    rows = tuple(replace(row, per_100g="") for row in US_NUTRITION.rows)
    printed = printer(theme, replace(SHEET, formulas=(), nutrition=replace(US_NUTRITION, rows=rows)))
    table = printed.replace("\u00a0", " ").split("Nutrition")[1]
    assert "Total carbohydrate" in table
    assert "100 g" not in table


@pytest.mark.parametrize("printer", EVERYWHERE)
def test_a_preferment_stands_apart_from_the_final_dough(printer: Printer, theme: Theme) -> None:
    printed = printer(theme, SHEET)
    assert printed.index("Poolish") < printed.index("Final dough") < printed.index("wholemeal flour")
    assert "Final dough" not in printer(theme, with_formula(PLAIN_FORMULA))


@pytest.mark.parametrize("printer", EVERYWHERE)
def test_a_formula_without_totals_and_notes_prints_its_rows(printer: Printer, theme: Theme) -> None:
    printed = printer(theme, with_formula(replace(FORMULA, totals=(), notes=())))
    assert "wholemeal flour" in printed
    assert "hydration" not in printed.lower()


def test_no_element_is_left_empty_where_a_panel_has_the_least(theme: Theme) -> None:
    least = replace(
        SHEET,
        swaps=(SheetSwap("golden syrup", "60\u00a0g clear honey", "", "", ""),),
        nutrition=replace(NUTRITION, notes=()),
        formulas=(replace(FORMULA, totals=(), notes=()),),
    )
    page = recipe_page(theme, TABLE_IMPRINT, least, Choices(), {}, HERE).decode()
    card = card_html(theme, least, TABLE_IMPRINT, photo_places(least), "https://tansyrow.example/x.html")
    for html in (page, card):
        assert re.findall(r"<(p|dl|dd|h2|section)[^>]*>\s*</\1>", html) == []


def with_formula(formula: Formula) -> Sheet:
    return replace(SHEET, formulas=(formula,))


def test_swaps_and_what_is_unknown_stand_before_the_first_list_of_a_sheet(theme: Theme) -> None:
    page = on_page(theme, SHEET)
    first_line = page.index("110 g")
    assert page.index("Not worked out") < page.index("If you cannot get it") < first_line


def test_readers_of_the_ingredients_alone_see_swaps_and_unknowns_but_no_formula(theme: Theme) -> None:
    page = shown(theme, public_view(SHEET, PublicShows.INGREDIENTS))
    assert "150\u00a0g plain flour + 1½\u00a0tsp baking powder" in page
    assert SHEET.unknowns[0] in page
    assert [word for word in ("Formula", "Nutrition", "Left over") if word in page] == []


def test_a_teaser_holds_nothing_of_a_swap(theme: Theme) -> None:
    teaser = public_view(SHEET, PublicShows.TEASER)
    page = shown(theme, teaser)
    secrets = [text for swap in SHEET.swaps for text in (swap.instead_of, swap.use)]
    assert [text for text in secrets if text in repr(teaser) or text in page] == []


@pytest.mark.parametrize("sheet", [SHEET, US_SHEET], ids=["eu", "us"])
def test_every_table_of_a_page_has_a_name_and_heads_for_each_row(sheet: Sheet, theme: Theme) -> None:
    """WCAG 2.2, 1.3.1: what a figure belongs to is told in the markup, not by its place alone."""
    html = recipe_page(theme, TABLE_IMPRINT, sheet, Choices(), {}, HERE).decode()
    tables = [table for table in re.findall(r"<table>.*?</table>", html, re.DOTALL) if "<caption" in table]
    assert len(tables) == 3
    for table in tables:
        rows = re.findall(r"<tr[^>]*>.*?</tr>", table.split("</thead>")[1], re.DOTALL)
        assert [row for row in rows if 'scope="row' not in row] == []
        assert 'scope="col"' in table.split("</thead>")[0]
