"""The printed card: what is on it, where it lies, and that it is the same every time."""

import hashlib
import logging
import os
import re
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import replace
from io import BytesIO
from pathlib import Path

import pikepdf
import pytest

from sitegen.press.card import CardPress
from sitegen.press.card_page import card_html
from sitegen.press.card_photos import PhotoMissing
from sitegen.press.paper_press import PAPERS
from sitegen.press.theme import Theme, load_theme
from sitegen.sheet.panel_values import Formula, FormulaRow, NutrientRow, Nutrition, SheetSwap
from sitegen.sheet.values import Sheet, SheetAlternative
from tests.press.card_words import printed_words, words_of_html
from tests.press.sample_cards import PAGE, card_photos, in_cups, sample_sheet, with_panels
from tests.press.sample_parts import TABLE_IMPRINT

PROJECT = Path(__file__).parents[2]
POINTS_IN_MM = 72 / 25.4
HOLE_PUNCH_MM = 15
"""ISO 838: the centre of a hole lies 12 mm from the edge, its radius is 3 mm."""


def with_first_text(sheet: Sheet, text: str) -> Sheet:
    part = sheet.components[0]
    steps = (replace(part.steps[0], text=text), *part.steps[1:])
    return replace(sheet, components=(replace(part, steps=steps), *sheet.components[1:]))


def stretched(sheet: Sheet) -> Sheet:
    """The sheet with the longest things that a baker may write."""
    long = "Schokoladenbuttercremetortenbodenverzierung"
    part = sheet.components[0]
    line = replace(part.lines[0], name=long, extra=long, amount="3\u00a0cups + 3\u00a0tbsp + 2½\u00a0tsp")
    step = replace(part.steps[0], text=long * 3, oven=sheet.oven * 3, tutorial=None)
    first = replace(part, title=f"{long} {long}", lines=(line, *part.lines), steps=(step, *part.steps[1:]))
    return replace(
        sheet,
        head=replace(sheet.head, title=f"{long} with {long} and {long}", makes=long, summary=long),
        components=(first, *sheet.components[1:]),
        tin=f"{long} {long}",
        oven=f"{sheet.oven}, then {sheet.oven}",
        plan=(replace(sheet.plan[0], component=long, summary=long * 2), *sheet.plan[1:]),
    )


SHAPES = {
    "two steps and no photo": sample_sheet(steps=2, photos=0, lines=4, cautions=False),
    "twelve steps, five photos": sample_sheet(),
    "twelve steps in cups": in_cups(sample_sheet()),
    "all panels": with_panels(sample_sheet(steps=8, photos=2)),
    "all panels in cups": in_cups(with_panels(sample_sheet(steps=8, photos=2))),
    "thirty steps, each with a photo": sample_sheet(steps=30, photos=30, lines=22),
    "ingredients over more than a page": sample_sheet(steps=3, photos=1, lines=90),
    "long words in every field": stretched(sample_sheet(steps=4, photos=2)),
    "a step longer than a page": with_first_text(
        sample_sheet(steps=3, photos=1), "Stir and stir again. " * 400
    ),
    "notes longer than a page": replace(
        sample_sheet(steps=2, photos=0), notes="Wait a little longer.\n\n" * 120
    ),
    "no method and no list": replace(sample_sheet(steps=2, photos=0), components=(), plan=()),
}


@pytest.fixture(scope="module")
def theme() -> Theme:
    return load_theme(PROJECT / "themes" / "oatcloth")


@pytest.fixture(scope="module")
def press(theme: Theme) -> CardPress:
    return CardPress(theme)


@pytest.fixture(autouse=True)
def engine_keeps_silent(caplog: pytest.LogCaptureFixture) -> Iterator[None]:
    """The printing engine logs what it leaves out: one line of it fails the test."""
    logger = logging.getLogger("weasyprint")
    logger.addHandler(caplog.handler)
    yield
    logger.removeHandler(caplog.handler)
    assert [record.getMessage() for record in caplog.records if record.name == "weasyprint"] == []


