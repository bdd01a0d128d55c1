"""Single numbers as they are spoken, with the parts that go over a whole: '2 and a quarter', 'point five'.

value    = whole ["and"] fraction | whole "point" digits | whole "dozen" | whole | fraction
         | "a couple" | "point" digits
fraction = count part | "half" | part "of" | sign                  ('two thirds', '1/2')
"""

from collections.abc import Sequence
from fractions import Fraction

from sitegen.film.number_words import ARTICLES, PARTS, SIGNS, UNITS
from sitegen.film.whole_numbers import LONGEST_FIGURE, Value, small_figure, whole_at, word_at


def value_at(words: Sequence[str], begin: int, ends_at_and: bool = False) -> Value | None:
    """A single number. ends_at_and: 'twenty and thirty' are two."""
    first = word_at(words, begin)
    if first == "point":
        return _decimals(words, begin, Fraction(0))
    if first in ARTICLES and word_at(words, begin + 1) == "couple":
        end = begin + 2
        return Value(Fraction(2), end + (word_at(words, end) == "of"))
    part = _part_at(words, begin)
    if part is not None:
        return _dozens(words, part)
    whole = whole_at(words, begin, ends_at_and)
    if whole is None:
        return None
    if word_at(words, whole.end) == "point":
        return _decimals(words, whole.end, whole.value) or whole
    return _dozens(words, _with_part(words, whole))


def _decimals(words: Sequence[str], point: int, whole: Fraction) -> Value | None:
    """'point two five', 'point 25': the digits behind the word at `point`."""
    digits, end = "", point + 1
    while (digit := _digits_of(word_at(words, end))) and len(digits) < LONGEST_FIGURE:
        digits, end = digits + digit, end + 1
        if len(digit) > 1:
            break
    if not digits:
        return None
    return Value(whole + Fraction(int(digits), 10 ** len(digits)), end)


def _digits_of(word: str) -> str:
    if word.isascii() and word.isdigit():
        return word
    if word == "oh":
        return "0"
    value = UNITS.get(word, 10)
    return str(value) if value < 10 else ""


def _part_at(words: Sequence[str], begin: int) -> Value | None:
    """'half', 'a third', 'two thirds', 'three quarters', 'quarter of', '1/2', '½'; None for anything else."""
    word = word_at(words, begin)
    if word in SIGNS:
        return Value(SIGNS[word], begin + 1, is_part=True)
    if "/" in word:
        return _slashed(word, begin + 1)
    if word == "half":
        return Value(Fraction(1, 2), begin + 1, is_part=True)
    if word in PARTS and word_at(words, begin + 1) in ("of", "teaspoon", "tablespoon", "cup"):
        return Value(Fraction(1, PARTS[word]), begin + 1, is_part=True)
    count = 1 if word in ARTICLES else small_figure(word)
    under = PARTS.get(word_at(words, begin + 1), 0)
    if not under or not 0 < count < max(under, 2):
        return None
    return Value(Fraction(count, under), begin + 2, is_part=True)


def _slashed(word: str, end: int) -> Value | None:
    """'1/2'."""
    over, under = word.split("/")
    if not int(under) or max(len(over), len(under)) > LONGEST_FIGURE:
        return None
    return Value(Fraction(int(over), int(under)), end, is_part=int(over) < int(under))


def _with_part(words: Sequence[str], whole: Value) -> Value:
    """A whole number with what goes over it: '1 and a half', 'two and a quarter', '1 1/2', '1½'.

    'Two hundred and half a spoon' are two.
    """
    joined = word_at(words, whole.end) == "and"
    begin = whole.end + joined
    word = word_at(words, begin)
    is_sign = word in SIGNS or "/" in word
    if not joined and not is_sign:
        return whole
    part = _part_at(words, begin)
    if part is None or part.value >= 1 or (word == "half" and word_at(words, part.end) in ARTICLES):
        return whole
    return Value(whole.value + part.value, part.end, whole=whole)


def _dozens(words: Sequence[str], value: Value) -> Value:
    """'two dozen', 'half a dozen'."""
    end = value.end + (value.is_part and word_at(words, value.end) in ARTICLES)
    if word_at(words, end) in ("dozen", "dozens"):
        return Value(value.value * 12, end + 1)
    return value
