"""Every card of the demo, held against PDF/UA-1 and against its own sheet.

Sources: ISO 14289-1 (PDF/UA-1) as the package `page-validation` checks it, 104 rules; poppler's
`pdftotext` for where each word stands.
"""

import re
import subprocess
from collections import Counter
from pathlib import Path

import page
import pikepdf

from tests.outside.demo import Demo

WORD = re.compile(r'<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*?)</word>')
PAGE = re.compile(r'<page width="([\d.]+)" height="([\d.]+)">(.*?)</page>', re.DOTALL)
MOST_BYTES = 1_500_000
PAPER_POINTS = {"a4": (595, 842), "letter": (612, 792)}


def test_every_card_is_pdf_ua_1(demo: Demo) -> None:
    cards = demo.cards()
    assert len(cards) >= 40
    for card in cards:
        found = page.validate_pdf(str(card), profile="ua1")
        assert found.is_compliant, f"{card.name}: {[failure.rule_id for failure in found.failures]}"


def test_every_card_says_what_it_is(demo: Demo) -> None:
    for card in demo.cards():
        with pikepdf.open(card) as pdf:
            assert str(pdf.docinfo["/Title"]).strip()
            assert str(pdf.Root.Lang).startswith("en-")
            width, height = (float(pdf.pages[0].mediabox[i]) for i in (2, 3))
            paper = card.stem.rsplit("-", 1)[1]
            assert (round(width), round(height)) == PAPER_POINTS[paper]


def test_every_font_is_embedded_and_a_subset(demo: Demo) -> None:
    for card in demo.cards():
        listed = subprocess.run(["pdffonts", str(card)], capture_output=True, text=True, check=True).stdout
        rows = listed.splitlines()[2:]
        assert rows
        for row in rows:
            assert re.search(r"\byes\s+yes\s+yes\b", row), f"{card.name}: {row}"
            assert re.match(r"[A-Z]{6}\+Oatcloth-", row.strip()), f"{card.name}: {row}"


def test_no_card_is_too_heavy_to_send(demo: Demo) -> None:
    assert max(card.stat().st_size for card in demo.cards()) < MOST_BYTES


def test_no_two_words_overlap_and_none_leaves_the_page(demo: Demo) -> None:
    for card in demo.cards():
        for number, (width, height, words) in enumerate(placed_words(card), 1):
            for box in words:
                inside = box[0] >= 0 <= box[1] and box[2] <= width and box[3] <= height
                assert inside, f"{card.name}: {box}"
            clashes = overlapping(words)
            assert not clashes, f"{card.name} page {number}: {clashes[:3]}"


Box = tuple[float, float, float, float, str]


def placed_words(card: Path) -> list[tuple[float, float, list[Box]]]:
    out = subprocess.run(
        ["pdftotext", "-bbox", str(card), "-"], capture_output=True, text=True, check=True
    ).stdout
    return [
        (
            float(width),
            float(height),
            [(float(a), float(b), float(c), float(d), word) for a, b, c, d, word in WORD.findall(body)],
        )
        for width, height, body in PAGE.findall(out)
    ]


def overlapping(words: list[Box]) -> list[tuple[str, str]]:
    """Pairs of words of which one covers over a third of the other's height and a twentieth of its width."""
    clashes = []
    by_line = sorted(words, key=lambda box: box[1])
    for i, one in enumerate(by_line):
        for other in by_line[i + 1 :]:
            if other[1] >= one[3]:
                break
            across = min(one[2], other[2]) - max(one[0], other[0])
            down = min(one[3], other[3]) - max(one[1], other[1])
            narrow = min(one[2] - one[0], other[2] - other[0])
            low = min(one[3] - one[1], other[3] - other[1])
            if across > 0.05 * narrow and across > 0.5 and down > 0.34 * low:
                clashes.append((one[4], other[4]))
    return clashes


def test_every_amount_of_the_sheet_is_on_the_card(demo: Demo) -> None:
    """The page and the card come from one sheet: each figure of the page's list stands on the card."""
    slug = "blackcurrant-and-bay-cupcakes"
    page_text = (demo.subscribers / "recipes" / f"{slug}.html").read_text(encoding="utf-8")
    amounts = Counter(re.findall(r"\d[\d.]*\u00a0(?:g|kg|tsp|tbsp|ml)\b", page_text))
    assert amounts
    card = demo.subscribers / "cards" / f"{slug}-british-metric-a4.pdf"
    out = subprocess.run(["pdftotext", str(card), "-"], capture_output=True, text=True, check=True).stdout
    on_card = re.sub(r"\s+", " ", out.replace("\u00a0", " "))
    missing = [amount for amount in amounts if amount.replace("\u00a0", " ") not in on_card]
    assert not missing