def printed(press: CardPress, sheet: Sheet, paper: str = "a4") -> bytes:
    return press.print_card(sheet, TABLE_IMPRINT, paper, card_photos(sheet), PAGE)


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("shape", SHAPES)
def test_all_words_are_printed_clear_of_each_other_and_of_a_hole_punch(
    shape: str, paper: str, press: CardPress, theme: Theme, tmp_path: Path
) -> None:
    sheet = SHAPES[shape]
    card = tmp_path / "card.pdf"
    card.write_bytes(printed(press, sheet, paper))
    words = printed_words(card)
    html = card_html(theme, sheet, TABLE_IMPRINT, dict.fromkeys(card_photos(sheet), ""), PAGE)

    assert [word for word in words_of_html(html) if word not in words.text] == []
    assert words.overlaps() == []
    assert words.outside(5 * POINTS_IN_MM) == []
    assert min(word.left for word in words.words) > HOLE_PUNCH_MM * POINTS_IN_MM


@pytest.mark.parametrize(("paper", "points"), [("a4", (595, 842)), ("letter", (612, 792))])
def test_paper_is_as_asked(paper: str, points: tuple[int, int], press: CardPress) -> None:
    """Sources: ISO 216 (210 x 297 mm); ANSI/ASME Y14.1 (8.5 x 11 in)."""
    with pikepdf.open(BytesIO(printed(press, SHAPES["two steps and no photo"], paper))) as pdf:
        assert [round(float(side)) for side in pdf.pages[0].mediabox] == [0, 0, *points]


@pytest.mark.parametrize("steps", [6, 8])
def test_a_plain_recipe_takes_two_pages(steps: int, press: CardPress) -> None:
    with pikepdf.open(BytesIO(printed(press, sample_sheet(steps=steps, photos=2, lines=6)))) as pdf:
        assert len(pdf.pages) == 2


@pytest.mark.parametrize("paper", PAPERS)
def test_panels_of_a_plain_recipe_fit_on_a_third_page(paper: str, press: CardPress) -> None:
    sheet = with_panels(sample_sheet(steps=6, photos=2, lines=6))
    with pikepdf.open(BytesIO(printed(press, sheet, paper))) as pdf:
        assert len(pdf.pages) <= 3


def test_every_page_bears_title_edition_batch_number_and_revision(press: CardPress, tmp_path: Path) -> None:
    card = tmp_path / "card.pdf"
    card.write_bytes(printed(press, SHAPES["twelve steps in cups"]))
    with pikepdf.open(card) as pdf:
        count = len(pdf.pages)
    for number in range(1, count + 1):
        text = page_text(card, number)
        assert "Pear and oat slices with brown butter · US cups · 32 slices" in text
        assert f"Page {number} of {count}" in text
        assert "Revised 20 July 2026" in text


def test_no_heading_stands_last_on_its_page(press: CardPress, tmp_path: Path) -> None:
    card = tmp_path / "card.pdf"
    for lines in range(1, 24, 2):
        sheet = sample_sheet(steps=12, photos=3, lines=lines)
        card.write_bytes(printed(press, sheet))
        with pikepdf.open(card) as pdf:
            count = len(pdf.pages)
        for number in range(1, count + 1):
            body = page_text(card, number).partition("Pear and oat slices with brown butter · British")[0]
            assert body.split("\n\n")[-1].strip() not in {"Oat crumb", "Pear filling", "Method", "Work plan"}


def test_all_fonts_are_embedded_subsets_of_the_theme(press: CardPress, theme: Theme, tmp_path: Path) -> None:
    card = tmp_path / "card.pdf"
    card.write_bytes(printed(press, SHAPES["twelve steps, five photos"]))
    listed = subprocess.run(["pdffonts", card], capture_output=True, text=True, check=True).stdout
    rows = listed.splitlines()[2:]
    families = {font.family.replace(" ", "-") for font in theme.fonts}
    assert len(rows) == len(theme.fonts)
    for row in rows:
        subset = re.match(r"[A-Z]{6}\+([A-Za-z]+-[A-Za-z]+)", row)
        assert subset, row
        assert subset[1] in families, row
        assert re.search(r" yes yes yes ", row), row


