"""Cards of many shapes, held against PDF/UA-1.

Source: ISO 14289-1 as the package `page-validation` checks it, 104 rules.
"""

from pathlib import Path

import page
import pikepdf
import pytest

from sitegen.press.card import CARD_PAPERS, CardPress
from sitegen.press.theme import load_theme
from tests.press.sample_cards import PAGE, card_photos, in_cups, sample_sheet, with_panels
from tests.press.sample_parts import TABLE_IMPRINT

THEME = Path(__file__).parents[2] / "themes" / "oatcloth"
SHAPES = {
    "two steps": sample_sheet(steps=2, photos=0, lines=4, cautions=False),
    "two steps with photos": sample_sheet(steps=2, photos=2),
    "twelve steps": sample_sheet(steps=12, photos=0),
    "twelve steps with photos": sample_sheet(steps=12, photos=5),
    "twelve steps in cups": in_cups(sample_sheet(steps=12, photos=5)),
    "all panels": with_panels(sample_sheet(steps=8, photos=2)),
    "all panels in cups": in_cups(with_panels(sample_sheet(steps=8, photos=2))),
    "thirty steps": sample_sheet(steps=30, photos=0),
    "thirty steps with photos": sample_sheet(steps=30, photos=30, lines=22),
    "a list over pages": sample_sheet(steps=3, photos=1, lines=90),
}


@pytest.fixture(scope="module")
def press() -> CardPress:
    return CardPress(load_theme(THEME))


@pytest.mark.parametrize("paper", CARD_PAPERS)
@pytest.mark.parametrize("shape", SHAPES)
def test_card_keeps_every_rule_of_pdf_ua_1(shape: str, paper: str, press: CardPress, tmp_path: Path) -> None:
    sheet = SHAPES[shape]
    card = tmp_path / "card.pdf"
    card.write_bytes(press.print_card(sheet, TABLE_IMPRINT, paper, card_photos(sheet), PAGE))
    found = page.validate_pdf(str(card), profile="ua1")
    assert [failure.rule_id for failure in found.failures] == []
    assert found.is_compliant
    with pikepdf.open(card) as pdf:
        assert pdf.check_pdf_syntax() == []
