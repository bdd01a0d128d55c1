"""The tags of a card, as a reader of the screen is led through them."""

from collections.abc import Iterator
from io import BytesIO
from itertools import pairwise
from pathlib import Path

import pikepdf
import pytest

from sitegen.press.card import CardPress
from sitegen.press.theme import load_theme
from tests.press.sample_cards import PAGE, card_photos, sample_sheet
from tests.press.sample_parts import TABLE_IMPRINT

THEME = Path(__file__).parents[2] / "themes" / "oatcloth"


@pytest.fixture(scope="module")
def card() -> Iterator[pikepdf.Pdf]:
    sheet = sample_sheet(steps=12, photos=3)
    printed = CardPress(load_theme(THEME)).print_card(sheet, TABLE_IMPRINT, "a4", card_photos(sheet), PAGE)
    with pikepdf.open(BytesIO(printed)) as pdf:
        yield pdf


def elements(element: pikepdf.Object) -> Iterator[pikepdf.Dictionary]:
    """All structure elements below one, in reading order."""
    for kid in element.get("/K", ()):
        if isinstance(kid, pikepdf.Dictionary) and "/S" in kid:
            yield kid
            yield from elements(kid)


def tagged(card: pikepdf.Pdf, *tags: str) -> list[pikepdf.Dictionary]:
    return [element for element in elements(card.Root.StructTreeRoot) if str(element.S) in tags]


def marks(page: pikepdf.Page) -> Iterator[tuple[str, pikepdf.Object]]:
    """Each piece of marked content with properties: its tag and its properties."""
    for operands, operator in pikepdf.parse_content_stream(page):
        if str(operator) == "BDC":
            yield str(operands[0]), operands[1]


def test_running_foot_of_every_page_is_an_artifact(card: pikepdf.Pdf) -> None:
    for page in card.pages:
        feet = [properties for tag, properties in marks(page) if tag == "/Artifact" and "/Type" in properties]
        assert feet
        assert all(str(properties.Type) == "/Pagination" for properties in feet)


def test_all_other_content_belongs_to_an_element_that_is_reached(card: pikepdf.Pdf) -> None:
    reached = {element.objgen for element in elements(card.Root.StructTreeRoot)}
    numbers = card.Root.StructTreeRoot.ParentTree.Nums
    rows = {int(numbers[at]): numbers[at + 1] for at in range(0, len(numbers), 2)}
    for page in card.pages:
        row = rows[int(page.StructParents)]
        for _, properties in marks(page):
            if "/MCID" in properties:
                assert row[int(properties.MCID)].objgen in reached


def test_heads_of_tables_know_what_they_head(card: pikepdf.Pdf) -> None:
    heads = tagged(card, "/TH")
    assert len(heads) == 5
    assert {str(head.A.Scope) for head in heads} == {"/Column"}


def test_links_are_printed(card: pikepdf.Pdf) -> None:
    notes = [note for page in card.pages for note in page.get("/Annots", ())]
    assert notes
    assert all(int(note.F) == 4 for note in notes)


def test_headings_come_in_order_and_skip_no_level(card: pikepdf.Pdf) -> None:
    levels = [int(str(heading.S)[2]) for heading in tagged(card, "/H1", "/H2", "/H3", "/H4")]
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(after - before <= 1 for before, after in pairwise(levels))


def test_every_picture_has_its_words(card: pikepdf.Pdf) -> None:
    assert [str(figure.Alt) for figure in tagged(card, "/Figure")] == [
        "Sixteen square slices on a rack",
        "A bowl at step 1",
        "A bowl at step 2",
        "A bowl at step 3",
        "QR code: the recipe's page",
        "QR code: the video",
    ]