def test_photos_are_printed_at_200_dots_an_inch_and_more(press: CardPress, tmp_path: Path) -> None:
    card = tmp_path / "card.pdf"
    card.write_bytes(printed(press, SHAPES["twelve steps, five photos"]))
    listed = subprocess.run(["pdfimages", "-list", card], capture_output=True, text=True, check=True).stdout
    rows = [row.split() for row in listed.splitlines()[2:]]
    assert len(rows) == 6
    for row in rows:
        kind, across, down = row[8], int(row[12]), int(row[13])
        assert kind == "jpeg"
        assert 200 <= across <= 300
        assert 200 <= down <= 300


def test_card_with_thirty_photos_can_be_sent_by_mail(press: CardPress) -> None:
    assert len(printed(press, SHAPES["thirty steps, each with a photo"])) < 1_500_000


def test_missing_photo_is_an_error_that_names_it(press: CardPress) -> None:
    sheet = sample_sheet(steps=4, photos=2)
    photos = card_photos(sheet)
    missing = next(file for file in photos if file.endswith("step-2.jpg"))
    del photos[missing]
    with pytest.raises(PhotoMissing) as raised:
        press.print_card(sheet, TABLE_IMPRINT, "a4", photos, PAGE)
    assert raised.value.file == missing


def test_dates_are_those_of_the_sheet(press: CardPress) -> None:
    with pikepdf.open(BytesIO(printed(press, SHAPES["two steps and no photo"]))) as pdf:
        assert str(pdf.docinfo["/CreationDate"]) == "D:20260501"
        assert str(pdf.docinfo["/ModDate"]) == "D:20260720"


def test_sheet_without_dates_has_none_on_the_card(press: CardPress) -> None:
    sheet = SHAPES["two steps and no photo"]
    undated = replace(sheet, head=replace(sheet.head, published="", modified=""), revisions=())
    with pikepdf.open(BytesIO(printed(press, undated))) as pdf:
        assert "/CreationDate" not in pdf.docinfo
        assert "/ModDate" not in pdf.docinfo


def test_bookmarks_follow_the_headings(press: CardPress) -> None:
    with pikepdf.open(BytesIO(printed(press, SHAPES["twelve steps, five photos"]))) as pdf:
        outline = pdf.open_outline()
        title = outline.root[0]
        assert title.title == "Pear and oat slices with brown butter"
        assert [part.title for part in title.children] == [
            "Take care",
            "Ingredients",
            "Method",
            "Work plan",
            "Keeping",
            "Notes",
            "Changes",
        ]


def test_panels_are_bookmarked(press: CardPress) -> None:
    with pikepdf.open(BytesIO(printed(press, SHAPES["all panels"]))) as pdf:
        titles = [part.title for part in pdf.open_outline().root[0].children]
    assert "Formula Honey dough, in baker’s percentages" in titles
    assert "Nutrition" in titles


def test_links_lead_to_the_recipe_the_video_and_the_technique(press: CardPress) -> None:
    with pikepdf.open(BytesIO(printed(press, SHAPES["twelve steps, five photos"]))) as pdf:
        links = {str(note.A.URI) for page in pdf.pages for note in page.get("/Annots", [])}
    assert links == {
        PAGE,
        "https://video.example/pear-and-oat-slices",
        "https://tansyrow.example/table/tutorials/lining-tins.html",
    }


def test_same_card_twice_has_the_same_bytes(press: CardPress) -> None:
    sheet = SHAPES["twelve steps, five photos"]
    assert printed(press, sheet) == printed(press, sheet)


def test_other_paper_or_another_word_gives_another_identifier(press: CardPress) -> None:
    sheet = SHAPES["two steps and no photo"]
    other = replace(sheet, notes="One word more.")
    identifiers = set()
    for one, paper in ((sheet, "a4"), (sheet, "letter"), (other, "a4")):
        with pikepdf.open(BytesIO(printed(press, one, paper))) as pdf:
            identifiers.add(bytes(pdf.trailer.ID[0]))
    assert len(identifiers) == 3


