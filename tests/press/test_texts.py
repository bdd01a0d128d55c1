"""Plain texts to paste."""

from dataclasses import replace

import pytest

from sitegen.press.choices import CardFile
from sitegen.press.texts import DESCRIPTION_LIMIT, change_notice, subscriber_post, video_description
from sitegen.sheet.values import Sheet, SheetRevision
from tests.press.sample_sheets import INGREDIENT_SIDE, SHEET, TEASER

PAGE = "https://tansyrow.example/recipes/bay.html"
REVISION = SheetRevision("2026-07-20", "20 July 2026", "Oil corrected from 150 g to 100 g.")
US = replace(
    INGREDIENT_SIDE,
    head=replace(INGREDIENT_SIDE.head, edition=replace(SHEET.head.edition, key="us-cups", title="US cups")),
)


def test_the_first_two_lines_make_sense_alone() -> None:
    title, link = video_description([INGREDIENT_SIDE], [], PAGE).split("\n")[:2]
    assert SHEET.head.title in title
    assert SHEET.head.summary in title
    assert PAGE in link


def test_ingredients_come_by_part_in_each_edition() -> None:
    text = video_description([INGREDIENT_SIDE, US], [], PAGE)
    assert "INGREDIENTS (US cups)" in text
    first = INGREDIENT_SIDE.components[0]
    assert text.count(f"{first.title}:") == 2
    assert text.count(first.lines[0].name) >= 2


def test_a_teaser_tells_no_amount() -> None:
    text = video_description([TEASER], [REVISION], PAGE)
    assert "INGREDIENTS" not in text
    assert not [line for line in SHEET.components[0].lines if line.amount and line.amount in text]


def test_facts_and_corrections_are_told() -> None:
    text = video_description([INGREDIENT_SIDE], [REVISION], PAGE)
    plain = text.replace(" ", "")
    for fact in (SHEET.tin, SHEET.oven, SHEET.egg_note, *SHEET.allergens):
        assert fact.replace("\N{NO-BREAK SPACE}", "").replace(" ", "") in plain
    assert "Corrected on 20 July 2026: Oil corrected from 150 g to 100 g." in text


@pytest.mark.parametrize("times", [1, 20, 60, 400])
def test_a_description_stays_within_its_limit_and_keeps_the_facts(times: int) -> None:
    part = INGREDIENT_SIDE.components[0]
    long = replace(INGREDIENT_SIDE, components=(replace(part, lines=part.lines * times),))
    text = video_description([long, replace(US, components=long.components)], [REVISION], PAGE)
    assert len(text.encode()) <= DESCRIPTION_LIMIT
    assert "Corrected on" in text
    assert PAGE in text


def test_a_list_that_was_cut_says_so() -> None:
    part = INGREDIENT_SIDE.components[0]
    long = replace(INGREDIENT_SIDE, components=(replace(part, lines=part.lines * 400),))
    assert "The rest of the list is on the page above." in video_description([long], [], PAGE)


def test_facts_too_long_by_themselves_are_cut_as_well() -> None:
    endless = [replace(REVISION, note="corrected " * 80) for _ in range(20)]
    text = video_description([INGREDIENT_SIDE], endless, PAGE)
    assert len(text.encode()) <= DESCRIPTION_LIMIT
    assert PAGE in text


def test_no_text_holds_an_angle_bracket_or_a_space_that_cannot_be_seen() -> None:
    odd: Sheet = replace(SHEET, head=replace(SHEET.head, summary="a <b>\N{NO-BREAK SPACE}c"))
    for text in (video_description([odd], [], PAGE), subscriber_post([odd], PAGE, [])):
        assert not set("<>\N{NO-BREAK SPACE}") & set(text)


def test_the_post_names_the_files_the_times_and_the_allergens() -> None:
    card = CardFile("British metric, A4", "https://tansyrow.example/table/cards/bay.pdf")
    text = subscriber_post([SHEET], PAGE, [card])
    assert text.startswith(f"New: {SHEET.head.title}\n")
    assert f"Card, British metric, A4: {card.path}" in text
    assert SHEET.head.times.hands_on.replace("\N{NO-BREAK SPACE}", " ") in text
    assert SHEET.allergens[0] in text


def test_a_notice_tells_what_changed_and_where_the_new_card_is() -> None:
    text = change_notice(SHEET, [REVISION], PAGE, [CardFile("A4", "https://tansyrow.example/a4.pdf")])
    assert text.startswith(f"A change to {SHEET.head.title}, 20 July 2026\n")
    assert REVISION.note in text
    assert "https://tansyrow.example/a4.pdf" in text


def test_what_stands_in_is_told_with_its_amounts_below_the_list_alone() -> None:
    swap = SHEET.swaps[0]
    told = f"No {swap.instead_of}? {swap.use}".replace("\N{NO-BREAK SPACE}", " ")
    text = video_description([INGREDIENT_SIDE], [], PAGE)
    assert text.index("INGREDIENTS") < text.index(told) < text.index("Makes:")
    assert swap.instead_of not in video_description([TEASER], [], PAGE)


def test_what_is_not_known_is_told_with_the_allergens() -> None:
    for text in (video_description([INGREDIENT_SIDE], [], PAGE), subscriber_post([SHEET], PAGE, [])):
        assert text.index(SHEET.allergens[0]) < text.index(SHEET.unknowns[0])


def test_the_post_names_what_can_be_replaced_once_for_all_editions() -> None:
    text = subscriber_post([SHEET, SHEET], PAGE, [])
    assert text.count("in place of: self-raising flour; golden syrup") == 1
    assert "baking powder" not in text
    assert "in place of" not in subscriber_post([replace(SHEET, swaps=())], PAGE, [])
