"""Whole numbers as they are spoken: 'a hundred and five', '2 thousand', 'one fifty', 'one oh five'.

whole = [thousands] [hundreds] ["and"] small | unit small       ('one fifty' is 150, 'one oh five' 105)
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.film.number_words import ARTICLES, TENS, UNITS

LONGEST_FIGURE = 9
"""Digits of a number that is read; more is no amount of anything."""


@dataclass(frozen=True)
class Value:
    """A single number that ends before the word `end`.

    scale: 100 or 1000 where that was said last; 0 for figures of more than one digit.
    is_part: spoken as a part of one ('half'). whole: where a part goes over it ('two and a half'), that
    number without it.
    """

    value: Fraction
    end: int
    is_part: bool = False
    scale: int = 1
    whole: "Value | None" = None


def word_at(words: Sequence[str], index: int) -> str:
    """A word; '' before the first and behind the last."""
    return words[index] if 0 <= index < len(words) else ""


def whole_at(words: Sequence[str], begin: int, ends_at_and: bool) -> Value | None:
    """The number that begins there; None for none. ends_at_and: 'twenty and thirty' are two."""
    word = word_at(words, begin)
    if word in ARTICLES:
        scale = {"hundred": 100, "thousand": 1000, "dozen": 1}.get(word_at(words, begin + 1), 0)
        if not scale:
            return None
        first = Value(Fraction(scale), begin + 2, scale=scale)
        if scale == 1:
            return Value(Fraction(12), begin + 2)
    else:
        small = _small_at(words, begin)
        if small is None:
            return None
        first = _scaled(words, small)
    return first if ends_at_and else _added(words, first)


def _scaled(words: Sequence[str], small: Value) -> Value:
    """'two hundred', '2 thousand', 'one fifty', 'one oh five'; the number itself without."""
    word = word_at(words, small.end)
    scale = {"hundred": 100, "thousand": 1000}.get(word, 0)
    if scale:
        return Value(small.value * scale, small.end + 1, scale=scale)
    if not 1 <= small.value <= 9 or small.scale == 0:
        return small
    if word == "oh" and (unit := small_figure(word_at(words, small.end + 1))):
        return Value(small.value * 100 + unit, small.end + 2, scale=1)
    if word in TENS or 10 <= UNITS.get(word, 0) <= 19:
        rest = _small_at(words, small.end)
        if rest is not None:
            return Value(small.value * 100 + rest.value, rest.end)
    return small


def _added(words: Sequence[str], first: Value) -> Value:
    """What is counted beside hundreds and thousands: 'a hundred and five', '1 thousand two hundred'."""
    scale = first.scale or _round_scale(first.value)
    if scale < 100:
        return first
    joined = word_at(words, first.end) == "and"
    small = _small_at(words, first.end + joined)
    if small is None:
        return first
    rest = _scaled(words, small) if scale == 1000 else small
    if rest.scale >= 100:
        rest = _added(words, rest)
    is_spelled = first.scale >= 100
    if not 0 < rest.value < scale or not (joined or is_spelled):
        return first
    if not is_spelled and _is_measure_of_its_own(words, rest):
        return first
    return Value(first.value + rest.value, rest.end)


def _is_measure_of_its_own(words: Sequence[str], rest: Value) -> bool:
    """'100 and 2 eggs' are two numbers where a part follows the second: '100 and 1 and a half'."""
    return word_at(words, rest.end) == "and" and word_at(words, rest.end + 1) in ARTICLES


def _round_scale(value: Fraction) -> int:
    """100 or 1000 where figures end in as many noughts and 'and five' may follow: '100 and 5'."""
    if value >= 1000 and value % 1000 == 0:
        return 1000
    return 100 if value >= 100 and value % 100 == 0 else 1


def _small_at(words: Sequence[str], begin: int) -> Value | None:
    """0 to 99 as words, or any figure. scale 0: written in figures of more than one digit."""
    word = word_at(words, begin)
    if word[:1].isdigit() and "/" not in word:
        if len(word) > LONGEST_FIGURE or not word.isascii():
            return None
        value = Fraction(word)
        tens = value in (20, 30, 40, 50, 60, 70, 80, 90)
        unit = UNITS.get(word_at(words, begin + 1), 0) if tens else 0
        return Value(value + unit, begin + 2) if 0 < unit < 10 else Value(value, begin + 1, scale=0)
    if word in TENS:
        unit = small_figure(word_at(words, begin + 1))
        return Value(Fraction(TENS[word] + unit), begin + 1 + bool(unit))
    if word in UNITS:
        return Value(Fraction(UNITS[word]), begin + 1)
    return None


def small_figure(word: str) -> int:
    """1 to 9, spelled or in figures; 0 for anything else."""
    value = UNITS.get(word, 0)
    if not value and len(word) == 1 and word.isascii() and word.isdigit():
        value = int(word)
    return value if value < 10 else 0
