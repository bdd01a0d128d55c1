"""A region's words for British ones."""

import pytest

from sitegen.sheet.respelling import Respelling, respelling_by

WORDS = (("colour", "color"), ("baking parchment", "parchment paper"), ("baking", "baking"), ("tin", "pan"))


@pytest.mark.parametrize(
    ("text", "respelled"),
    [
        ("Line the tin.", "Line the pan."),
        ("Tin by tin", "Pan by pan"),
        ("a tinted icing", "a tinted icing"),
        ("Baking parchment, a deep colour", "Parchment paper, a deep color"),
        ("", ""),
    ],
)
def test_whole_words_change_the_longest_phrase_first_and_keep_their_capital(
    text: str, respelled: str
) -> None:
    assert Respelling(WORDS).of(text) == respelled


def test_a_region_without_words_of_its_own_leaves_a_text_alone() -> None:
    assert Respelling(()).of("Line the tin.") == "Line the tin."


def test_the_same_words_share_what_was_respelled() -> None:
    assert respelling_by(WORDS) is respelling_by(tuple(WORDS))
    assert respelling_by(WORDS) is not respelling_by(WORDS[:1])
