"""The structured data of every page, held against the vocabulary of schema.org.

Source: schema.org as the npm package `schema-dts` carries it: each type with its properties.
"""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.outside.demo import Demo, read_json_ld

INTERFACE = re.compile(r"interface (\w+)Base extends ([^{]+)\{(.*?)\n\}", re.DOTALL)
PROPERTY = re.compile(r'^\s+"(@?\w+)"\?:', re.MULTILINE)
PARENT = re.compile(r"(\w+)Base\b")
DURATION = re.compile(r"P(?=.)(\d+D)?(T(?=.)(\d+H)?(\d+M)?(\d+S)?)?")
DURATIONS = ("prepTime", "cookTime", "totalTime", "performTime")


@pytest.fixture(scope="module")
def vocabulary(checkers: Path) -> dict[str, set[str]]:
    """Type -> all its properties, inherited ones too."""
    text = (checkers / "schema-dts" / "dist" / "schema.d.ts").read_text(encoding="utf-8")
    own = {
        name: (PARENT.findall(parents), set(PROPERTY.findall(body)))
        for name, parents, body in INTERFACE.findall(text)
    }

    def properties(name: str) -> set[str]:
        parents, found = own.get(name, ([], set()))
        return found.union(*(properties(parent) for parent in parents))

    return {name: properties(name) for name in own}


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


def test_the_vocabulary_is_there(vocabulary: dict[str, set[str]]) -> None:
    assert {"recipeIngredient", "recipeYield", "totalTime", "name"} <= vocabulary["Recipe"]
    assert "recipeIngredient" not in vocabulary["Organization"]


def test_every_type_and_property_is_of_schema_org(demo: Demo, vocabulary: dict[str, set[str]]) -> None:
    seen = set()
    for page in demo.pages():
        for block in read_json_ld(page):
            for node in nodes(block):
                kind = str(node["@type"])
                seen.add(kind)
                assert kind in vocabulary, f"{page.name}: {kind}"
                strange = {key for key in node if not key.startswith("@")} - vocabulary[kind]
                assert not strange, f"{page.name}: {kind} has {strange}"
    assert {"Recipe", "HowToStep", "HowToSection", "Organization"} <= seen


def test_durations_are_iso_8601(demo: Demo) -> None:
    found = 0
    for page in demo.pages():
        for block in read_json_ld(page):
            for node in nodes(block):
                for key in DURATIONS:
                    if key in node:
                        found += 1
                        assert DURATION.fullmatch(str(node[key])), f"{page.name}: {key} {node[key]}"
    assert found


def test_public_pages_carry_no_method_where_it_is_for_subscribers(demo: Demo) -> None:
    page = demo.public / "recipes" / "blackcurrant-and-bay-cupcakes.html"
    recipe = next(block for block in read_json_ld(page) if block["@type"] == "Recipe")
    assert "recipeInstructions" not in recipe
    assert recipe["recipeIngredient"]
