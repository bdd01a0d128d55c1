"""A document against the shape of its file: what is missing, unknown, empty or of another kind."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import BaseModel, ValidationError

from sitegen.faults import Fault
from sitegen.source.larder_file import LarderFile
from sitegen.source.models import RecipeFile, SiteFile, TutorialFile
from sitegen.source.reader import parse_document
from sitegen.source.shapes import KINDS, shaped

GOOD = """\
title: Bay buns
summary: Small buns.
makes: 12 buns
photo: {file: a.jpg, alt: Twelve buns}
release: {subscribers: 2026-07-03, public-shows: ingredients}
video: {address: "https://video.example/a"}
tags: [buns]
components:
  Dough:
    ingredients:
      - 100 g plain flour
    method:
      - text: Mix {plain flour}.
        hands-on: 3 min
revisions:
  - date: 2026-07-20
    note: Wording.
    notify: yes
"""


def faults_of(text: str) -> list[Fault]:
    document, read = parse_document(text, "recipe.yaml")
    assert document is not None
    assert read == ()
    _, faults = shaped(document, RecipeFile)
    return list(faults)


def test_a_good_file_becomes_a_model_with_its_days_and_its_yes() -> None:
    document, _ = parse_document(GOOD, "recipe.yaml")
    assert document is not None
    file, faults = shaped(document, RecipeFile)
    assert faults == ()
    assert file is not None
    assert file.release is not None
    assert (file.release.subscribers, file.release.public) == (date(2026, 7, 3), None)
    assert file.revisions[0].notify is True
    assert file.components["Dough"].method[0].hands_on == "3 min"


@pytest.mark.parametrize(
    ("good", "bad", "code", "line", "column", "way_out"),
    [
        ("summary: Small", "sumary: Small", "unknown-key", 2, 1, "did you mean 'summary'?"),
        ("hands-on: 3", "handson: 3", "unknown-key", 14, 9, "did you mean 'hands-on'?"),
        ("makes: 12 buns\n", "", "missing-key", 1, 1, "write 'makes: ...'"),
        ("- text: Mix {plain flour}.\n        ", "- ", "missing-key", 13, 9, "write 'text: ...'"),
        (", alt: Twelve buns", "", "alt-missing", 4, 1, ""),
        ("tags: [buns]", "tags:", "empty-value", 7, 1, ""),
        ("tags: [buns]", "tags: buns", "wrong-kind", 7, 7, "begin each entry on its own line with '- '"),
        ("hands-on: 3 min", "hands-on: [3 min]", "brace-begins-text", 14, 19, ""),
        ("- 100 g plain flour", "- 100 g flour: plain", "colon-in-text", 11, 9, ""),
        ("title: Bay buns", "title: " + "b" * 121, "too-long", 1, 8, ""),
        ("tags: [buns]", "tags: ['']", "nothing-in-it", 7, 8, ""),
        ("title: Bay buns", "title: '  '", "nothing-in-it", 1, 8, ""),
        ("shows: ingredients", "shows: ingredient", "unknown-word", 5, 50, "did you mean 'ingredients'?"),
        ("2026-07-03", "3/7/2026", "not-a-day", 5, 24, ""),
        ("2026-07-03", "2026-02-30", "not-a-day", 5, 24, ""),
        ("2026-07-20", "20260720", "not-a-day", 16, 11, ""),
        ("notify: yes", "notify: true", "not-yes-or-no", 18, 13, ""),
        ("https://video", "video", "wrong-form", 6, 18, ""),
    ],
)
def test_a_misfit_is_told_at_its_place(
    good: str, bad: str, code: str, line: int, column: int, way_out: str
) -> None:
    assert good in GOOD
    fault = next(fault for fault in faults_of(GOOD.replace(good, bad, 1)) if fault.code == code)
    assert (fault.place.line, fault.place.column) == (line, column)
    assert way_out in fault.way_out


def test_all_misfits_are_told_at_once() -> None:
    text = GOOD.replace("title:", "titel:").replace("notify: yes", "notify: perhaps")
    text = text.replace("tags: [buns]", "tags: buns")
    assert {fault.code for fault in faults_of(text)} == {
        "unknown-key",
        "missing-key",
        "not-yes-or-no",
        "wrong-kind",
    }


@pytest.mark.parametrize("text", ["just words\n", "- a\n- b\n"])
def test_a_file_that_is_no_mapping_is_of_another_kind(text: str) -> None:
    assert [fault.code for fault in faults_of(text)] == ["wrong-kind"]


def test_an_empty_file_misses_everything() -> None:
    assert [fault.code for fault in faults_of("# nothing yet\n")] == ["wrong-kind"]


WORDS = st.sampled_from(["", "  ", "x", "yes", "2026-07-03", "3/7", "https://a.example/", "y" * 60_000])
VALUES = st.recursive(
    WORDS | st.none(),
    lambda inner: st.lists(inner, max_size=2) | st.dictionaries(WORDS, inner, max_size=2),
    max_leaves=6,
)


@pytest.mark.parametrize("model", [RecipeFile, SiteFile, TutorialFile, LarderFile])
@given(data=st.data())
def test_every_kind_of_error_of_the_validator_has_a_sentence(
    model: type[BaseModel], data: st.DataObject
) -> None:
    keys = st.sampled_from(sorted(_keys_below(model)))
    nested = st.recursive(
        VALUES,
        lambda inner: st.lists(inner, max_size=2) | st.dictionaries(keys, inner, max_size=4),
        max_leaves=8,
    )
    value = data.draw(st.dictionaries(keys, nested, max_size=6) | nested)
    assert _kinds_of_error(model, value) <= KINDS.keys()


def _kinds_of_error(model: type[BaseModel], value: object) -> set[str]:
    try:
        model.model_validate(value)
    except ValidationError as problem:
        return {details["type"] for details in problem.errors()}
    return set()


def _keys_below(model: type[BaseModel]) -> set[str]:
    schema = model.model_json_schema(by_alias=True)
    shapes = [schema, *schema.get("$defs", {}).values()]
    return {key for shape in shapes for key in shape.get("properties", {})}
