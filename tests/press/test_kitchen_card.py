"""The kitchen card: amounts, tin, oven and times on half a sheet."""

from dataclasses import replace
from io import BytesIO
from pathlib import Path

import pikepdf
import pytest

from sitegen.press.card import CARD_PAPERS, CardPress, photos_on
from sitegen.press.kitchen_card_page import kitchen_card_html
from sitegen.press.paper_press import HALF_PAPERS, PAPERS
from sitegen.press.theme import Theme, load_theme
from sitegen.sheet.values import Sheet
from sitegen.source import school
from tests.press.card_words import printed_words, words_of_html
from tests.press.sample_cards import PAGE, in_cups, sample_sheet, with_panels
from tests.press.sample_parts import TABLE_IMPRINT

THEME = Path(__file__).parents[2] / "themes" / "oatcloth"
POINTS_IN_MM = 72 / 25.4
SHAPES = {
    "twelve steps": sample_sheet(),
    "in cups": in_cups(sample_sheet()),
    "no caution": sample_sheet(steps=4, photos=0, lines=5, cautions=False),
    "all panels": with_panels(sample_sheet(steps=8)),
    "thirty steps": sample_sheet(steps=30, lines=22),
    "a list over pages": sample_sheet(steps=3, lines=60),
    "no plan": replace(sample_sheet(steps=6), plan=()),
}


@pytest.fixture(scope="module")
def theme() -> Theme:
    return load_theme(THEME)


@pytest.fixture(scope="module")
def press(theme: Theme) -> CardPress:
    return CardPress(theme)


def printed(press: CardPress, sheet: Sheet, paper: str) -> bytes:
    return press.print_card(sheet, TABLE_IMPRINT, paper, {}, PAGE)


@pytest.mark.parametrize("paper", HALF_PAPERS)
@pytest.mark.parametrize("shape", SHAPES)
def test_all_words_are_printed_clear_of_each_other(
    shape: str, paper: str, press: CardPress, theme: Theme, tmp_path: Path
) -> None:
    card = tmp_path / "card.pdf"
    card.write_bytes(printed(press, SHAPES[shape], paper))
    words = printed_words(card)
    html = kitchen_card_html(theme, SHAPES[shape], TABLE_IMPRINT, PAGE)

    assert [word for word in words_of_html(html) if word not in words.text] == []
    assert words.overlaps() == []
    assert words.outside(5 * POINTS_IN_MM) == []


@pytest.mark.parametrize(("paper", "points"), [("a5", (420, 595)), ("half-letter", (396, 612))])
def test_half_a_sheet_is_as_asked(paper: str, points: tuple[int, int], press: CardPress) -> None:
    """Sources: ISO 216 (148 x 210 mm); half of 8.5 x 11 in."""
    with pikepdf.open(BytesIO(printed(press, SHAPES["no caution"], paper))) as pdf:
        assert [round(float(side)) for side in pdf.pages[0].mediabox] == [0, 0, *points]


def test_a_school_may_ask_for_the_papers_that_the_press_has() -> None:
    assert set(HALF_PAPERS) == school.HALF_PAPERS
    assert CARD_PAPERS == ("a4", "letter", "a5", "half-letter")


def test_it_shows_no_photo(press: CardPress) -> None:
    sheet = SHAPES["twelve steps"]
    assert all(photos_on(sheet, paper) == {} for paper in HALF_PAPERS)
    assert all(photos_on(sheet, paper) for paper in PAPERS)
    with pikepdf.open(BytesIO(printed(press, sheet, "a5"))) as pdf:
        assert all(not page.get_images() for page in pdf.pages)


def test_short_recipe_fits_on_one_side(press: CardPress) -> None:
    with pikepdf.open(BytesIO(printed(press, SHAPES["no caution"], "a5"))) as pdf:
        assert len(pdf.pages) == 1


def test_amounts_ovens_times_cautions_and_allergens_are_on_it_and_no_prose(theme: Theme) -> None:
    html = kitchen_card_html(theme, SHAPES["twelve steps"], TABLE_IMPRINT, PAGE)
    for wanted in ("160\u00a0g", "160\u00a0°C fan, 180\u00a0°C, gas 4", "22–24\u00a0min", "hot sugar burns"):
        assert wanted in html
    assert "Contains: oats, wheat, milk, eggs, almonds." in html
    assert "no lump is larger" not in html
    assert "Caramel clings" not in html


def test_what_the_oven_and_the_clock_do_stands_in_order_of_the_plan(theme: Theme) -> None:
    sheet = sample_sheet(steps=6)
    turned = replace(sheet, plan=tuple(reversed(sheet.plan)))
    html = kitchen_card_html(theme, turned, TABLE_IMPRINT, PAGE)
    assert html.index("<td>6</td>") < html.index("<td>5</td>") < html.index("<td>2</td>")
    assert "<td>1</td>" not in html


def test_title_says_which_card_it_is_and_headings_are_bookmarks(press: CardPress) -> None:
    with pikepdf.open(BytesIO(printed(press, SHAPES["twelve steps"], "a5"))) as pdf:
        assert str(pdf.docinfo["/Title"]).endswith("British metric, 16 slices – kitchen card")
        titles = [part.title for part in pdf.open_outline().root[0].children]
        links = {str(note.A.URI) for page in pdf.pages for note in page.get("/Annots", [])}
    assert titles == ["Amounts", "Oven and clock"]
    assert links == {PAGE}
