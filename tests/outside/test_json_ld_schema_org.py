"""The structured data of every page, held against the vocabulary of schema.org.

Source: schema.org as the npm package `schema-dts` carries it: each type with its properties, each property
with the types of its values.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from functools import cached_property
from pathlib import Path
from urllib.parse import urlsplit

import pytest

from tests.outside.demo import Demo, read_json_ld

INTERFACE = re.compile(r"interface (\w+)Base extends ([^{]+)\{(.*?)\n\}", re.DOTALL)
LEAF = re.compile(r"interface (\w+)Leaf extends ([^{]+)\{")
PROPERTY = re.compile(r'^\s+"(@?\w+)"\?:\s*(?:SchemaValue<([^"]*),|)', re.MULTILINE)
PARENT = re.compile(r"(\w+)Base\b")
DURATION = re.compile(r"P(?=.)(\d+D)?(T(?=.)(\d+H)?(\d+M)?(\d+S)?)?")
AMOUNT = re.compile(r"\d+(\.\d+)? (k?J|k?cal|g|mg|µg|ml|l)")
SELECTOR = re.compile(r"\.[\w-]+")
RECIPE = "blackcurrant-and-bay-cupcakes.html"


def is_day(value: object) -> bool:
    """ISO 8601."""
    try:
        return isinstance(value, str) and bool(date.fromisoformat(value))
    except ValueError:
        return False


def is_address(value: object) -> bool:
    parts = urlsplit(value) if isinstance(value, str) else urlsplit("")
    return parts.scheme == "https" and bool(parts.netloc)


VALUES = {
    "Text": lambda value: isinstance(value, str) and bool(value.strip()),
    "URL": is_address,
    "Date": is_day,
    "Duration": lambda value: isinstance(value, str) and bool(DURATION.fullmatch(value)),
    "Energy": lambda value: isinstance(value, str) and bool(AMOUNT.fullmatch(value)),
    "Mass": lambda value: isinstance(value, str) and bool(AMOUNT.fullmatch(value)),
    "CssSelectorType": lambda value: isinstance(value, str) and bool(SELECTOR.fullmatch(value)),
    "Boolean": lambda value: isinstance(value, bool),
    "Number": lambda value: isinstance(value, int) and not isinstance(value, bool),
    "Integer": lambda value: isinstance(value, int) and not isinstance(value, bool),
}
"""Data type -> whether a value is one. What schema.org also takes, and no page needs, is left out."""


@dataclass(frozen=True)
class Vocabulary:
    """parents: type -> the types that it is made of. own: type -> its properties -> types of their values."""

    parents: Mapping[str, frozenset[str]]
    own: Mapping[str, Mapping[str, frozenset[str]]]

    @classmethod
    def read(cls, text: str) -> "Vocabulary":
        parents: dict[str, frozenset[str]] = {}
        own: dict[str, dict[str, frozenset[str]]] = {}
        for name, above, body in INTERFACE.findall(text):
            parents[name] = frozenset(PARENT.findall(above))
            own[name] = {key: frozenset(re.findall(r"\w+", types)) for key, types in PROPERTY.findall(body)}
        for name, above in LEAF.findall(text):
            parents.setdefault(name, frozenset(PARENT.findall(above)) - {name})
        return cls(parents, own)

    @cached_property
    def types(self) -> frozenset[str]:
        return frozenset(self.parents)

    def lineage(self, name: str) -> frozenset[str]:
        """The type and all that it is a kind of."""
        above = self.parents.get(name, frozenset())
        return frozenset([name]).union(*(self.lineage(parent) for parent in above))

    def values(self, name: str, key: str) -> frozenset[str]:
        """What a property of a type may hold; empty where the type has no such property."""
        found = (self.own.get(each, {}).get(key, frozenset()) for each in self.lineage(name))
        return frozenset().union(*found)

    def faults(self, node: Mapping[str, object]) -> Iterator[str]:
        """What is wrong with a typed node, and with those in it."""
        kind = str(node.get("@type"))
        if kind not in self.types:
            yield f"no type {kind}"
            return
        for key, given in node.items():
            if key.startswith("@"):
                continue
            allowed = self.values(kind, key)
            if not allowed:
                yield f"{kind} has no {key}"
            for value in given if isinstance(given, list) else [given]:
                if isinstance(value, dict):
                    if not self.lineage(str(value.get("@type"))) & allowed:
                        yield f"{kind}.{key} holds no {value.get('@type')}"
                    yield from self.faults(value)
                elif not any(VALUES[each](value) for each in allowed & VALUES.keys()):
                    yield f"{kind}.{key} is {value!r}, not of {', '.join(sorted(allowed))}"


@pytest.fixture(scope="module")
def vocabulary(checkers: Path) -> Vocabulary:
    text = (checkers / "schema-dts" / "dist" / "schema.d.ts").read_text(encoding="utf-8")
    return Vocabulary.read(text)


def nodes(value: object) -> Iterator[dict[str, object]]:
    """Every typed node of a JSON-LD value."""
    if isinstance(value, dict):
        if "@type" in value:
            yield value
        for inner in value.values():
            yield from nodes(inner)
    elif isinstance(value, list):
        for inner in value:
            yield from nodes(inner)


def block_of(page: Path, kind: str) -> dict[str, object]:
    return next(block for block in read_json_ld(page) if block["@type"] == kind)


def test_the_vocabulary_is_there(vocabulary: Vocabulary) -> None:
    assert vocabulary.values("Recipe", "totalTime") == {"Duration"}
    assert "Text" in vocabulary.values("Recipe", "name")
    assert not vocabulary.values("Organization", "recipeIngredient")
    assert {"ListItem", "Thing"} <= vocabulary.lineage("HowToStep")


@pytest.mark.parametrize(
    ("node", "fault"),
    [
        ({"@type": "Recept"}, "no type Recept"),
        ({"@type": "Recipe", "cooktime": "PT1H"}, "Recipe has no cooktime"),
        ({"@type": "Recipe", "cookTime": "45 minutes"}, "Recipe.cookTime is '45 minutes', not of Duration"),
        ({"@type": "Recipe", "datePublished": "20 July"}, "not of Date, DateTime"),
        ({"@type": "Recipe", "url": "recipes/buns.html"}, "not of URL"),
        ({"@type": "Recipe", "author": {"@type": "Recipe"}}, "Recipe.author holds no Recipe"),
        ({"@type": "NutritionInformation", "calories": "much"}, "not of Energy"),
        ({"@type": "HowToStep", "position": 1.5}, "HowToStep.position is 1.5"),
    ],
)
def test_a_planted_fault_is_found(node: dict[str, object], fault: str, vocabulary: Vocabulary) -> None:
    assert fault in "\n".join(vocabulary.faults(node))


def test_every_type_property_and_value_is_of_schema_org(demo: Demo, vocabulary: Vocabulary) -> None:
    seen: set[str] = set()
    for page in demo.pages():
        for block in read_json_ld(page):
            assert block["@context"] == "https://schema.org"
            assert list(vocabulary.faults(block)) == [], page
            seen |= {str(node["@type"]) for node in nodes(block)}
    assert seen == {
        "Article",
        "BreadcrumbList",
        "Clip",
        "CollectionPage",
        "HowToSection",
        "HowToStep",
        "ItemList",
        "ListItem",
        "NutritionInformation",
        "Organization",
        "Recipe",
        "VideoObject",
        "WebPage",
        "WebPageElement",
    }


def test_every_page_that_search_engines_list_has_data_and_the_way_to_it(demo: Demo) -> None:
    for tree in (demo.public, demo.subscribers):
        for page in tree.rglob("*.html"):
            kinds = [str(block["@type"]) for block in read_json_ld(page)]
            path = page.relative_to(tree).as_posix()
            if path in ("404.html", "not-kept.html"):
                assert kinds == []
            elif path == "index.html":
                assert kinds == ["CollectionPage"]
            else:
                assert len(kinds) == 2, path
                assert kinds[0] in ("Recipe", "Article", "CollectionPage"), path
                assert kinds[1] == "BreadcrumbList", path


def test_a_film_has_what_search_engines_demand(demo: Demo) -> None:
    """Name, picture and day, for want of which no film is listed."""
    films = [
        node for page in demo.pages() for node in nodes(read_json_ld(page)) if node["@type"] == "VideoObject"
    ]
    assert films
    for film in films:
        assert {"name", "description", "thumbnailUrl", "uploadDate", "url"} <= set(film)


def test_public_pages_carry_no_method_where_it_is_for_subscribers(demo: Demo) -> None:
    recipe = block_of(demo.public / "recipes" / RECIPE, "Recipe")
    assert "recipeInstructions" not in recipe
    assert recipe["recipeIngredient"]


def test_steps_of_the_subscribers_lead_to_their_place_on_the_page(demo: Demo) -> None:
    page = demo.subscribers / "recipes" / RECIPE
    text = page.read_text(encoding="utf-8")
    steps = [node for node in nodes(read_json_ld(page)) if node["@type"] == "HowToStep"]
    assert len(steps) > 5
    for number, step in enumerate(steps, start=1):
        assert step["position"] == number
        assert f'id="{str(step["url"]).split("#")[1]}"' in text
