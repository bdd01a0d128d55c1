"""How a search compares words."""

import pytest

from sitegen.press.search_words import WordRules
from sitegen.source.tables import read_tables

_WORDS = read_tables()[0].finding.words
RULES = WordRules(_WORDS.passed_over, _WORDS.letters, _WORDS.endings)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("Crème brûlée, in a tin", ["creme", "brulee", "tin"]),
        ("Baker’s half-dozen", ["bakers", "half", "dozen"]),
        ("Baker's", ["bakers"]),
        ("Smørrebrød & Weißbrot", ["smorrebrod", "weissbrot"]),
        ("23 cm round", ["23", "cm", "round"]),
        ("½ of it_all", ["½", "all"]),
        ("", []),
    ],
)
def test_words_are_small_plain_and_of_letters_or_figures(text: str, words: list[str]) -> None:
    assert list(RULES.words(text)) == words


@pytest.mark.parametrize(
    ("one", "many"),
    [
        ("egg", "eggs"),
        ("cherry", "cherries"),
        ("brownie", "brownies"),
        ("loaf", "loaves"),
        ("leaf", "leaves"),
        ("clove", "cloves"),
        ("knife", "knives"),
        ("peach", "peaches"),
        ("box", "boxes"),
        ("tomato", "tomatoes"),
        ("chilli", "chillies"),
        ("spice", "spices"),
        ("pie", "pies"),
    ],
)
def test_one_and_many_are_the_same_word(one: str, many: str) -> None:
    assert RULES.stem(one) == RULES.stem(many)


@pytest.mark.parametrize(
    ("one", "other"),
    [("butter", "batter"), ("cream", "creamed"), ("rye", "rice"), ("bun", "bundt"), ("oat", "oath")],
)
def test_other_words_stay_apart(one: str, other: str) -> None:
    assert RULES.stem(one) != RULES.stem(other)


def test_every_name_of_the_larder_is_one_word_with_its_plural() -> None:
    """'leaf' and 'leaves', 'medlar' and 'medlars': as the larder spells them, word for word."""
    names = [(row.key, row.plural) for row in read_tables()[0].larder.ingredients if row.plural]
    assert len(names) > 20
    stems = [[[RULES.stem(word) for word in RULES.words(text)] for text in pair] for pair in names]
    apart = [pair for pair, (one, many) in zip(names, stems, strict=True) if one != many]
    assert apart == []


def test_the_shortest_form_stands_for_all() -> None:
    assert RULES.one_of_each({"cherries", "cherry", "eggs"}) == {
        RULES.stem("cherry"): "cherry",
        RULES.stem("egg"): "eggs",
    }