PRINT_ELSEWHERE = """
import hashlib, sys
from pathlib import Path
from sitegen.press.card import CardPress
from sitegen.press.theme import load_theme
from tests.press.sample_cards import PAGE, card_photos, sample_sheet
from tests.press.sample_parts import TABLE_IMPRINT
sheet = sample_sheet()
press = CardPress(load_theme(Path(sys.argv[1])))
print(hashlib.sha256(press.print_card(sheet, TABLE_IMPRINT, "a4", card_photos(sheet), PAGE)).hexdigest())
"""


@pytest.mark.parametrize(("seed", "zone"), [("1", "Pacific/Auckland"), ("77", "America/Denver")])
def test_bytes_are_the_same_in_another_folder_zone_and_process(
    seed: str, zone: str, press: CardPress, tmp_path: Path
) -> None:
    here = hashlib.sha256(printed(press, SHAPES["twelve steps, five photos"])).hexdigest()
    elsewhere = subprocess.run(
        [sys.executable, "-c", PRINT_ELSEWHERE, PROJECT / "themes" / "oatcloth"],
        cwd=tmp_path,
        env={**os.environ, "PYTHONPATH": str(PROJECT), "PYTHONHASHSEED": seed, "TZ": zone},
        capture_output=True,
        text=True,
        check=True,
    )
    assert elsewhere.stdout.strip() == here
    assert elsewhere.stderr == ""


HARM = (
    "<script>alert(1)</script>",
    '"><img src=x onerror=alert(1)>',
    "![gone](https://elsewhere.example/spy.png)",
    "[press](javascript:alert(1))",
    "<style>body{display:none}</style>",
    "{{ 7 * 7 }}",
)


@pytest.mark.parametrize("harm", HARM)
def test_markup_in_any_field_is_printed_or_dropped_but_never_obeyed(
    harm: str, press: CardPress, theme: Theme
) -> None:
    sheet = poisoned(sample_sheet(steps=4, photos=1), harm)
    html = card_html(theme, sheet, TABLE_IMPRINT, dict.fromkeys(card_photos(sheet), ""), PAGE)
    for forbidden in ("<script", "<style", "<img src=x", "<img src='x", 'elsewhere.example/spy.png"', "49"):
        assert forbidden not in html
    assert "javascript:" not in "".join(re.findall(r'href="[^"]*"', html))
    assert printed(press, sheet).startswith(b"%PDF-1.7")


def poisoned(sheet: Sheet, harm: str) -> Sheet:
    """The sheet with `harm` in each of its texts."""
    part = sheet.components[0]
    line = replace(
        part.lines[0],
        name=harm,
        amount=harm,
        extra=harm,
        others=(SheetAlternative(harm, harm, (harm,)),),
        beside=harm,
    )
    step = replace(part.steps[0], text=harm, oven=harm, until=harm, hands_on=harm, fill=harm, wait=harm)
    row = replace(sheet.plan[0], summary=harm, component=harm, start=harm, hands_on=harm, wait=harm)
    caution = replace(sheet.cautions[0], title=harm, text=harm, source=harm)
    photo = sheet.head.photo and replace(sheet.head.photo, alt=harm)
    formula = Formula(harm, (FormulaRow(harm, harm, harm, harm),), ((harm, harm),), (harm,))
    nutrition = Nutrition("eu", harm, (NutrientRow(harm, harm, harm, harm),), (harm,))
    return replace(
        sheet,
        head=replace(sheet.head, title=harm, summary=harm, makes=harm, photo=photo),
        components=(replace(part, title=harm, makes=harm, lines=(line,), steps=(step,)),),
        plan=(row,),
        cautions=(caution,),
        tin=harm,
        oven=harm,
        allergens=(harm,),
        egg_note=harm,
        measure_note=harm,
        batch_notes=(harm,),
        notes=harm,
        keeping=((harm, harm),),
        revisions=(replace(sheet.revisions[0], day=harm, note=harm),),
        estimates_note=harm,
        swaps=(SheetSwap(harm, harm, harm, harm, harm),),
        nutrition=nutrition,
        formulas=(formula,),
        unknowns=(harm,),
        leftovers=(harm,),
    )


def page_text(card: Path, number: int) -> str:
    command = ["pdftotext", "-f", str(number), "-l", str(number), card, "-"]
    text = subprocess.run(command, capture_output=True, text=True, check=True).stdout
    return text.replace("\u00a0", " ")
