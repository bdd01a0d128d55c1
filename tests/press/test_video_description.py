"""What stands below a video, and what goes from it where it grows too long."""

from dataclasses import replace

import pytest

from sitegen.press.video_description import DESCRIPTION_LIMIT, video_description
from sitegen.sheet.values import IngredientSide, SheetChapter, SheetRevision, SheetVideo, View
from tests.press.sample_sheets import CHAPTERS, INGREDIENT_SIDE, SHEET, TEASER

PAGE = "https://tansyrow.example/recipes/quince.html"
US_PAGE = "https://tansyrow.example/recipes/quince/us-cups-16-slices.html"
FULL = "https://tansyrow.example/table/recipes/quince.html"
REVISION = SheetRevision("2026-07-20", "20 July 2026", "Oil corrected from 150 g to 100 g.")
FILMED = replace(INGREDIENT_SIDE, video=SHEET.video)
LAST_LINE = "The rest of the list is on the page above."


def in_cups(view: IngredientSide) -> IngredientSide:
    head = replace(view.head, edition=replace(view.head.edition, key="us-cups", title="US cups"))
    return replace(view, head=head)


def described(*views: View, corrections: tuple[SheetRevision, ...] = ()) -> str:
    return video_description(views, corrections, [PAGE, US_PAGE][: len(views)], FULL)


def lengthened(times: int) -> IngredientSide:
    part = FILMED.components[0]
    return replace(FILMED, components=(replace(part, lines=part.lines * times),))


def test_the_first_two_lines_make_sense_alone() -> None:
    title, link = described(FILMED).split("\n")[:2]
    assert SHEET.head.title in title
    assert SHEET.head.summary in title
    assert PAGE in link


def test_chapters_stand_a_line_each_with_their_moment_first() -> None:
    lines = described(FILMED).split("\n")
    begin = lines.index("0:00 What we make")
    assert lines[begin : begin + 3] == ["0:00 What we make", "1:25 The crumb", "1:02:30 To finish"]
    assert "CHAPTERS" not in described(INGREDIENT_SIDE)


def test_ingredients_come_by_part_in_each_edition() -> None:
    text = described(FILMED, in_cups(FILMED))
    assert "INGREDIENTS (US cups)" in text
    first = INGREDIENT_SIDE.components[0]
    assert text.count(f"{first.title}:") == 2
    assert text.count(first.lines[0].name) >= 2


def test_a_teaser_tells_no_amount_and_its_chapters() -> None:
    text = described(replace(TEASER, video=SHEET.video), corrections=(REVISION,))
    assert "INGREDIENTS" not in text
    assert "1:25 The crumb" in text
    assert not [line for line in SHEET.components[0].lines if line.amount and line.amount in text]


def test_facts_and_corrections_are_told() -> None:
    text = described(FILMED, corrections=(REVISION,))
    plain = text.replace(" ", "")
    for fact in (SHEET.tin, SHEET.oven, SHEET.egg_note, *SHEET.allergens):
        assert fact.replace("\N{NO-BREAK SPACE}", "").replace(" ", "") in plain
    assert "Corrected on 20 July 2026: Oil corrected from 150 g to 100 g." in text
    assert text.index(SHEET.allergens[0]) < text.index(SHEET.unknowns[0])


def test_where_the_rest_is_stands_below_all_that_is_not_the_whole() -> None:
    assert FULL in described(FILMED)
    assert FULL in described(TEASER)
    assert FULL not in described(SHEET)


@pytest.mark.parametrize("times", [1, 20, 60, 400])
def test_a_description_stays_within_its_limit_and_keeps_what_matters(times: int) -> None:
    text = described(lengthened(times), in_cups(lengthened(times)), corrections=(REVISION,))
    assert len(text.encode()) <= DESCRIPTION_LIMIT
    for kept in ("Corrected on", PAGE, "1:02:30 To finish", *SHEET.allergens, "INGREDIENTS (British metric)"):
        assert kept in text


def test_lists_go_last_first_and_say_where_they_are() -> None:
    both = described(lengthened(8), in_cups(lengthened(8)))
    one = described(lengthened(15), in_cups(lengthened(15)))
    part = described(lengthened(40), in_cups(lengthened(40)))
    assert f"INGREDIENTS (US cups): {US_PAGE}" not in both
    for text in (one, part):
        assert f"INGREDIENTS (US cups): {US_PAGE}\n" in text
    assert LAST_LINE not in one
    assert LAST_LINE in part


def test_notes_and_stand_ins_go_before_any_list() -> None:
    wordy = replace(FILMED, measure_note="Level it. " * 400, swaps=FILMED.swaps)
    text = described(wordy, in_cups(FILMED))
    assert "Level it" not in text
    assert text.count("180 g plain flour") == 2


def test_chapters_and_allergens_stay_whatever_else_is_too_long() -> None:
    endless = tuple(replace(REVISION, note="corrected " * 80) for _ in range(20))
    chapters = tuple(SheetChapter(f"{minute}:00", "The crumb " * 7, minute * 60) for minute in range(30))
    film = SheetVideo("https://video.example/quince", chapters=chapters)
    long = replace(lengthened(400), video=film, unknowns=("Nothing is known of it. " * 40,) * 20)
    text = described(long, in_cups(long), corrections=endless)
    assert len(text.encode()) <= DESCRIPTION_LIMIT
    for kept in (PAGE, *SHEET.allergens, SHEET.estimates_note):
        assert kept in text
    assert text.count(":00 The crumb") == 30


def test_what_stands_in_is_told_with_its_amounts_below_its_list() -> None:
    swap = SHEET.swaps[0]
    told = f"No {swap.instead_of}? {swap.use}".replace("\N{NO-BREAK SPACE}", " ")
    text = described(FILMED)
    assert text.index("INGREDIENTS") < text.index(told) < text.index("Makes:")
    assert swap.instead_of not in described(TEASER)


def test_no_description_holds_an_angle_bracket_or_a_space_that_cannot_be_seen() -> None:
    odd = replace(FILMED, head=replace(FILMED.head, summary="a <b>\N{NO-BREAK SPACE}c"))
    assert not set("<>\N{NO-BREAK SPACE}") & set(described(odd))
    assert CHAPTERS[0].title in described(odd)
