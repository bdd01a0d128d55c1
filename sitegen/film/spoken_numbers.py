"""Numbers as they are spoken, words and figures mixed: single ones, and ranges of two.

number = [between] value [to value] | value value        (a range; 'ten twelve minutes')

`spoken_values.py` has the grammar of a value, `whole_numbers.py` that of a whole.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.film.number_words import UNITS
from sitegen.film.spoken_values import value_at
from sitegen.film.whole_numbers import Value, word_at

RANGE_WORDS = frozenset({"to", "-", "or", "till", "until", "and"})
MOST_UNJOINED = 70
"""Two numbers in a row are a range up to here: 'twenty two twenty four minutes'."""


@dataclass(frozen=True)
class SpokenNumber:
    """A number or range, exact, and the words that it takes: [begin, end).

    is_part: spoken as a part of one ('half', 'two thirds'), so that it may be a share.
    whole: where a part goes over it ('two and a half'), the number without it.
    """

    low: Fraction
    high: Fraction
    begin: int
    end: int
    is_part: bool = False
    whole: "SpokenNumber | None" = None


def spoken_numbers(words: Sequence[str]) -> tuple[SpokenNumber, ...]:
    """All numbers in a row of words, from left to right, none within another.

    words: in small letters, as `words.tokens` cuts them.
    """
    found = []
    index = 0
    while index < len(words):
        number = number_at(words, index)
        if number is None:
            index += 1
        else:
            found.append(number)
            index = number.end
    return tuple(found)


def number_at(words: Sequence[str], begin: int) -> SpokenNumber | None:
    """The longest number or range that begins there; None for none."""
    if word_at(words, begin) == "between":
        return _between(words, begin)
    first = value_at(words, begin)
    if first is None:
        return None
    second = None if _is_counted(words, begin, first) else _second(words, first)
    if second is None:
        whole = (
            SpokenNumber(first.whole.value, first.whole.value, begin, first.whole.end)
            if first.whole
            else None
        )
        return SpokenNumber(first.value, first.value, begin, first.end, first.is_part, whole)
    return SpokenNumber(first.value, second.value, begin, second.end, first.is_part and second.is_part)


def _is_counted(words: Sequence[str], begin: int, first: Value) -> bool:
    """'one two three seconds': whoever counts aloud names no range."""
    return UNITS.get(word_at(words, begin - 1)) == first.value - 1 and first.value > 1


def _between(words: Sequence[str], begin: int) -> SpokenNumber | None:
    """'between twenty two and twenty four'."""
    first = value_at(words, begin + 1, ends_at_and=True)
    if first is None or word_at(words, first.end) != "and":
        return None
    second = value_at(words, first.end + 1)
    if second is None or second.value <= first.value:
        return None
    return SpokenNumber(first.value, second.value, begin, second.end)


def _second(words: Sequence[str], first: Value) -> Value | None:
    """The upper end of a range whose lower one was read; None where there is none."""
    joint = word_at(words, first.end)
    if joint in RANGE_WORDS - {"and"}:
        second = value_at(words, first.end + 1)
        if second is not None and first.value < second.value <= 10 * first.value:
            return second
        return None
    second = value_at(words, first.end)
    is_near = second is not None and first.value < second.value <= first.value * 3 / 2
    return second if is_near and not first.is_part and 2 <= first.value < MOST_UNJOINED else None
