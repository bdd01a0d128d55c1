"""The lists of batches, tins and editions: each changes one thing and keeps the others."""

from dataclasses import replace

import pytest

from sitegen.press.choices import Choice, Choices, choices_of
from sitegen.sheet.values import BatchLabel, IngredientSide, View
from tests.press.sample_parts import BRITISH, US_CUPS
from tests.press.sample_sheets import HEAD, INGREDIENT_SIDE

EDITIONS = (BRITISH, US_CUPS)
TESTED = BatchLabel("8-slices", "8 slices", is_tested=True, tin="two 20 cm round tins")
DOUBLE = BatchLabel("16-slices", "16 slices", is_tested=False)
SMALLER = BatchLabel("2x18cm-round", "for two 18 cm round tins", is_tested=False, tin="two 18 cm round tins")


def rows(*batches: BatchLabel) -> tuple[tuple[IngredientSide, ...], ...]:
    """A page for each batch in each edition."""
    return tuple(
        tuple(
            replace(INGREDIENT_SIDE, head=replace(HEAD, batch=batch, edition=edition)) for edition in EDITIONS
        )
        for batch in batches
    )


def path(view: View) -> str:
    return f"{view.head.edition.key}-{view.head.batch.key}.html"


def offered(batch: BatchLabel, column: int, *batches: BatchLabel) -> Choices:
    """What the page of one of the batches, in the edition of that column, offers."""
    pages = rows(*batches)
    return choices_of(pages, pages[batches.index(batch)][column], path)


def told(choices: tuple[Choice, ...]) -> list[tuple[str, str]]:
    return [(choice.title, choice.path) for choice in choices]


def here(choices: tuple[Choice, ...]) -> list[str]:
    return [choice.title for choice in choices if choice.is_here]


def test_another_batch_keeps_the_edition_and_another_edition_keeps_the_batch() -> None:
    choices = offered(DOUBLE, 1, TESTED, DOUBLE, SMALLER)
    assert told(choices.batches) == [
        ("8 slices", "us-cups-8-slices.html"),
        ("16 slices", "us-cups-16-slices.html"),
    ]
    assert told(choices.editions) == [
        ("British metric", "british-metric-16-slices.html"),
        ("US cups", "us-cups-16-slices.html"),
    ]


def test_tins_stand_in_a_list_of_their_own_that_begins_with_the_tested_tin() -> None:
    choices = offered(SMALLER, 0, TESTED, DOUBLE, SMALLER)
    assert [choice.title for choice in choices.tins] == ["two 20 cm round tins", "two 18 cm round tins"]
    assert [choice.is_tested for choice in choices.tins] == [True, False]
    assert "two 18 cm round tins" not in [choice.title for choice in choices.batches]


@pytest.mark.parametrize(
    ("batch", "of_batches", "of_tins"),
    [
        (TESTED, ["8 slices"], ["two 20 cm round tins"]),
        (DOUBLE, ["16 slices"], []),
        (SMALLER, [], ["two 18 cm round tins"]),
    ],
)
def test_the_page_s_own_place_is_marked_in_the_list_that_tells_its_batch(
    batch: BatchLabel, of_batches: list[str], of_tins: list[str]
) -> None:
    choices = offered(batch, 0, TESTED, DOUBLE, SMALLER)
    assert here(choices.batches) == of_batches
    assert here(choices.tins) == of_tins
    assert here(choices.editions) == ["British metric"]


def test_a_list_of_one_is_no_choice() -> None:
    choices = offered(TESTED, 0, TESTED, SMALLER)
    assert choices.batches == ()
    assert len(choices.tins) == 2
    alone = rows(TESTED)[0][:1]
    assert choices_of((alone,), alone[0], path).editions == ()


def test_a_recipe_without_a_tin_of_its_own_names_its_batch_beside_other_tins() -> None:
    loose = replace(TESTED, tin="")
    assert told(offered(loose, 0, loose, SMALLER).tins)[0] == ("8 slices", "british-metric-8-slices.html")


def test_what_is_chosen_is_told_in_words_and_the_tested_page_in_the_same_edition() -> None:
    choices = offered(SMALLER, 1, TESTED, SMALLER)
    assert choices.chosen == "for two 18 cm round tins, US cups"
    assert choices.tested == "us-cups-8-slices.html"
