"""The pages of a site, as files: links, frame, escaping, what each audience sees."""

import re
from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from html.parser import HTMLParser
from posixpath import dirname, join, normpath
from typing import Any

import pytest

from sitegen.press.addresses import WEB_MANIFEST
from sitegen.press.bundles import ListedBundle, bundles_page
from sitegen.press.choices import Choices
from sitegen.press.entries import entry_of, tag_slug
from sitegen.press.find_index import find_index, sought_recipe, sought_technique
from sitegen.press.index_page import contents_page, index_page, tag_page
from sitegen.press.not_found_page import not_found_page
from sitegen.press.not_kept_page import not_kept_page
from sitegen.press.picture import Picture
from sitegen.press.recipe_page import recipe_page
from sitegen.press.search_words import WordRules
from sitegen.press.theme import Theme, load_theme, theme_leaves
from sitegen.press.tutorial_pages import tutorial_page, tutorials_page
from sitegen.sheet.values import SheetMoment, SheetVideo, View
from tests.press.sample_parts import IMPRINT, TABLE_IMPRINT
from tests.press.sample_sheets import (
    CHAPTERS,
    CHOICES,
    HEAD,
    HERE,
    INGREDIENT_SIDE,
    SHEET,
    TEASER,
    THEME_FOLDER,
    TUTORIAL,
    sample_pictures,
)

VOID = frozenset(
    ["area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "track", "wbr"]
)
SOUGHT = (sought_recipe([SHEET]), sought_recipe([TEASER]), sought_technique(TUTORIAL))
INDEX = find_index(SOUGHT, WordRules())
VIEWS = [SHEET, INGREDIENT_SIDE, TEASER]
EVIL = "<script>alert('x')</script>"


class Reading(HTMLParser):
    """A page as a strict reader takes it: every element closed in order, every address noted."""

    def __init__(self, page: bytes) -> None:
        super().__init__()
        self.open: list[str] = []
        self.ids: list[str] = []
        self.addresses: list[tuple[str, str]] = []
        self.headings: list[int] = []
        self.images_without_alt = 0
        self.feed(page.decode())
        self.close()
        assert self.open == []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        values = {name: value or "" for name, value in attrs}
        if tag not in VOID:
            self.open.append(tag)
        if re.fullmatch(r"h[1-6]", tag):
            self.headings.append(int(tag[1]))
        if tag == "img" and "alt" not in values:
            self.images_without_alt += 1
        if "id" in values:
            self.ids.append(values["id"])
        self.addresses += [(tag, values[name]) for name in ("href", "src") if name in values]
        self.addresses += [(tag, one.split()[0]) for one in values.get("srcset", "").split(", ") if one]

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag


@pytest.fixture(scope="module")
def theme() -> Theme:
    return load_theme(THEME_FOLDER)


@pytest.fixture(scope="module")
def pictures() -> dict[str, Picture]:
    return sample_pictures()[0]


JULY = ListedBundle("July 2026", "bundles/2026-07.zip", "4.2 MB", ("Bay cake", "Fig cake"))


def view_page(theme: Theme, pictures: dict[str, Picture], view: View, choices: Choices = CHOICES) -> str:
    imprint = TABLE_IMPRINT if view is SHEET else IMPRINT
    return recipe_page(theme, imprint, view, choices, pictures, HERE).decode()


@pytest.fixture(scope="module")
def site(theme: Theme, pictures: dict[str, Picture]) -> dict[str, bytes]:
    """A small site, path -> page."""
    entry = entry_of(HEAD)
    pages = {
        HERE: recipe_page(theme, TABLE_IMPRINT, SHEET, CHOICES, pictures, HERE),
        "index.html": index_page(theme, IMPRINT, [entry, entry], pictures, [TUTORIAL], INDEX),
        "contents.html": contents_page(theme, IMPRINT, [entry]),
        TUTORIAL.path: tutorial_page(theme, IMPRINT, TUTORIAL, pictures),
        "tutorials/index.html": tutorials_page(theme, IMPRINT, [TUTORIAL], pictures),
        "bundles/index.html": bundles_page(theme, TABLE_IMPRINT, [], [JULY]),
        "404.html": not_found_page(theme, IMPRINT),
        "not-kept.html": not_kept_page(theme, IMPRINT),
        "recipes/base-caramel.html": recipe_page(
            theme, IMPRINT, INGREDIENT_SIDE, Choices(), pictures, "recipes/base-caramel.html"
        ),
        "recipes/teaser.html": recipe_page(
            theme, IMPRINT, TEASER, Choices(), pictures, "recipes/teaser.html"
        ),
    }
    for choice in (*CHOICES.batches, *CHOICES.tins, *CHOICES.editions):
        if not choice.is_here:
            pages[choice.path] = recipe_page(theme, TABLE_IMPRINT, SHEET, CHOICES, pictures, choice.path)
    for tag in HEAD.tags:
        pages[f"tags/{tag_slug(tag)}.html"] = tag_page(theme, IMPRINT, tag, [entry], pictures)
    return pages


def test_every_page_is_whole_html_with_one_first_heading_and_no_level_skipped(site: dict[str, bytes]) -> None:
    for path, page in site.items():
        reading = Reading(page)
        assert page.startswith(b"<!doctype html>"), path
        assert reading.headings[0] == 1, path
        assert reading.headings.count(1) == 1, path
        steps = zip(reading.headings, reading.headings[1:], strict=False)
        skipped = [(earlier, later) for earlier, later in steps if later > earlier + 1]
        assert skipped == [], path
        assert len(reading.ids) == len(set(reading.ids)), path
        assert reading.images_without_alt == 0, path


def test_every_relative_link_leads_to_a_file_of_the_site(
    site: dict[str, bytes], theme: Theme, pictures: dict[str, Picture]
) -> None:
    cuts = {cut.path for picture in pictures.values() for cut in (*picture.webp, *picture.jpeg)}
    cards = {card.path for card in CHOICES.cards}
    files = {*site, *cuts, *cards, *(path for path, _ in theme_leaves(theme)), "feed.xml", WEB_MANIFEST}
    files.add(JULY.path)
    for path, page in site.items():
        for _, address in Reading(page).addresses:
            target, _, mark = address.partition("#")
            if target and not address.startswith("https://"):
                led_to = normpath(join(dirname(path), target))
                assert led_to in files, (path, address)
                assert not mark or mark in Reading(site[led_to]).ids, (path, address)


def test_every_link_within_a_page_has_its_place(site: dict[str, bytes]) -> None:
    for path, page in site.items():
        reading = Reading(page)
        marks = {address[1:] for _, address in reading.addresses if address.startswith("#")}
        assert marks <= set(reading.ids), path


def test_no_page_loads_anything_from_another_host(site: dict[str, bytes]) -> None:
    for path, page in site.items():
        loaded = [one for one in Reading(page).addresses if one[0] in ("img", "script", "source", "iframe")]
        foreign = [address for _, address in loaded if "//" in address]
        assert [one for one in foreign if not one.startswith(IMPRINT.address)] == [], path


def test_every_page_forbids_what_it_does_not_need(site: dict[str, bytes]) -> None:
    """Content Security Policy Level 3; the quotes around its keywords must stay straight."""
    for page in site.values():
        assert b"default-src 'none'; img-src 'self'; style-src 'self'" in page.replace(b"&#39;", b"'")
        assert not re.search(rb"<style|\sstyle=|<script>", page)


@pytest.mark.parametrize("path", ["404.html", "not-kept.html"])
def test_a_page_that_answers_at_any_address_links_by_full_ones(path: str, site: dict[str, bytes]) -> None:
    addresses = [address for _, address in Reading(site[path]).addresses]
    assert [one for one in addresses if not one.startswith((IMPRINT.address, "#"))] == []


def _texts(value: object) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, tuple):
        for item in value:
            yield from _texts(item)
    elif is_dataclass(value):
        for one in fields(value):
            yield from _texts(getattr(value, one.name))


