"""Every card of the demo in every theme, held against PDF/UA-1 and against its own page.

Sources: ISO 14289-1 (PDF/UA-1) as the package `page-validation` checks it, 104 rules, and as `outloud` does,
which reads the order of the text, running heads and lists too; poppler's `pdftotext` for where each word
stands.
"""

import re
import subprocess
import unicodedata
from collections.abc import Iterator
from pathlib import Path

import outloud
import page
import pikepdf
import pytest

from sitegen.press.theme import load_theme
from sitegen.press.theme_folder import find_theme
from tests.outside.demo import Demo, read_json_ld
from tests.outside.publishing import PROJECT
from tests.press.card_words import PrintedWords, printed_words

EDITIONS = ("british-metric", "us-cups")
OWN_EDITION = EDITIONS[0]
MOST_BYTES = 1_500_000
PAPER_POINTS = {"a4": (595, 842), "letter": (612, 792), "a5": (420, 595)}


def paper_of(card: Path) -> str:
    return card.stem.rsplit("-", 1)[1]


@pytest.fixture(scope="module")
def printed(themed: Demo) -> dict[Path, PrintedWords]:
    """Each card and the words on it."""
    return {card: printed_words(card) for card in themed.cards()}


def test_every_card_is_pdf_ua_1(themed: Demo) -> None:
    cards = themed.cards()
    assert len(cards) >= 20
    for card in cards:
        found = page.validate_pdf(str(card), profile="ua1")
        assert found.is_compliant, f"{card.name}: {[failure.rule_id for failure in found.failures]}"


def test_a_voice_reads_every_card_in_order(themed: Demo) -> None:
    """Not a warning either, in the school's own edition: the others are laid out alike."""
    cards = [card for card in themed.cards() if OWN_EDITION in card.stem]
    assert cards
    for card in cards:
        assert [f"{card.name}: {found}" for found in outloud.check(str(card)).findings] == []


def test_both_checkers_see_a_planted_fault(demo: Demo, tmp_path: Path) -> None:
    mute = tmp_path / "mute.pdf"
    with pikepdf.open(demo.cards()[0]) as pdf:
        del pdf.Root.Lang
        pdf.save(mute)
    assert not page.validate_pdf(str(mute), profile="ua1").is_compliant
    assert outloud.check(str(mute)).findings


def test_every_card_says_what_it_is(themed: Demo) -> None:
    for card in themed.cards():
        with pikepdf.open(card) as pdf:
            assert str(pdf.docinfo["/Title"]).strip()
            assert str(pdf.Root.Lang).startswith("en-")
            assert pdf.check_pdf_syntax() == []


def test_every_page_of_a_card_is_of_its_paper(printed: dict[Path, PrintedWords]) -> None:
    for card, words in printed.items():
        assert {(round(width), round(height)) for width, height in words.sizes} == {
            PAPER_POINTS[paper_of(card)]
        }


def test_every_font_is_embedded_and_a_subset(themed: Demo) -> None:
    theme = load_theme(find_theme(PROJECT, themed.theme))
    families = {font.family.replace(" ", "-") for font in theme.fonts}
    for card in themed.cards():
        listed = subprocess.run(["pdffonts", str(card)], capture_output=True, text=True, check=True).stdout
        rows = listed.splitlines()[2:]
        assert rows
        for row in rows:
            assert re.search(r"\byes\s+yes\s+yes\b", row), f"{card.name}: {row}"
            named = re.match(r"[A-Z]{6}\+(\S+)", row)
            assert named, f"{card.name}: {row}"
            assert any(named[1].startswith(family) for family in families), f"{card.name}: {row}"


def test_no_card_is_too_heavy_to_send(themed: Demo) -> None:
    assert max(card.stat().st_size for card in themed.cards()) < MOST_BYTES


def test_no_two_words_overlap_and_none_leaves_the_page(printed: dict[Path, PrintedWords]) -> None:
    for card, words in printed.items():
        assert words.words
        assert words.outside(0) == [], card.name
        assert words.overlaps() == [], card.name


def test_every_word_of_the_recipe_is_on_its_card(themed: Demo, printed: dict[Path, PrintedWords]) -> None:
    """What a page says of its recipe to programs, and its cards, come from one sheet."""
    for card, words in printed.items():
        if paper_of(card) != "a5":
            on_card = plain(words.text)
            lost = {word for word in words_of(page_of(card, themed)) if plain(word) not in on_card}
            assert not lost, f"{card.name}: {lost}"


def page_of(card: Path, demo: Demo) -> Path:
    """The page that shows what a card prints: the recipe as it was tested, in the card's edition.

    In the school's own edition the tested batch is the recipe's first page; in another it has a page like
    any other batch, the one that the first edition lacks.
    """
    recipes = demo.subscribers / "recipes"
    slug, edition = next(
        (own.stem, each)
        for own in recipes.glob("*.html")
        for each in EDITIONS
        if card.stem == f"{own.stem}-{each}-{paper_of(card)}"
    )
    if edition == OWN_EDITION:
        return recipes / f"{slug}.html"
    of_each = [
        {other.stem.removeprefix(f"{each}-") for other in (recipes / slug).glob(f"{each}-*.html")}
        for each in (edition, OWN_EDITION)
    ]
    (tested,) = of_each[0] - of_each[1]
    return recipes / slug / f"{edition}-{tested}.html"


def recipe_of(shown: Path) -> dict[str, object]:
    return next(block for block in read_json_ld(shown) if block["@type"] == "Recipe")


def words_of(shown: Path) -> set[str]:
    """The words of the title, the ingredient lines, and the steps with their headings."""

    def texts(value: object) -> Iterator[str]:
        if isinstance(value, dict):
            yield from (str(value[key]) for key in ("name", "text") if key in value)
            yield from texts(value.get("itemListElement", []))
        elif isinstance(value, list):
            for inner in value:
                yield from texts(inner)
        else:
            yield str(value)

    recipe = recipe_of(shown)
    said = [recipe["name"], recipe["recipeIngredient"], recipe["recipeInstructions"]]
    return {word for text in texts(said) for word in text.split()}


def plain(text: str) -> str:
    """Letters and digits alone: a card may hyphenate, and draws a fraction from its figures."""
    return "".join(letter for letter in unicodedata.normalize("NFKC", text) if letter.isalnum())
