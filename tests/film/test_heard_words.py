"""What is heard of captions: once, in time, and without what is no word."""

import pytest

from sitegen.film.stems import stem
from sitegen.film.values import Cue
from sitegen.film.words import heard_words, tokens


def texts(*cues: Cue) -> list[str]:
    return [word.text for word in heard_words(cues)]


def test_captions_that_roll_up_are_heard_once() -> None:
    rolling = (
        Cue(0, 4, "now whisk the eggs"),
        Cue(3.9, 8, "now whisk the eggs and the oil until smooth"),
        Cue(8, 8.1, "and the oil until smooth"),
        Cue(8.1, 12, "and the oil until smooth then sift in the flour"),
    )
    assert " ".join(texts(*rolling)) == "now whisk the eggs and the oil until smooth then sift in the flour"


def test_a_word_said_twice_is_heard_twice() -> None:
    said = texts(Cue(0, 2, "stir and stir the"), Cue(2, 4, "the flour in and stir"))
    assert " ".join(said) == "stir and stir the the flour in and stir"


def test_words_share_the_time_of_their_cue_by_their_letters() -> None:
    heard = heard_words([Cue(10, 11, "ab abcdef xy"), Cue(15, 16, "on")])
    assert [round(word.at_s, 2) for word in heard] == [10.0, 10.23, 10.77, 15.0]
    assert [round(word.pause_s, 1) for word in heard] == [0.0, 0.0, 0.0, 4.0]


def test_a_cue_that_stays_long_is_followed_by_silence() -> None:
    heard = heard_words([Cue(0, 30, "whisk the eggs"), Cue(30, 32, "now the flour")])
    assert heard[2].at_s < 3
    assert heard[3].pause_s > 20


def test_noises_and_marks_are_no_words_and_a_full_stop_ends_a_sentence() -> None:
    heard = heard_words([Cue(0, 5, "[mixer running] Whisk um it. £4, 1,500 g; 22–24 min")])
    assert [word.text for word in heard] == ["whisk", "it", "4", "1500", "g", "22", "-", "24", "min"]
    assert [word.text for word in heard if word.ends] == ["it"]


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("Crème brûlée", ["creme", "brulee"]),
        ("1/2 tsp", ["1/2", "tsp"]),
        ("1½ tsp", ["1", "½", "tsp"]),
        ("180°C", ["180", "°", "c"]),
        ("self-raising", ["self", "raising"]),
        ("don’t", ["don't"]),
    ],
)
def test_words_are_cut_alike_everywhere(text: str, words: list[str]) -> None:
    assert list(tokens(text)) == words


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("whisked", "whisk"),
        ("baking", "bake"),
        ("cherries", "cherry"),
        ("cookies", "cookie"),
        ("leaves", "leaf"),
        ("stirring", "stir"),
        ("peaches", "peach"),
        ("grated", "grate"),
    ],
)
def test_forms_of_a_word_meet(one: str, other: str) -> None:
    assert stem(one) == stem(other)


@pytest.mark.parametrize(("one", "other"), [("icing", "ice"), ("butter", "batter"), ("rice", "rise")])
def test_other_words_do_not(one: str, other: str) -> None:
    assert stem(one) != stem(other)