def _poisoned(value: Any, kept: frozenset[str]) -> Any:
    """The same value with EVIL after every text but those that are keys or addresses."""
    if isinstance(value, str):
        return value + EVIL
    if isinstance(value, tuple):
        return tuple(_poisoned(item, kept) for item in value)
    if is_dataclass(value) and not isinstance(value, type):
        changes = {
            one.name: _poisoned(getattr(value, one.name), kept)
            for one in fields(value)
            if one.name not in kept
        }
        return replace(value, **changes)
    return value


@pytest.mark.parametrize("view", VIEWS, ids=lambda view: type(view).__name__)
def test_a_script_in_any_text_of_a_recipe_stays_a_text(
    theme: Theme, pictures: dict[str, Picture], view: View
) -> None:
    kept = frozenset({"level", "file", "published", "modified"})
    poisoned = _poisoned(view, kept)
    assert sum(EVIL in text for text in _texts(poisoned)) > 10
    page = view_page(theme, pictures, poisoned, _poisoned(CHOICES, frozenset({"path", "tested"})))
    scripts = re.findall(r"<script\b[^>]*>", page)
    assert len(scripts) == 3
    assert all("src=" in one or "application/ld+json" in one for one in scripts)
    Reading(page.encode())


def test_a_script_in_a_list_or_a_technique_stays_a_text(theme: Theme, pictures: dict[str, Picture]) -> None:
    entry = _poisoned(entry_of(HEAD), frozenset({"path", "file", "group"}))
    index = find_index([_poisoned(each, frozenset()) for each in SOUGHT], WordRules())
    tutorial = _poisoned(TUTORIAL, frozenset({"slug", "source", "file"}))
    imprint = _poisoned(IMPRINT, frozenset({"address", "audience"}))
    for page in (
        index_page(theme, imprint, [entry], pictures, [tutorial], index),
        contents_page(theme, imprint, [entry]),
        tag_page(theme, imprint, EVIL, [entry], pictures),
        tutorial_page(theme, imprint, tutorial, pictures),
        not_found_page(theme, imprint),
    ):
        scripts = re.findall(rb"<script\b[^>]*>", page)
        assert scripts
        assert [one for one in scripts if b"src=" not in one and b'type="application/' not in one] == []


