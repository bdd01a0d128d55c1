"""The web app manifest (W3C Web Application Manifest)."""

import json
from dataclasses import replace
from typing import Any

import pytest

from sitegen.press.imprint import Imprint
from sitegen.press.theme import load_theme
from sitegen.press.web_manifest import web_manifest
from tests.press.sample_parts import IMPRINT, TABLE_IMPRINT
from tests.press.sample_sheets import THEME_FOLDER

THEME = load_theme(THEME_FOLDER)


def read(imprint: Imprint) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(web_manifest(THEME, imprint))
    return found


def test_it_has_what_a_phone_needs_to_install_it() -> None:
    """Section 1.1: name, start_url, display, icons."""
    found = read(IMPRINT)
    assert (found["name"], found["lang"], found["display"]) == ("Tansy Row", "en-GB", "standalone")
    assert found["icons"] == [{"src": THEME.mark_path, "type": "image/svg+xml", "sizes": "any"}]
    assert found["theme_color"] == found["background_color"] == THEME.tokens.light.paper


@pytest.mark.parametrize("imprint", [IMPRINT, TABLE_IMPRINT])
def test_it_holds_wherever_the_tree_is_served(imprint: Imprint) -> None:
    found = read(imprint)
    assert (found["start_url"], found["scope"]) == ("index.html", "./")
    assert "://" not in json.dumps(found)


@pytest.mark.parametrize(
    ("name", "short"),
    [
        ("Tansy Row", "Tansy Row"),
        ("The Long Table Bakery", "The Long"),
        ("Buttercreamery", "Buttercreamery"),
    ],
)
def test_the_name_under_an_icon_is_of_whole_words(name: str, short: str) -> None:
    assert read(replace(IMPRINT, name=name))["short_name"] == short


def test_what_the_school_does_not_say_is_left_out() -> None:
    assert "description" not in read(replace(IMPRINT, tagline=""))
