"""What a page says of itself when its link is passed on."""

from dataclasses import replace

import pytest

from sitegen.press.picture import Cut, Picture
from sitegen.press.shared import (
    LONGEST_DESCRIPTION,
    Translation,
    described,
    locale_of,
    shared_picture,
    translations_of,
)
from sitegen.sheet.values import SheetPhoto
from tests.press.sample_parts import BRITISH, IMPRINT, US_CUPS
from tests.press.sample_sheets import TEASER

SENTENCE = "A tender sponge under a crackling sugar crust."


@pytest.mark.parametrize(
    ("texts", "told"),
    [
        ((SENTENCE,), SENTENCE),
        ((SENTENCE.removesuffix("."),), SENTENCE),
        (("Baking taught", "We weigh everything. Twice."), "Baking taught. We weigh everything. Twice."),
        (("", "Is it done?"), "Is it done?"),
        ((f"{SENTENCE} {SENTENCE} {SENTENCE} {SENTENCE}",), f"{SENTENCE} {SENTENCE} {SENTENCE}"),
    ],
)
def test_a_description_is_of_whole_sentences(texts: tuple[str, ...], told: str) -> None:
    assert described(*texts) == told


def test_a_sentence_that_is_too_long_is_cut_between_words() -> None:
    told = described("sugar, " * 60)
    assert len(told) <= LONGEST_DESCRIPTION
    assert told.endswith("sugar,…")


def test_the_largest_jpeg_is_shared() -> None:
    picture = Picture("a.jpg", (), (Cut("pictures/a-480.jpg", 480, 360), Cut("pictures/a-960.jpg", 960, 720)))
    shared = shared_picture(IMPRINT, SheetPhoto("a.jpg", "Buns"), {"a.jpg": picture})
    assert shared is not None
    assert (shared.address, shared.width, shared.alt) == (f"{IMPRINT.address}pictures/a-960.jpg", 960, "Buns")


@pytest.mark.parametrize("photo", [None, SheetPhoto("b.jpg", "Not cut")])
def test_no_photo_no_shared_picture(photo: SheetPhoto | None) -> None:
    assert shared_picture(IMPRINT, photo, {}) is None


@pytest.mark.parametrize(("language", "locale"), [("en-GB", "en_GB"), ("en", ""), ("zh-Hant", "")])
def test_a_locale_is_language_and_territory(language: str, locale: str) -> None:
    """https://ogp.me/#optional: language_TERRITORY."""
    assert locale_of(language) == locale


def test_the_first_edition_of_a_language_stands_for_it() -> None:
    weights = replace(US_CUPS, key="us-weights")
    views = [replace(TEASER, head=replace(TEASER.head, edition=one)) for one in (BRITISH, US_CUPS, weights)]
    found = translations_of(views, lambda view: view.head.edition.key)
    assert found == (Translation("en-GB", "british-metric"), Translation("en-US", "us-cups"))
    assert translations_of(views[1:], lambda view: view.head.edition.key) == ()
