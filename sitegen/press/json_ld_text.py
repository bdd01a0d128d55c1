"""JSON-LD as pages carry it: the text of a block, and the school that stands in each."""

import json
from collections.abc import Mapping, Sequence

from markupsafe import Markup

from sitegen.press.imprint import Imprint

Json = str | bool | int | Sequence["Json"] | Mapping[str, "Json"]

CONTEXT = "https://schema.org"
_ESCAPED = {ord("<"): "\\u003c", ord(">"): "\\u003e", ord("&"): "\\u0026"}


def block(found: Mapping[str, Json]) -> Markup:
    """JSON text for `<script type="application/ld+json">`; '<', '>' and '&' are escaped as JSON allows."""
    text = json.dumps(found, ensure_ascii=False, separators=(",", ":"))
    return Markup(text.translate(_ESCAPED))


def school_object(imprint: Imprint) -> dict[str, Json]:
    """https://schema.org/Organization"""
    return {"@type": "Organization", "name": imprint.name, "url": imprint.address}
