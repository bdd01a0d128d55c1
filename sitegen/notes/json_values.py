"""JSON-LD from a file or from the scripts of a page, and the Recipe that lies in it.

Sources: schema.org/Recipe; JSON-LD 1.1, section 7.2 (script elements of type application/ld+json).
"""

import json
import re
from collections.abc import Iterator, Mapping, Sequence
from html.parser import HTMLParser

from sitegen import limits

Json = str | int | float | bool | None | Sequence["Json"] | Mapping[str, "Json"]

_SCRIPT = "application/ld+json"


class TooDeep(Exception):
    """Values lie in each other deeper than any recipe has them."""


class _Scripts(HTMLParser):
    """Gathers the scripts of a page that hold JSON-LD."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.found: list[str] = []
        self._inside = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        kind = next((value for name, value in attrs if name == "type"), "") or ""
        self._inside = tag == "script" and kind.partition(";")[0].strip().casefold() == _SCRIPT
        if self._inside:
            self.found.append("")

    def handle_endtag(self, tag: str) -> None:  # noqa: ARG002 (the parser's signature)
        self._inside = False

    def handle_data(self, data: str) -> None:
        if self._inside:
            self.found[-1] += data


def scripts_in(html: str) -> list[str]:
    """The texts of a page's scripts of JSON-LD, in order; none for a page that cannot be read."""
    parser = _Scripts()
    try:
        parser.feed(html)
        parser.close()
    except (AssertionError, ValueError):
        return []
    return parser.found


def json_in(text: str) -> Json:
    """The value that a text is. Raises TooDeep, and ValueError for what is no JSON."""
    if _depth(text) > limits.DEPTH:
        raise TooDeep
    return json.loads(text, parse_int=str, parse_float=str, parse_constant=str)  # type: ignore[no-any-return]


def _depth(text: str) -> int:
    """How deep brackets lie in each other, those in strings left out."""
    deepest = depth = 0
    for found in re.finditer(r'"(?:[^"\\]|\\.)*"|[\[{]|[\]}]', text):
        mark = found.group(0)
        depth += 1 if mark in "[{" else -1 if mark in "]}" else 0
        deepest = max(deepest, depth)
    return deepest


def recipe_in(value: Json) -> Mapping[str, Json] | None:
    """The first Recipe of a value: itself, one of a list or of its `@graph`, or one that lies in it."""
    waiting: list[Json] = [value]
    while waiting:
        here = waiting.pop(0)
        if isinstance(here, Mapping):
            if "recipe" in [kind.rpartition("/")[2].casefold() for kind in texts_of(here.get("@type"))]:
                return here
            waiting += here.values()
        elif isinstance(here, Sequence) and not isinstance(here, str):
            waiting += here
    return None


def texts_of(value: Json) -> list[str]:
    """The texts of a value: itself, those of a list, the names and values (with their units) of things."""
    if isinstance(value, str):
        return [value] if value.strip() else []
    if isinstance(value, Mapping):
        if "value" in value and "unitText" in value:
            return [" ".join((*texts_of(value["value"]), *texts_of(value["unitText"])))]
        for key in ("name", "@value", "text", "value"):
            if key in value:
                return texts_of(value[key]) if not isinstance(value[key], Mapping) else []
        return []
    if isinstance(value, Sequence):
        flat: Iterator[str] = (
            text for one in value[: limits.NOTE_STRINGS] if not _is_list(one) for text in texts_of(one)
        )
        return list(flat)
    return []


def _is_list(value: Json) -> bool:
    return isinstance(value, Sequence) and not isinstance(value, str)
