"""The manifest with which a phone puts the site on its home screen (https://www.w3.org/TR/appmanifest/)."""

import json

from sitegen.press.addresses import INDEX, WEB_MANIFEST, link
from sitegen.press.imprint import Imprint
from sitegen.press.theme import Theme

_UNDER_AN_ICON = 12
"""Characters that a home screen has room for."""


def web_manifest(theme: Theme, imprint: Imprint) -> bytes:
    """The manifest of one tree. All addresses in it are relative, so that it holds wherever the tree lies.

    It has one pair of colours, those of the light scheme; a page names both for its own bars.
    """
    paper = theme.tokens.light.paper
    manifest = {
        "name": imprint.name,
        "short_name": _short(imprint.name),
        "description": imprint.tagline,
        "lang": imprint.language,
        "start_url": link(WEB_MANIFEST, INDEX),
        "scope": "./",
        "display": "standalone",
        "background_color": paper,
        "theme_color": paper,
        "icons": [
            {"src": link(WEB_MANIFEST, theme.mark_path), "type": "image/svg+xml", "sizes": "any"},
        ],
    }
    text = json.dumps({key: value for key, value in manifest.items() if value}, ensure_ascii=False, indent=2)
    return f"{text}\n".encode()


def _short(name: str) -> str:
    """The whole words of a name that fit, or its first word."""
    words = name.split()
    kept = words[0]
    for word in words[1:]:
        longer = f"{kept} {word}"
        if len(longer) > _UNDER_AN_ICON:
            break
        kept = longer
    return kept
