"""The JSON Schemas: valid themselves, and true of the sample school and of the demo."""

from collections.abc import Iterator
from pathlib import Path

import pytest
import yaml
from jsonschema import Draft202012Validator

from sitegen.source.schemas import Kind, schema_of

SAMPLE = Path(__file__).parent / "sample_school" / "content"
DEMO = Path(__file__).parents[2] / "content"
KINDS: tuple[Kind, ...] = ("recipe", "site", "larder", "prices", "order", "tutorial")


class EditorLoader(yaml.SafeLoader):
    """Plain scalars as editors read them (YAML 1.2): numbers, but days and yes/no stay text."""

    yaml_implicit_resolvers = {  # noqa: RUF012 - the base class declares it so
        first: [(tag, pattern) for tag, pattern in rows if not tag.endswith((":timestamp", ":bool"))]
        for first, rows in yaml.SafeLoader.yaml_implicit_resolvers.items()
    }


def documents() -> Iterator[tuple[Kind, Path]]:
    for root in (SAMPLE, DEMO):
        yield "site", root / "site.yaml"
        yield from (("larder", path) for path in root.glob("larder.yaml"))
        yield "prices", root / "prices.yaml"
        yield from (("order", path) for path in sorted(root.glob("orders/*.yaml")))
        yield from (("recipe", path) for path in sorted(root.glob("recipes/*/recipe.yaml")))
        yield from (("tutorial", path) for path in sorted(root.glob("tutorials/*.md")))


def loaded(path: Path) -> object:
    text = path.read_text(encoding="utf-8")
    front = text.split("---\n")[1] if path.suffix == ".md" else text
    return yaml.load(front, EditorLoader)


def errors(kind: Kind, document: object) -> list[str]:
    return [error.message for error in Draft202012Validator(schema_of(kind)).iter_errors(document)]


@pytest.mark.parametrize("kind", KINDS)
def test_each_schema_is_a_valid_json_schema_of_2020_12(kind: Kind) -> None:
    schema = schema_of(kind)
    assert schema["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    Draft202012Validator.check_schema(schema)


@pytest.mark.parametrize(("kind", "path"), list(documents()), ids=lambda value: str(value)[-40:])
def test_what_is_written_in_a_school_fits_its_schema(kind: Kind, path: Path) -> None:
    assert errors(kind, loaded(path)) == []


@pytest.mark.parametrize(
    ("key", "value"),
    [
        ("titel", "x"),
        ("makes", ["12 buns"]),
        ("release", {"public": "3/7/2026"}),
        ("photo", {"file": "a.jpg"}),
    ],
)
def test_a_slip_of_the_pen_does_not_fit(key: str, value: object) -> None:
    recipe = loaded(SAMPLE / "recipes" / "base-buttercream" / "recipe.yaml")
    assert isinstance(recipe, dict)
    assert errors("recipe", recipe | {key: value})


@pytest.mark.parametrize("value", ["12 buns", 12, True])
def test_a_text_may_be_what_an_editor_takes_for_a_number(value: object) -> None:
    recipe = loaded(SAMPLE / "recipes" / "base-buttercream" / "recipe.yaml")
    assert isinstance(recipe, dict)
    assert errors("recipe", recipe | {"title": value}) == []


@pytest.mark.parametrize("kind", KINDS)
def test_every_key_has_a_description_for_the_editor(kind: Kind) -> None:
    schema = schema_of(kind)
    defined = schema.get("$defs", {})
    assert isinstance(defined, dict)
    shapes = [schema, *defined.values()]
    bare = [
        key
        for shape in shapes
        for key, row in shape.get("properties", {}).items()
        if "description" not in row
    ]
    assert bare == []


def test_an_editor_is_offered_every_kind_of_component() -> None:
    kind = schema_of("recipe")["$defs"]["ComponentFile"]["properties"]["kind"]  # type: ignore[index]
    offered = next(one["enum"] for one in kind["anyOf"] if "enum" in one)
    assert {"creamed cake", "brioche", "poolish"} <= set(offered)
