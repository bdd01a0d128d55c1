"""Spoken numbers, against a speller of numbers that knows nothing of the grammar."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.film.spoken_numbers import spoken_numbers
from sitegen.film.words import tokens

BELOW_TWENTY = (
    "nought one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen "
    "seventeen eighteen nineteen"
)
TENS = "twenty thirty forty fifty sixty seventy eighty ninety"
SMALL, ROUND = BELOW_TWENTY.split(), TENS.split()
NAMED = {2: "half", 3: "third", 4: "quarter", 5: "fifth", 6: "sixth", 8: "eighth", 10: "tenth"}


def spelled(number: int, *, with_and: bool = True, article: bool = False) -> str:
    """A whole number below a hundred thousand in English words."""
    if number < 20:
        return SMALL[number]
    if number < 100:
        tens, units = divmod(number, 10)
        return f"{ROUND[tens - 2]} {SMALL[units]}" if units else ROUND[tens - 2]
    scale, name = (1000, "thousand") if number >= 1000 else (100, "hundred")
    many, rest = divmod(number, scale)
    head = f"a {name}" if many == 1 and article else f"{spelled(many, with_and=with_and)} {name}"
    if not rest:
        return head
    link = " and " if with_and and rest < 100 else " "
    return f"{head}{link}{spelled(rest, with_and=with_and)}"


def part_spelled(over: int, under: int, article: str) -> str:
    if under == 2:
        return "a half" if article == "a" else "half"
    if over == 1:
        return f"{article} {NAMED[under]}"
    return f"{SMALL[over]} {NAMED[under]}s"


PARTS = [(1, 2), *((over, under) for under in (3, 4, 5, 8) for over in range(1, under))]


def heard(text: str) -> list[tuple[Fraction, Fraction]]:
    return [(each.low, each.high) for each in spoken_numbers(tokens(text))]


def one(value: Fraction | int) -> list[tuple[Fraction, Fraction]]:
    return [(Fraction(value), Fraction(value))]


@given(st.integers(0, 99_999), st.booleans(), st.booleans())
def test_a_whole_number_is_heard_as_it_is_spelled(number: int, with_and: bool, article: bool) -> None:
    assert heard(f"take {spelled(number, with_and=with_and, article=article)} grams") == one(number)


@given(st.integers(1, 9), st.integers(0, 99))
def test_hundreds_in_figures_go_on_in_words(hundreds: int, rest: int) -> None:
    text = f"{hundreds * 100} and {spelled(rest)}" if rest else f"{hundreds} hundred"
    assert heard(text) == one(hundreds * 100 + rest)


@given(st.integers(1, 9), st.integers(10, 99))
def test_one_fifty_is_a_hundred_and_fifty(hundreds: int, rest: int) -> None:
    assert heard(f"{SMALL[hundreds]} {spelled(rest)}") == one(hundreds * 100 + rest)


@given(st.integers(0, 40), st.sampled_from(PARTS), st.sampled_from(["a", "one"]), st.booleans())
def test_what_goes_over_a_whole_is_heard(
    whole: int, part: tuple[int, int], article: str, figures: bool
) -> None:
    number = whole + Fraction(*part)
    head = f"{whole if figures else spelled(whole)} and " if whole else ""
    assert heard(f"{head}{part_spelled(*part, article)} teaspoons") == one(number)


@given(st.integers(0, 400), st.lists(st.integers(0, 9), min_size=1, max_size=3))
def test_decimals_are_heard_digit_by_digit(whole: int, digits: list[int]) -> None:
    value = whole + Fraction(int("".join(map(str, digits))), 10 ** len(digits))
    assert heard(f"{spelled(whole)} point {' '.join(SMALL[each] for each in digits)}") == one(value)


@given(st.integers(2, 60), st.integers(1, 20), st.sampled_from(["to", "or"]), st.booleans())
def test_a_range_has_both_its_ends(low: int, more: int, link: str, figures: bool) -> None:
    high = low + more
    ends = (str(low), str(high)) if figures else (spelled(low), spelled(high))
    assert heard(f"for {ends[0]} {link} {ends[1]} minutes")[0][0] == low
    assert heard(f"between {ends[0]} and {ends[1]} minutes") == [(Fraction(low), Fraction(high))]


@given(st.text(alphabet="ao nedhurt12/.-½ ", max_size=60))
def test_no_text_is_too_odd_to_read(text: str) -> None:
    for number in spoken_numbers(tokens(text)):
        assert 0 <= number.low <= number.high
        assert number.begin < number.end <= len(tokens(text))


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("a couple of eggs", 2, 2),
        ("a dozen", 12, 12),
        ("half a dozen", 6, 6),
        ("two dozen", 24, 24),
        ("one oh five", 105, 105),
        ("22-24", 22, 24),
        ("twenty two twenty four minutes", 22, 24),
        ("1½", Fraction(3, 2), Fraction(3, 2)),
        ("1 1/2", Fraction(3, 2), Fraction(3, 2)),
        ("quarter of a teaspoon", Fraction(1, 4), Fraction(1, 4)),
        ("1,500 g", 1500, 1500),
        ("point five", Fraction(1, 2), Fraction(1, 2)),
        ("2 hundred and twenty", 220, 220),
    ],
)
def test_what_bakers_say_beside(text: str, low: Fraction, high: Fraction) -> None:
    assert heard(text) == [(low, high)]


@pytest.mark.parametrize("text", ["the third batch", "a kilo", "the second one is mine", "point", "1/0"])
def test_no_number_is_made_up(text: str) -> None:
    assert [each for each in heard(text) if each != (1, 1)] == []


def test_a_part_before_an_article_begins_anew() -> None:
    assert heard("two hundred and half a teaspoon") == [*one(200), *one(Fraction(1, 2))]
