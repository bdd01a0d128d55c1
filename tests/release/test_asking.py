"""One-off sheets, asked for in words."""

from pathlib import Path

import pytest

from sitegen.release.asking import AtFault, BatchWords, NotAsked, asked_sheet
from tests.release.small_school import write_recipe, write_school


@pytest.fixture(scope="module")
def school(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return write_school(tmp_path_factory.mktemp("asked"))


@pytest.mark.parametrize(
    ("words", "flour"),
    [
        (BatchWords(), "180\N{NO-BREAK SPACE}g"),
        (BatchWords(makes="24"), "360\N{NO-BREAK SPACE}g"),
        (BatchWords(makes="24 squares"), "360\N{NO-BREAK SPACE}g"),
        (BatchWords(times="3/2"), "270\N{NO-BREAK SPACE}g"),
        (BatchWords(using="240 g unsalted butter"), "360\N{NO-BREAK SPACE}g"),
    ],
)
def test_a_batch_is_asked_for_in_a_bakers_words(school: Path, words: BatchWords, flour: str) -> None:
    asked = asked_sheet(school, "open-biscuits", "", words)
    amounts = {line.name: line.amount for line in asked.sheet.components[0].lines}
    assert amounts["plain flour"] == flour
    assert asked.tested.head.batch.is_tested


def test_pieces_of_another_weight_are_asked_for(tmp_path: Path) -> None:
    path = write_school(tmp_path) / "content" / "recipes" / "open-biscuits" / "recipe.yaml"
    path.write_text(path.read_text().replace("makes: 12 squares", "makes: 12 squares of 30 g dough"))
    asked = asked_sheet(tmp_path, "open-biscuits", "", BatchWords(makes="24 squares of 20 g"))
    assert asked.sheet.head.makes == "24\N{NO-BREAK SPACE}squares of 20\N{NO-BREAK SPACE}g dough"
    assert asked.sheet.components[0].lines[2].amount == "240\N{NO-BREAK SPACE}g"


@pytest.mark.parametrize("name", ["open-biscuits", "Open biscuits", "OPEN BISCUITS", "open-biscuits/"])
def test_a_recipe_is_found_by_folder_or_title(school: Path, name: str) -> None:
    assert asked_sheet(school, name, "us-cups", BatchWords()).sheet.head.edition.key == "us-cups"


@pytest.mark.parametrize(
    ("name", "edition", "words", "part"),
    [
        ("opne-biscuits", "", BatchWords(), "did you mean 'open-biscuits'"),
        ("draft", "", BatchWords(), "did you mean 'draft-biscuits'"),
        ("onion soup", "", BatchWords(), "there are coming-biscuits, draft-biscuits"),
        ("open-biscuits", "us-cup", BatchWords(), "did you mean 'us-cups'"),
        ("open-biscuits", "", BatchWords(makes="24", times="2"), "one of --makes"),
        ("open-biscuits", "", BatchWords(makes="24 buns"), "squares"),
        ("open-biscuits", "", BatchWords(tin="20 cm sqare"), "square"),
    ],
)
def test_a_question_gone_wrong_is_told_what_was_meant(
    school: Path, name: str, edition: str, words: BatchWords, part: str
) -> None:
    with pytest.raises(NotAsked) as refused:
        asked_sheet(school, name, edition, words)
    assert part in refused.value.way_out


@pytest.mark.parametrize(
    ("words", "why"),
    [
        (BatchWords(makes="0"), "no amount"),
        (BatchWords(times="5000"), "thousand"),
        (BatchWords(using="3 eggs"), "not in the recipe"),
        (BatchWords(tin="20 cm square"), "no tin"),
    ],
)
def test_a_batch_that_cannot_be_made_says_why(school: Path, words: BatchWords, why: str) -> None:
    with pytest.raises(NotAsked, match=why):
        asked_sheet(school, "open-biscuits", "", words)


def test_only_the_recipes_own_faults_stand_in_the_way(tmp_path: Path) -> None:
    write_school(tmp_path)
    write_recipe(tmp_path, "open-biscuits", step="for 10 g")
    assert asked_sheet(tmp_path, "teaser-biscuits", "", BatchWords())
    with pytest.raises(AtFault) as faulty:
        asked_sheet(tmp_path, "open-biscuits", "", BatchWords())
    assert {fault.code for fault in faulty.value.faults} == {"bare-amount"}
