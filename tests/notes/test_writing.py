"""A recipe that is written and read again is the same recipe: those of the demo, and random ones."""

import json
import shutil
from collections.abc import Mapping
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from sitegen.faults import Severity
from sitegen.kitchen.declared import known_with
from sitegen.kitchen.recipe import Recipe
from sitegen.notes.block_yaml import Entry, Items, Keys, yaml_text
from sitegen.notes.figures import NoFigure, number_text
from sitegen.notes.writing import recipe_text
from sitegen.source.context import Context
from sitegen.source.declared import declared_in
from sitegen.source.library import read_content
from sitegen.source.models import RecipeFile
from sitegen.source.photos import Folder
from sitegen.source.reader import parse_document
from sitegen.source.recipes import RecipeSource, recipe_from
from sitegen.source.shapes import shaped
from tests.notes.drafts import LORE
from tests.notes.recipe_strategies import LETTERS, recipes

PROJECT = Path(__file__).parents[2]
FOLDER = Folder(Path("/nowhere/content/recipes/any"), "content/recipes/any")


def test_every_recipe_of_the_demo_is_the_same_once_it_is_written(tmp_path: Path) -> None:
    shutil.copytree(PROJECT / "content", tmp_path / "content")
    before = read_content(tmp_path)
    assert len(before.recipes) > 5
    for recipe in before.recipes:
        path = tmp_path / "content" / "recipes" / recipe.slug / "recipe.yaml"
        path.write_text(recipe_text(recipe, before.tables.measures), encoding="utf-8")
    after = read_content(tmp_path)
    assert after.recipes == before.recipes
    assert {one.code for one in after.faults} == {one.code for one in before.faults}


def read(text: str) -> Recipe:
    """The recipe of a text that has no error."""
    document, faults = parse_document(text, "recipe.yaml")
    assert document is not None
    assert faults == (), text
    file, faults = shaped(document, RecipeFile)
    assert file is not None, (faults, text)
    tables = LORE.context.tables
    declared, faults = declared_in(document, file.larder, tables)
    assert not [one for one in faults if one.severity is Severity.ERROR], faults
    context = Context(known_with(tables, declared), tuple(file.components), ("Base buttercream",), declared)
    recipe, faults = recipe_from(RecipeSource("any", FOLDER, document, file), context)
    assert recipe is not None, (faults, text)
    return recipe


@settings(max_examples=80, deadline=None)
@given(recipes)
def test_any_recipe_is_the_same_once_it_is_written(file: dict[str, Any]) -> None:
    """The file is JSON, which YAML reads; written by ours, it is read again."""
    first = read(json.dumps(file))
    text = recipe_text(first, LORE.context.tables.measures)
    again = read(text)
    assert again == first, text
    assert recipe_text(again, LORE.context.tables.measures) == text


BATCHES = ["24 cupcakes", "23 cm round", "half", "treble", "times 5/4", "using 200 g plain flour"]


@pytest.mark.parametrize("batch", BATCHES)
def test_a_batch_is_written_as_it_is_asked_for(batch: str) -> None:
    file = {
        "title": "A",
        "summary": "B",
        "makes": "12 cupcakes",
        "tin": "20 cm round",
        "batches": [batch],
        "components": {
            "C": {"ingredients": ["150 g plain flour"], "method": [{"text": "Sift {plain flour}."}]}
        },
    }
    first = read(json.dumps(file))
    assert read(recipe_text(first, LORE.context.tables.measures)).batches == first.batches


plain_values = st.recursive(
    st.text(st.characters(codec="utf-8", exclude_categories=("Cs",)), min_size=1, max_size=30),
    lambda inner: (
        st.lists(inner, min_size=1, max_size=3)
        | st.dictionaries(st.text(LETTERS + ":#{", min_size=1, max_size=8), inner, min_size=1, max_size=3)
    ),
    max_leaves=8,
)


@given(
    st.dictionaries(st.text(LETTERS + ":#'", min_size=1, max_size=8), plain_values, min_size=1, max_size=4)
)
def test_any_values_are_read_as_they_were_written(values: dict[str, Any]) -> None:
    """By PyYAML, which gives every scalar back as its text."""
    written = yaml_text(_keys(values))
    assert yaml.load(written, Loader=yaml.BaseLoader) == values


def _keys(values: Mapping[str, Any]) -> Keys:
    return Keys(
        tuple(
            Entry(key, _node(value), ("a comment: with a colon\nand a line",))
            for key, value in values.items()
        )
    )


def _node(value: Any) -> Any:
    if isinstance(value, str):
        return value
    if isinstance(value, list):
        return Items(tuple(Entry("", _node(one), ("another # comment",)) for one in value), ("below",))
    return _keys(value)


@given(st.fractions(Fraction(1, 999), Fraction(100_000), max_denominator=999))
def test_a_number_is_written_exactly(value: Fraction) -> None:
    whole, _, part = (
        number_text(value).partition(" ") if " " in number_text(value) else ("0", "", number_text(value))
    )
    assert Fraction(whole) + Fraction(part) == value


def test_a_number_that_no_file_can_hold_is_told() -> None:
    with pytest.raises(NoFigure):
        number_text(Fraction(1, 99_991))


def test_the_house_writes_plain_texts_where_it_can() -> None:
    top = Keys(
        (
            Entry("text", "Whisk {eggs}: quickly"),
            Entry("a", "Bake."),
            Entry("b", "{eggs} first"),
            Entry("c", "5 # six"),
        )
    )
    assert yaml_text(top) == 'text: "Whisk {eggs}: quickly"\na: Bake.\nb: "{eggs} first"\nc: "5 # six"\n'
