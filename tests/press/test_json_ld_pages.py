"""Lists, techniques and the way to a page as schema.org data."""

import json
from typing import Any

from markupsafe import Markup

from sitegen.press.entries import entry_of
from sitegen.press.json_ld_pages import collection, technique, trail
from tests.press.sample_parts import IMPRINT
from tests.press.sample_sheets import HEAD, TUTORIAL, sample_pictures

ADDRESS = IMPRINT.address


def read(block: Markup) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(block)
    assert found["@context"] == "https://schema.org"
    return found


def test_a_list_numbers_its_pages_in_their_order() -> None:
    found = read(collection(IMPRINT, "tags/buns.html", "Buns", [entry_of(HEAD), entry_of(HEAD)]))
    assert (found["@type"], found["name"], found["url"]) == (
        "CollectionPage",
        "Buns",
        f"{ADDRESS}tags/buns.html",
    )
    assert found["mainEntity"]["@type"] == "ItemList"
    items = found["mainEntity"]["itemListElement"]
    assert [item["position"] for item in items] == [1, 2]
    assert items[0]["url"] == f"{ADDRESS}recipes/quince-and-hazelnut-slices.html"


def test_the_front_page_bears_the_schools_own_address() -> None:
    assert read(collection(IMPRINT, "index.html", "Tansy Row", []))["url"] == ADDRESS


def test_the_way_to_a_page_begins_at_the_school_and_ends_at_the_page() -> None:
    items = read(trail(IMPRINT, ("Techniques", "tutorials/index.html"), ("Icing", "tutorials/icing.html")))
    steps = [(step["position"], step["name"], step["item"]["@id"]) for step in items["itemListElement"]]
    assert steps == [
        (1, "Tansy Row", ADDRESS),
        (2, "Techniques", f"{ADDRESS}tutorials/index.html"),
        (3, "Icing", f"{ADDRESS}tutorials/icing.html"),
    ]


def test_a_technique_is_an_article_with_its_picture() -> None:
    found = read(technique(IMPRINT, TUTORIAL, sample_pictures()[0]))
    assert (found["@type"], found["headline"]) == ("Article", "Cooking sugar safely")
    assert found["image"].startswith(f"{ADDRESS}pictures/")
    assert "image" not in read(technique(IMPRINT, TUTORIAL, {}))
