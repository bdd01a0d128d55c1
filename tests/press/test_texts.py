"""Plain texts to paste: the post, and the notice of a change."""

from dataclasses import replace

from sitegen.press.choices import CardFile
from sitegen.press.texts import RevisedNote, change_notice, subscriber_post
from sitegen.sheet.values import RevisedLine, Sheet, SheetLine
from tests.press.sample_sheets import SHEET

PAGE = "https://tansyrow.example/recipes/bay.html"
CARD = CardFile("A4", "https://tansyrow.example/a4.pdf")
NOTE = "Oil corrected from 150 g to 100 g."
OILS = (
    RevisedLine("British metric", "Bay sponge", SheetLine("100 g", "sunflower oil"), (1, 4)),
    RevisedLine("US cups", "Bay sponge", SheetLine("½ cup", "sunflower oil", beside="100 g")),
)


def test_no_text_holds_an_angle_bracket_or_a_space_that_cannot_be_seen() -> None:
    odd: Sheet = replace(SHEET, head=replace(SHEET.head, summary="a <b>\N{NO-BREAK SPACE}c"))
    assert not set("<>\N{NO-BREAK SPACE}") & set(subscriber_post([odd], PAGE, []))


def test_the_post_names_the_files_the_times_and_the_allergens() -> None:
    card = CardFile("British metric, A4", "https://tansyrow.example/table/cards/bay.pdf")
    text = subscriber_post([SHEET], PAGE, [card])
    assert text.startswith(f"New: {SHEET.head.title}\n")
    assert f"Card, British metric, A4: {card.path}" in text
    assert SHEET.head.times.hands_on.replace("\N{NO-BREAK SPACE}", " ") in text
    assert SHEET.allergens[0] in text


def test_what_is_not_known_is_told_with_the_allergens() -> None:
    text = subscriber_post([SHEET], PAGE, [])
    assert text.index(SHEET.allergens[0]) < text.index(SHEET.unknowns[0])


def test_the_post_names_what_can_be_replaced_once_for_all_editions() -> None:
    text = subscriber_post([SHEET, SHEET], PAGE, [])
    assert text.count("in place of: self-raising flour; golden syrup") == 1
    assert "baking powder" not in text
    assert "in place of" not in subscriber_post([replace(SHEET, swaps=())], PAGE, [])


def notice(*notes: RevisedNote) -> str:
    return change_notice("Bay cupcakes", "20 July 2026", notes, PAGE, [CARD])


def test_a_notice_tells_what_changed_and_where_the_new_card_is() -> None:
    text = notice(RevisedNote(NOTE))
    assert text.startswith("A change to Bay cupcakes, 20 July 2026\n\nWhat changed:\n- Oil corrected")
    assert CARD.path in text
    assert PAGE in text


def test_a_notice_tells_how_to_mend_a_card_by_hand_in_each_measure() -> None:
    text = notice(RevisedNote(NOTE, OILS))
    by_hand, again = text.index("strike out the old figure"), text.index("Or print the card again")
    metric = text.index("British metric\n- Bay sponge: 100 g sunflower oil (also beside step 1, 4)\n")
    cups = text.index("US cups\n- Bay sponge: ½ cup (100 g) sunflower oil\n")
    assert by_hand < metric < cups < again


def test_a_change_of_no_single_line_is_to_be_written_in() -> None:
    text = notice(RevisedNote("Bake for 30 minutes, not 20."))
    assert "before 20 July 2026, write it in by hand." in text
    assert "strike out" not in text


def test_lines_of_several_notes_of_a_day_stand_together_by_measure() -> None:
    text = notice(RevisedNote(NOTE, OILS), RevisedNote("Salt too.", (replace(OILS[0], component="Icing"),)))
    assert text.count("British metric\n") == 1
    assert text.index("- Icing:") < text.index("US cups\n")
