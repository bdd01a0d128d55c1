"""What if: the same figures as at the terminal, and what cannot be told beside its field."""

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sitegen.desk.what_if import Answer, RecipeFaulty, answered
from sitegen.desk.what_if_form import form_of
from sitegen.desk.what_if_shown import shown_answer
from sitegen.desk.what_if_words import WhatIfWords, words_of
from sitegen.release.asking import AtFault, BatchWords, asked_sheet, recipe_named
from sitegen.release.plans import PlanWords, asked_plan
from sitegen.release.sheets import sheet_setter
from sitegen.sheet.drift import sheet_drift
from sitegen.sheet.drift_words import points_text
from sitegen.source.library import read_content
from sitegen.source.school import Content
from tests.desk.conftest import with_tin_and_fault
from tests.release.small_school import NOON

SLUG = "open-biscuits"
SAID = ["", "0", "24", "-1", "1/0", "½", "times 1/0", "23 cm square", "0 cm round", "plain flour", "us-cups"]
NBSP = "\N{NO-BREAK SPACE}"


@pytest.fixture(scope="module")
def root(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return with_tin_and_fault(tmp_path_factory.mktemp("what-if"))


@pytest.fixture(scope="module")
def content(root: Path) -> Content:
    return read_content(root)


def asked(content: Content, slug: str = SLUG, **words: str) -> Answer:
    assert content.school is not None
    setter = sheet_setter(content, content.school)
    return answered(content, setter, recipe_named(content, slug), WhatIfWords(**words), NOON)


@pytest.mark.parametrize(
    ("words", "batch", "edition"),
    [
        ({}, BatchWords(), "us-cups"),
        ({"batch": "30"}, BatchWords(makes="30"), "british-metric"),
        ({"batch": "times 3/2"}, BatchWords(times="3/2"), "us-cups"),
        ({"tin": "23 cm square"}, BatchWords(tin="23 cm square"), "british-metric"),
        ({"in_hand": "200 g", "of": "unsalted butter"}, BatchWords(using="200 g unsalted butter"), "us-cups"),
    ],
)
def test_the_figures_are_those_of_the_terminal(
    root: Path, content: Content, words: dict[str, str], batch: BatchWords, edition: str
) -> None:
    answer = asked(content, edition=edition, cooks="2", ready_by="2026-07-18T16:00", **words)
    at_terminal = asked_sheet(root, SLUG, edition, batch)
    plan = asked_plan(root, [SLUG], edition, batch, PlanWords(ready_by="2026-07-18 16:00", cooks=2), NOON)
    assert answer.faults == {}
    assert answer.sheet == at_terminal.sheet
    assert answer.tested == at_terminal.tested
    assert answer.plan == plan.plan
    drift = [points_text(line.points) for line in sheet_drift(at_terminal.sheet).lines]
    rows = [row for part in shown_answer(answer).drift.parts for row in part.rows]
    assert [row.points.replace("\N{MINUS SIGN}", "-") for row in rows] == drift


@pytest.mark.parametrize(
    ("words", "field", "part"),
    [
        ({"batch": "0"}, "batch", "no amount"),
        ({"batch": "24 buns"}, "batch", "squares"),
        ({"batch": "times 2000"}, "batch", "thousand times"),
        ({"tin": "a shoe box"}, "tin", "no tin that we know"),
        ({"tin": "20 cm sqare"}, "tin", "square"),
        ({"in_hand": "200 g", "of": "saffron"}, "in-hand", "not in the recipe"),
        ({"of": "plain flour"}, "in-hand", "how much plain flour"),
        ({"batch": "24", "tin": "23 cm square"}, "tin", "in one way"),
        ({"edition": "australian"}, "edition", "British metric, US cups"),
        ({"cooks": "0"}, "cooks", "from 1 to 20"),
        ({"cooks": "two"}, "cooks", "from 1 to 20"),
        ({"oven_tins": "201"}, "oven-tins", "from 1 to 200"),
        ({"ready_by": "2026-07-15T12:05"}, "ready-by", "the earliest is 2026-07-15"),
        ({"ready_by": "teatime"}, "ready-by", "Saturday 16:00"),
    ],
)
def test_what_cannot_be_is_told_beside_its_field_and_the_rest_stays(
    content: Content, words: dict[str, str], field: str, part: str
) -> None:
    answer = asked(content, **words)
    assert list(answer.faults) == [field]
    assert part in answer.faults[field].told
    assert answer.sheet.head.edition.key == "british-metric"
    assert answer.plan is not None
    assert not answer.plan.ready
    form = form_of(answer, content, content.school) if content.school else None
    assert form is not None
    told = {each.name: each.fault for each in (*form.batch, *form.work)}
    assert told[field] == answer.faults[field]
    assert sum(fault is not None for fault in told.values()) == 1


def test_of_two_ways_to_ask_for_a_batch_the_first_is_followed(content: Content) -> None:
    answer = asked(content, batch="24", tin="23 cm square")
    assert answer.sheet.head.batch.title == f"24{NBSP}squares"
    assert list(answer.faults) == ["tin"]
    assert answer.batch_fault is None


def test_a_recipe_with_errors_has_no_answer(content: Content) -> None:
    with pytest.raises((AtFault, RecipeFaulty)):
        asked(content, "coming-biscuits")


def test_the_tested_amounts_stand_beside_those_that_differ(content: Content) -> None:
    lines = [line for part in shown_answer(asked(content, batch="24")).parts for line in part.lines]
    assert [(line.line.amount, line.tested) for line in lines] == [
        (f"240{NBSP}g", f"120{NBSP}g"),
        (f"120{NBSP}g", f"60{NBSP}g"),
        (f"360{NBSP}g", f"180{NBSP}g"),
    ]
    as_tested = [line for part in shown_answer(asked(content)).parts for line in part.lines]
    assert {line.tested for line in as_tested} == {""}


def test_times_that_a_batch_changes_tell_the_tested_ones(content: Content) -> None:
    answer = asked(content, batch="times 40")
    tested = [step for part in answer.tested.components for step in part.steps]
    steps = [step for part in shown_answer(answer).parts for step in part.steps]
    changed = [bool(step.changed) for step in steps]
    differs = [
        (one.hands_on, one.wait, one.oven) != (step.step.hands_on, step.step.wait, step.step.oven)
        for one, step in zip(tested, steps, strict=True)
    ]
    assert changed == differs
    assert any(changed)


@given(
    fields=st.fixed_dictionaries(
        {name: st.text(max_size=12) | st.sampled_from(SAID) for name in WhatIfWords.__dataclass_fields__}
    )
)
@settings(max_examples=20)
def test_whatever_is_asked_there_is_an_answer(content: Content, fields: dict[str, str]) -> None:
    answer = asked(content, **fields)
    assert answer.tested.head.batch.is_tested
    assert (answer.plan is None) == bool(answer.no_plan)
    assert shown_answer(answer).said.startswith("Worked out: ")


def test_the_address_keeps_the_question() -> None:
    words = words_of({"batch": " 24 ", "in-hand": "", "ready-by": "2026-12-05T16:00", "paper": "a4"})
    assert words == WhatIfWords(batch="24", ready_by="2026-12-05T16:00")
    assert words.query == "batch=24&ready-by=2026-12-05T16%3A00"
    assert len(words_of({"tin": "x" * 5000}).tin) < 200


def test_the_form_offers_the_ingredients_that_have_an_amount(content: Content) -> None:
    assert content.school is not None
    form = form_of(asked(content, in_hand="90 g", of="plain flour"), content, content.school)
    options = next(field for field in form.batch if field.name == "of").options
    assert [option.value for option in options] == ["", "unsalted butter", "caster sugar", "plain flour"]
    assert [option.value for option in options if option.is_chosen] == ["plain flour"]
