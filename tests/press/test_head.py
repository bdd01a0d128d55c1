"""The head of a page: what browsers, search engines and shared links are told.

Sources: the Open Graph protocol (https://ogp.me), the HTML Standard.
"""

from dataclasses import replace
from html.parser import HTMLParser

import pytest

from sitegen.press.choices import Choices
from sitegen.press.not_found_page import not_found_page
from sitegen.press.not_kept_page import not_kept_page
from sitegen.press.picture import Picture
from sitegen.press.recipe_page import recipe_page
from sitegen.press.theme import Theme, load_theme
from sitegen.press.tutorial_pages import tutorial_page, tutorials_page
from tests.press.sample_parts import IMPRINT, TABLE_IMPRINT
from tests.press.sample_sheets import (
    CHOICES,
    HEAD,
    HERE,
    INGREDIENT_SIDE,
    SHEET,
    THEME_FOLDER,
    TUTORIAL,
    sample_pictures,
)


class HeadOf(HTMLParser):
    """meta: (name or property, media) -> content. links: (rel, hreflang) -> href."""

    def __init__(self, page: bytes) -> None:
        super().__init__()
        self.meta: dict[tuple[str, str], str] = {}
        self.links: dict[tuple[str, str], str] = {}
        self.feed(page.decode())

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {key: value or "" for key, value in attrs}
        if tag == "meta":
            name = given.get("name") or given.get("property") or ""
            self.meta[name, given.get("media", "")] = given.get("content", "")
        elif tag == "link":
            self.links[given["rel"], given.get("hreflang", "")] = given["href"]

    def __getitem__(self, name: str) -> str:
        return self.meta.get((name, ""), "")


@pytest.fixture(scope="module")
def theme() -> Theme:
    return load_theme(THEME_FOLDER)


@pytest.fixture(scope="module")
def pictures() -> dict[str, Picture]:
    return sample_pictures()[0]


@pytest.fixture(scope="module")
def recipe(theme: Theme, pictures: dict[str, Picture]) -> HeadOf:
    return HeadOf(recipe_page(theme, IMPRINT, INGREDIENT_SIDE, CHOICES, pictures, HERE))


def test_a_shared_recipe_has_the_four_musts_of_open_graph(recipe: HeadOf) -> None:
    """https://ogp.me/#metadata: title, type, image, url."""
    assert recipe["og:title"] == "Quince and hazelnut slices"
    assert recipe["og:type"] == "article"
    assert recipe["og:url"] == recipe.links["canonical", ""] == IMPRINT.address + HERE
    assert recipe["og:image"].startswith(f"{IMPRINT.address}pictures/")


def test_its_picture_comes_with_size_kind_and_words(recipe: HeadOf, pictures: dict[str, Picture]) -> None:
    assert HEAD.photo
    largest = pictures[HEAD.photo.file].jpeg[-1]
    assert recipe["og:image"] == IMPRINT.address + largest.path
    assert (recipe["og:image:width"], recipe["og:image:height"]) == (str(largest.width), str(largest.height))
    assert recipe["og:image:type"] == "image/jpeg"
    assert recipe["og:image:alt"] == HEAD.photo.alt


def test_it_names_the_school_its_languages_and_its_days(recipe: HeadOf) -> None:
    assert recipe["og:site_name"] == "Tansy Row"
    assert recipe["og:locale"] == "en_GB"
    assert recipe["og:locale:alternate"] in ("en_US", "en_AU")
    assert recipe["article:published_time"] == "2026-10-09"
    assert recipe["article:modified_time"] == "2026-10-20"


def test_a_recipe_names_its_page_in_every_language_and_itself(recipe: HeadOf) -> None:
    found = {
        language: href for (rel, language), href in recipe.links.items() if rel == "alternate" and language
    }
    assert found == {one.language: IMPRINT.address + one.path for one in CHOICES.translations}
    assert found["en-GB"] == recipe.links["canonical", ""]


def test_a_page_that_search_engines_should_not_list_names_no_other_language(
    theme: Theme, pictures: dict[str, Picture]
) -> None:
    other = CHOICES.batches[1].path
    head = HeadOf(recipe_page(theme, IMPRINT, INGREDIENT_SIDE, CHOICES, pictures, other))
    assert head.links["canonical", ""] == IMPRINT.address + HERE
    assert [language for _, language in head.links if language] == []


def test_a_page_in_one_language_has_no_alternate(theme: Theme, pictures: dict[str, Picture]) -> None:
    page = recipe_page(theme, IMPRINT, INGREDIENT_SIDE, Choices(), pictures, HERE)
    assert b"hreflang" not in page
    assert b"og:locale:alternate" not in page


def test_both_schemes_colour_the_bars_of_the_browser(recipe: HeadOf, theme: Theme) -> None:
    """HTML Standard, 4.2.5.1: theme-color."""
    colours = {media: colour for (name, media), colour in recipe.meta.items() if name == "theme-color"}
    assert colours == {
        "(prefers-color-scheme: light)": theme.tokens.light.paper,
        "(prefers-color-scheme: dark)": theme.tokens.dark.paper,
    }


def test_a_technique_without_a_day_is_no_article(theme: Theme, pictures: dict[str, Picture]) -> None:
    head = HeadOf(tutorial_page(theme, IMPRINT, TUTORIAL, pictures))
    assert head["og:type"] == "website"
    assert head["og:image:alt"] == "A deep pan"
    assert ("article:published_time", "") not in head.meta


def test_a_page_without_a_picture_claims_none(theme: Theme, pictures: dict[str, Picture]) -> None:
    page = tutorials_page(theme, IMPRINT, [TUTORIAL], pictures)
    assert b"og:image" not in page
    assert HeadOf(page)["description"] == "Techniques of Tansy Row: Cooking sugar safely."


@pytest.mark.parametrize("make", [not_found_page, not_kept_page])
def test_a_page_for_no_address_is_listed_nowhere(make: object, theme: Theme) -> None:
    assert callable(make)
    head = HeadOf(make(theme, IMPRINT))
    assert head["robots"] == "noindex"
    assert ("canonical", "") not in head.links
    assert head["og:url"] == ""


def test_no_page_of_the_subscribers_is_listed(theme: Theme, pictures: dict[str, Picture]) -> None:
    head = HeadOf(recipe_page(theme, TABLE_IMPRINT, SHEET, CHOICES, pictures, HERE))
    assert head["robots"] == "noindex"


def test_words_with_quotes_stay_within_their_attribute(theme: Theme, pictures: dict[str, Picture]) -> None:
    evil = replace(INGREDIENT_SIDE, head=replace(HEAD, title='"><script>alert(1)</script>'))
    page = recipe_page(theme, IMPRINT, evil, CHOICES, pictures, HERE)
    assert b"<script>alert" not in page
