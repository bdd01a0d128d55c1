"""Numbered copies of real cards: PDF/UA-1, the text on the page, and what stays as it was printed.

Sources: ISO 14289-1 as the package `page-validation` checks it; text and pixels as poppler's `pdftotext` and
`pdftoppm` give them; ISO 32000-2, 7.6, as qpdf reads it.
"""

import subprocess
from io import BytesIO
from pathlib import Path

import page
import pikepdf
import pytest
from PIL import Image, ImageChops

from sitegen.press.card import CardPress
from sitegen.press.mark_face import MarkFace
from sitegen.press.stamp import CardStamp, Lock
from sitegen.press.theme import load_theme
from tests.press.sample_cards import PAGE, card_photos, sample_sheet
from tests.press.sample_parts import TABLE_IMPRINT

THEME = Path(__file__).parents[2] / "themes" / "oatcloth"
NAME = "Żaneta O'Łoś (Жанна) & Söhne"
NUMBER = 1042
PDFX = "{http://ns.adobe.com/pdfx/1.3/}"
"""The namespace in which XMP repeats what the document information holds of its own."""
DOTS = 60
"""An inch, for pixels."""


@pytest.fixture(scope="module")
def cards() -> dict[str, bytes]:
    """A card of some pages and a kitchen card, which has the narrower margins."""
    press = CardPress(load_theme(THEME))
    sheet = sample_sheet(steps=12, photos=2)
    photos = card_photos(sheet)
    return {paper: press.print_card(sheet, TABLE_IMPRINT, paper, photos, PAGE) for paper in ("letter", "a5")}


@pytest.fixture(params=["letter", "a5"])
def card(request: pytest.FixtureRequest, cards: dict[str, bytes]) -> bytes:
    return cards[str(request.param)]


def written(body: bytes, folder: Path, name: str = "copy.pdf") -> Path:
    file = folder / name
    file.write_bytes(body)
    return file


def pages_as_pixels(pdf: Path) -> list[Image.Image]:
    subprocess.run(["pdftoppm", "-gray", "-r", str(DOTS), pdf, pdf.with_suffix("")], check=True)
    files = sorted(pdf.parent.glob(f"{pdf.stem}-*.pgm"))
    return [Image.open(file).copy() for file in files]


@pytest.mark.parametrize("lock", [None, Lock(printing=False)], ids=["open", "locked"])
def test_a_copy_keeps_every_rule_of_pdf_ua_1(lock: Lock | None, card: bytes, tmp_path: Path) -> None:
    copy = written(CardStamp(card, MarkFace()).copy(NUMBER, NAME, lock), tmp_path)
    found = page.validate_pdf(str(copy), profile="ua1")
    assert [failure.rule_id for failure in found.failures] == []
    assert found.is_compliant
    with pikepdf.open(copy) as pdf:
        assert pdf.check_pdf_syntax() == []


def test_the_check_would_see_a_mark_that_is_no_artifact(cards: dict[str, bytes], tmp_path: Path) -> None:
    with pikepdf.open(BytesIO(CardStamp(cards["a5"], MarkFace()).copy(NUMBER, NAME))) as pdf:
        mark = pdf.pages[0].obj.Contents[-1]
        bare = mark.read_bytes().split(b"BDC\n")[1].replace(b"EMC\n", b"")
        mark.write(b"Q\n" + bare)
        pdf.save(tmp_path / "copy.pdf")
    assert not page.validate_pdf(str(tmp_path / "copy.pdf"), profile="ua1").is_compliant


def test_the_mark_is_text_on_each_page_and_the_card_s_own_text_stays(card: bytes, tmp_path: Path) -> None:
    before = written(card, tmp_path, "card.pdf")
    after = written(CardStamp(card, MarkFace()).copy(NUMBER, NAME), tmp_path)
    told = [
        subprocess.run(["pdftotext", file, "-"], capture_output=True, check=True).stdout.decode().split("\f")
        for file in (before, after)
    ]
    for printed, stamped in zip(told[0][:-1], told[1][:-1], strict=True):
        mark = f"Copy {NUMBER} for {NAME}"
        assert mark in stamped
        assert sorted(stamped.replace(mark, "").split()) == sorted(printed.split())


def test_the_mark_covers_nothing_that_was_printed(card: bytes, tmp_path: Path) -> None:
    """Where a copy is another than its card, the card is white, and so is all within a pixel of it."""
    before = pages_as_pixels(written(card, tmp_path, "card.pdf"))
    after = pages_as_pixels(written(CardStamp(card, MarkFace()).copy(NUMBER, NAME), tmp_path))
    assert len(before) == len(after)
    for printed, stamped in zip(before, after, strict=True):
        added = ImageChops.difference(printed, stamped).getbbox()
        assert added is not None
        left, top, right, bottom = added
        assert right - left <= 3 / 25.4 * DOTS + 2
        assert printed.crop((left - 1, top - 1, right + 1, bottom + 1)).getextrema() == (255, 255)
        assert left > 0
        assert right < printed.width


def test_information_that_the_card_had_stays(cards: dict[str, bytes]) -> None:
    copy = CardStamp(cards["letter"], MarkFace()).copy(NUMBER, NAME)
    with pikepdf.open(BytesIO(cards["letter"])) as before, pikepdf.open(BytesIO(copy)) as after:
        told = dict(after.docinfo.items())
        assert told.pop("/CopyNumber") == str(NUMBER)
        assert told.pop("/CopyFor") == NAME
        assert told == dict(before.docinfo.items())
        with before.open_metadata() as old, after.open_metadata() as new:
            added = {f"{PDFX}CopyNumber": str(NUMBER), f"{PDFX}CopyFor": NAME}
            assert dict(new) == {**old, **added}
