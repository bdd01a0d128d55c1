"""Every card of the demo as a reader holds it: how many pages, and nothing torn from what it belongs to.

What belongs together is read from the tags of the card; where it stands, from the page of each piece.
"""

import re
import subprocess
from collections import Counter
from itertools import pairwise
from pathlib import Path

import pytest

from tests.outside.demo import Demo
from tests.press.card_tree import Tagged, card_tree
from tests.press.card_words import printed_words

KITCHEN = re.compile(r"-(a5|half-letter)$")
LONG = ("blackcurrant-and-bay-cupcakes", "caramel-choux-buns", "plum-and-cardamom-layer-cake")
"""Recipes of fourteen steps and more, base recipes counted."""
MOST_PAGES = 3
LEAST_DPI = 200
FOOT_MM = 12
POINTS_IN_MM = 72 / 25.4
LEAST_FILLED = 0.2
LINE_PT = 10
"""Words that begin so near to each other stand on one line, whatever their sizes."""


def is_kitchen_card(card: Path) -> bool:
    return bool(KITCHEN.search(card.stem))


@pytest.fixture(scope="module")
def trees(themed: Demo) -> dict[Path, Tagged]:
    return {card: card_tree(card) for card in themed.cards()}


def below(element: Tagged) -> list[Tagged]:
    return [inner for kid in element.kids for inner in (kid, *below(kid))]


def steps_of(tree: Tagged) -> list[Tagged]:
    """Innermost sections of prose without a heading of their own rank; the last such is the colophon."""
    tags = {id(section): [inner.tag for inner in below(section)] for section in tree.all("Sect")}
    found = [
        section
        for section in tree.all("Sect")
        if "P" in tags[id(section)] and not {"Sect", "H2"} & set(tags[id(section)])
    ]
    return found[:-1]


def recipe_page(card: Path, demo: Demo) -> Path:
    """In the school's own edition, which has the same steps as any other."""
    pages = (demo.subscribers / "recipes").glob("*.html")
    own = [page for page in pages if card.stem.startswith(f"{page.stem}-")]
    return max(own, key=lambda page: len(page.stem))


def test_recipe_takes_two_pages_mostly_and_never_more_than_three(demo: Demo) -> None:
    pages = {card: len(printed_words(card).sizes) for card in demo.cards() if not is_kitchen_card(card)}
    assert {card.stem: count for card, count in pages.items() if count > MOST_PAGES} == {}
    others = Counter(count for card, count in pages.items() if not card.stem.startswith(LONG))
    assert others[1] + others[2] >= 0.75 * others.total()


def test_kitchen_card_is_one_sheet_and_mostly_one_side(themed: Demo) -> None:
    pages = Counter(len(printed_words(card).sizes) for card in themed.cards() if is_kitchen_card(card))
    assert set(pages) <= {1, 2}
    assert pages[1] >= 0.5 * pages.total()


def test_no_last_page_is_nearly_empty(themed: Demo) -> None:
    for card in themed.cards():
        printed = printed_words(card)
        last = len(printed.sizes)
        height = printed.sizes[-1][1] - FOOT_MM * POINTS_IN_MM
        lowest = max(word.bottom for word in printed.words if word.page == last and word.bottom < height)
        assert last == 1 or lowest > LEAST_FILLED * height, card.name


def test_number_text_and_photo_of_a_step_stand_on_one_page(themed: Demo, trees: dict[Path, Tagged]) -> None:
    """A section that a page's end cut in two would be tagged as two."""
    for card, tree in trees.items():
        if is_kitchen_card(card):
            continue
        steps = steps_of(tree)
        page = recipe_page(card, themed).read_text(encoding="utf-8")
        assert len(steps) == len(re.findall(r'"@type": ?"HowToStep"', page)) >= 4, card.name
        for place, step in enumerate(steps, 1):
            assert len(set(step.pages)) == 1, f"{card.name}: step {place}"


def test_no_heading_is_the_last_thing_on_its_page(trees: dict[Path, Tagged]) -> None:
    for card, tree in trees.items():
        heads = {id(leaf) for head in tree.all("H1", "H2", "H3") for leaf in head.leaves()}
        for one, after in pairwise(tree.leaves()):
            if id(one) in heads:
                assert one.pages[-1] == after.pages[0], card.name


def test_no_page_begins_within_a_paragraph_a_list_or_a_table(trees: dict[Path, Tagged]) -> None:
    """Each further page begins with a heading, a photo, or a step and its number."""
    for card, tree in trees.items():
        printed = printed_words(card)
        opening = {id(leaf) for each in tree.all("H2", "H3", "Figure") for leaf in each.leaves()}
        for number in range(2, len(printed.sizes) + 1):
            first = next(leaf for leaf in tree.leaves() if number in leaf.pages)
            words = [word for word in printed.words if word.page == number]
            first_line = min(word.top for word in words) + LINE_PT
            word = min((word for word in words if word.top < first_line), key=lambda word: word.left)
            begins = id(first) in opening or word.text.isdigit() or word.text == "Contains:"
            assert begins, f"{card.name}, page {number}: {word.text}"


def test_every_photo_is_sharp_in_print(themed: Demo) -> None:
    for card in themed.cards():
        listed = subprocess.run(["pdfimages", "-list", card], capture_output=True, text=True, check=True)
        rows = [row.split() for row in listed.stdout.splitlines()[2:]]
        assert bool(rows) is not is_kitchen_card(card)
        for row in rows:
            kind, across, down = row[8], int(row[12]), int(row[13])
            assert kind == "jpeg", card.name
            assert min(across, down) >= LEAST_DPI, f"{card.name}: {across} x {down} dots an inch"


def test_every_card_tells_programs_what_it_is(themed: Demo) -> None:
    for card in themed.cards():
        info = subprocess.run(["pdfinfo", card], capture_output=True, text=True, check=True).stdout
        for field in ("Title", "Subject", "Keywords", "Author", "CreationDate", "ModDate"):
            assert re.search(rf"(?m)^{field}: +\S", info), f"{card.name}: {field}"
        assert re.search(r"(?m)^Tagged: +yes$", info)