def test_bundles_are_linked_with_their_size_and_what_lies_in_them(site: dict[str, bytes]) -> None:
    page = site["bundles/index.html"].decode()
    assert '<a href="2026-07.zip">July 2026</a> <span>ZIP, 4.2 MB: Bay cake; Fig cake</span>' in page
    assert "Nothing has changed in the last months." in page
    assert "../bundles/index.html" not in site["404.html"].decode()


def test_a_video_is_linked_by_https_alone(theme: Theme, pictures: dict[str, Picture]) -> None:
    page = view_page(theme, pictures, replace(SHEET, video=SheetVideo("javascript:alert(1)")))
    assert "javascript:" not in page.split("</head>")[1]


def test_a_step_leads_to_its_moment_in_the_film(theme: Theme, pictures: dict[str, Picture]) -> None:
    crumb = SHEET.components[0]
    film = SheetMoment("2:05", 125, "https://video.example/quince#t=125")
    steps = (replace(crumb.steps[0], on_film=film), *crumb.steps[1:])
    page = view_page(theme, pictures, replace(SHEET, components=(replace(crumb, steps=steps),)))
    assert page.count(f'<a href="{film.address}">from 2:05<span class="unseen">, step 1</span></a>') == 1
    assert page.count("On film") == 1


def test_chapters_lead_into_the_film(theme: Theme, pictures: dict[str, Picture]) -> None:
    page = view_page(theme, pictures, SHEET).split("</head>")[1]
    for chapter in CHAPTERS:
        assert (
            f'<a href="{chapter.address}"><span class="moment">{chapter.moment}</span> {chapter.title}'
            in page
        )
    bare = replace(SHEET, video=SheetVideo("https://video.example/quince"))
    assert "chapters" not in view_page(theme, pictures, bare).split("</head>")[1]


def test_the_sheet_carries_steps_uses_plan_cautions_keeping_and_changes(site: dict[str, bytes]) -> None:
    page = site[HERE].decode()
    for text in (
        'id="step-4"',
        "until no lump is larger than a lentil",
        SHEET.oven,
        "The work on one clock",
        "Hot sugar burns",
        "Sugar corrected from 250\u00a0g to 150\u00a0g.",
        "4 days in a tin",
        "A medium egg weighs 51 g without its shell.",
        "Contains: wheat, hazelnuts, milk, eggs.",
        "https://video.example/quince",
        SHEET.estimates_note,
    ):
        assert text in page
    assert page.index("Hot sugar burns") < page.index("Hazelnut crumb</h2>") < page.index("Made with alcohol")


def test_names_of_allergens_are_emphasised(site: dict[str, bytes]) -> None:
    """Regulation (EU) No 1169/2011, Article 21, asks the same of a label."""
    page = site[HERE].decode()
    assert "<strong>plain flour</strong>" in page
    assert "<strong>caster sugar</strong>" not in page


def test_public_pages_tell_nothing_of_the_method(theme: Theme, pictures: dict[str, Picture]) -> None:
    side, teaser = (view_page(theme, pictures, view) for view in (INGREDIENT_SIDE, TEASER))
    assert "180 g" in side
    assert "180 g" not in teaser
    for page in (side, teaser):
        assert "lentil" not in page
        assert "step-1" not in page
        assert 'class="for-subscribers"' in page
        assert "https://tansyrow.example/table/recipes/quince-and-hazelnut-slices.html" in page


def test_each_list_marks_the_page_that_shows_it_and_search_engines_list_the_tested_batch(
    site: dict[str, bytes],
) -> None:
    page = site[HERE].decode()
    assert page.count('aria-current="page"') == 3
    other = site["recipes/quince-and-hazelnut-slices/british-metric-32-slices.html"].decode()
    assert f'rel="canonical" href="{TABLE_IMPRINT.address}{HERE}"' in other


def test_subscribers_pages_stay_out_of_search_engines(site: dict[str, bytes]) -> None:
    assert b'name="robots" content="noindex"' in site[HERE]
    assert b'name="robots"' not in site["index.html"]


def test_a_view_without_changes_of_its_own_prints_those_it_is_given(
    theme: Theme, pictures: dict[str, Picture]
) -> None:
    page = recipe_page(theme, IMPRINT, TEASER, Choices(), pictures, HERE, SHEET.revisions).decode()
    assert "What changed" in page
    assert "20 October 2026" in page


def test_a_recipe_without_photos_prints_none(theme: Theme) -> None:
    page = view_page(theme, {}, SHEET)
    assert "<picture" not in page
    Reading(page.encode())


def test_a_page_gives_the_same_bytes_each_time(theme: Theme, pictures: dict[str, Picture]) -> None:
    assert view_page(theme, pictures, SHEET) == view_page(load_theme(THEME_FOLDER), pictures, SHEET)


@pytest.mark.parametrize(
    ("tag", "slug"), [("soft fruit", "soft-fruit"), ("Crème & co.", "creme-co"), ("choux", "choux")]
)
def test_a_tag_s_address_has_small_letters_and_hyphens(tag: str, slug: str) -> None:
    assert tag_slug(tag) == slug
