"""Numbers as they are spoken, words and figures mixed: 'a hundred and five', '2 and a quarter', 'one fifty'.

number   = [between] value [to value] | value value        (a range; 'ten twelve minutes')
value    = whole ["and"] fraction | whole "point" digits | whole "dozen" | whole | fraction
         | "a couple" | "point" digits
whole    = [thousands] [hundreds] ["and"] small | unit small       ('one fifty' is 150, 'one oh five' 105)
fraction = count part | "half" | part "of" | sign                  ('two thirds', '1/2')

An article counts as one where a hundred, a dozen or a part of a whole follows.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.film.number_words import PARTS, SIGNS, TENS, UNITS

ARTICLES = frozenset({"a", "an"})
RANGE_WORDS = frozenset({"to", "-", "or", "till", "until", "and"})
MOST_UNJOINED = 70
"""Two numbers in a row are a range up to here: 'twenty two twenty four minutes'."""
LONGEST_FIGURE = 9
"""Digits of a number that is read; more is no amount of anything."""


@dataclass(frozen=True)
class SpokenNumber:
    """A number or range, exact, and the words that it takes: [begin, end).

    is_part: spoken as a part of one ('half', 'two thirds'), so that it may be a share.
    """

    low: Fraction
    high: Fraction
    begin: int
    end: int
    is_part: bool = False


@dataclass(frozen=True)
class _Value:
    """A single number that ends before the word `end`.

    scale: 100 or 1000 where that was said last; 0 for figures of more than one digit.
    """

    value: Fraction
    end: int
    is_part: bool = False
    scale: int = 1


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
    if _word(words, begin) == "between":
        return _between(words, begin)
    first = _value_at(words, begin)
    if first is None:
        return None
    second = _second(words, first)
    if second is None:
        return SpokenNumber(first.value, first.value, begin, first.end, first.is_part)
    return SpokenNumber(first.value, second.value, begin, second.end, first.is_part and second.is_part)


def _between(words: Sequence[str], begin: int) -> SpokenNumber | None:
    """'between twenty two and twenty four'."""
    first = _value_at(words, begin + 1, ends_at_and=True)
    if first is None or _word(words, first.end) != "and":
        return None
    second = _value_at(words, first.end + 1)
    if second is None or second.value <= first.value:
        return None
    return SpokenNumber(first.value, second.value, begin, second.end)


def _second(words: Sequence[str], first: _Value) -> _Value | None:
    """The upper end of a range whose lower one was read; None where there is none."""
    joint = _word(words, first.end)
    if joint in RANGE_WORDS - {"and"}:
        second = _value_at(words, first.end + 1)
        if second is not None and first.value < second.value <= 10 * first.value:
            return second
        return None
    second = _value_at(words, first.end)
    is_near = second is not None and first.value < second.value <= first.value * 3 / 2
    return second if is_near and not first.is_part and 2 <= first.value < MOST_UNJOINED else None


def _value_at(words: Sequence[str], begin: int, ends_at_and: bool = False) -> _Value | None:
    """A single number. ends_at_and: 'twenty and thirty' are two."""
    first = _word(words, begin)
    if first == "point":
        return _decimals(words, begin, Fraction(0))
    if first in ARTICLES and _word(words, begin + 1) == "couple":
        end = begin + 2
        return _Value(Fraction(2), end + (_word(words, end) == "of"))
    part = _part_at(words, begin)
    if part is not None:
        return _dozens(words, part)
    whole = _whole_at(words, begin, ends_at_and)
    if whole is None:
        return None
    if _word(words, whole.end) == "point":
        return _decimals(words, whole.end, whole.value) or whole
    return _dozens(words, _with_part(words, whole))


def _decimals(words: Sequence[str], point: int, whole: Fraction) -> _Value | None:
    """'point two five', 'point 25': the digits behind the word at `point`."""
    digits, end = "", point + 1
    while (digit := _digits_of(_word(words, end))) and len(digits) < LONGEST_FIGURE:
        digits, end = digits + digit, end + 1
        if len(digit) > 1:
            break
    if not digits:
        return None
    return _Value(whole + Fraction(int(digits), 10 ** len(digits)), end)


def _digits_of(word: str) -> str:
    if word.isascii() and word.isdigit():
        return word
    if word == "oh":
        return "0"
    value = UNITS.get(word, 10)
    return str(value) if value < 10 else ""


def _part_at(words: Sequence[str], begin: int) -> _Value | None:
    """'half', 'a third', 'two thirds', 'three quarters', 'quarter of', '1/2', '½'; None for anything else."""
    word = _word(words, begin)
    if word in SIGNS:
        return _Value(SIGNS[word], begin + 1, is_part=True)
    if "/" in word:
        return _slashed(word, begin + 1)
    if word == "half":
        return _Value(Fraction(1, 2), begin + 1, is_part=True)
    if word in PARTS and _word(words, begin + 1) in ("of", "teaspoon", "tablespoon", "cup"):
        return _Value(Fraction(1, PARTS[word]), begin + 1, is_part=True)
    count = 1 if word in ARTICLES else _small_figure(word)
    under = PARTS.get(_word(words, begin + 1), 0)
    if not under or not 0 < count < max(under, 2):
        return None
    return _Value(Fraction(count, under), begin + 2, is_part=True)


def _slashed(word: str, end: int) -> _Value | None:
    """'1/2'."""
    over, under = word.split("/")
    if not int(under) or max(len(over), len(under)) > LONGEST_FIGURE:
        return None
    return _Value(Fraction(int(over), int(under)), end, is_part=int(over) < int(under))


def _small_figure(word: str) -> int:
    """1 to 9, spelled or in figures; 0 for anything else."""
    value = UNITS.get(word, 0)
    if not value and len(word) == 1 and word.isascii() and word.isdigit():
        value = int(word)
    return value if value < 10 else 0


def _with_part(words: Sequence[str], whole: _Value) -> _Value:
    """A whole number with what goes over it: '1 and a half', 'two and a quarter', '1 1/2', '1½'."""
    joined = _word(words, whole.end) == "and"
    begin = whole.end + joined
    word = _word(words, begin)
    is_sign = word in SIGNS or "/" in word
    if not joined and not is_sign:
        return whole
    part = _part_at(words, begin)
    if part is None or part.value >= 1:
        return whole
    return _Value(whole.value + part.value, part.end)


def _dozens(words: Sequence[str], value: _Value) -> _Value:
    """'two dozen', 'half a dozen'."""
    end = value.end + (value.is_part and _word(words, value.end) in ARTICLES)
    if _word(words, end) in ("dozen", "dozens"):
        return _Value(value.value * 12, end + 1)
    return value


def _whole_at(words: Sequence[str], begin: int, ends_at_and: bool) -> _Value | None:
    word = _word(words, begin)
    if word in ARTICLES:
        scale = {"hundred": 100, "thousand": 1000, "dozen": 1}.get(_word(words, begin + 1), 0)
        if not scale:
            return None
        first = _Value(Fraction(scale), begin + 2, scale=scale)
        if scale == 1:
            return _Value(Fraction(12), begin + 2)
    else:
        small = _small_at(words, begin)
        if small is None:
            return None
        first = _scaled(words, small)
    return first if ends_at_and else _added(words, first)


def _scaled(words: Sequence[str], small: _Value) -> _Value:
    """'two hundred', '2 thousand', 'one fifty', 'one oh five'; the number itself without."""
    word = _word(words, small.end)
    scale = {"hundred": 100, "thousand": 1000}.get(word, 0)
    if scale:
        return _Value(small.value * scale, small.end + 1, scale=scale)
    if not 1 <= small.value <= 9 or small.scale == 0:
        return small
    if word == "oh" and (unit := _small_figure(_word(words, small.end + 1))):
        return _Value(small.value * 100 + unit, small.end + 2, scale=1)
    if word in TENS or 10 <= UNITS.get(word, 0) <= 19:
        rest = _small_at(words, small.end)
        if rest is not None:
            return _Value(small.value * 100 + rest.value, rest.end)
    return small


def _added(words: Sequence[str], first: _Value) -> _Value:
    """What is counted beside hundreds and thousands: 'a hundred and five', '1 thousand two hundred'."""
    scale = first.scale or _round_scale(first.value)
    if scale < 100:
        return first
    joined = _word(words, first.end) == "and"
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
    return _Value(first.value + rest.value, rest.end)


def _is_measure_of_its_own(words: Sequence[str], rest: _Value) -> bool:
    """'100 and 2 eggs' are two numbers where a part follows the second: '100 and 1 and a half'."""
    return _word(words, rest.end) == "and" and _word(words, rest.end + 1) in ARTICLES


def _round_scale(value: Fraction) -> int:
    """100 or 1000 where figures end in as many noughts and 'and five' may follow: '100 and 5'."""
    if value >= 1000 and value % 1000 == 0:
        return 1000
    return 100 if value >= 100 and value % 100 == 0 else 1


def _small_at(words: Sequence[str], begin: int) -> _Value | None:
    """0 to 99 as words, or any figure. scale 0: written in figures of more than one digit."""
    word = _word(words, begin)
    if word[:1].isdigit() and "/" not in word:
        if len(word) > LONGEST_FIGURE or not word.isascii():
            return None
        value = Fraction(word)
        tens = value in (20, 30, 40, 50, 60, 70, 80, 90)
        unit = UNITS.get(_word(words, begin + 1), 0) if tens else 0
        return _Value(value + unit, begin + 2) if 0 < unit < 10 else _Value(value, begin + 1, scale=0)
    if word in TENS:
        unit = _small_figure(_word(words, begin + 1))
        return _Value(Fraction(TENS[word] + unit), begin + 1 + bool(unit))
    if word in UNITS:
        return _Value(Fraction(UNITS[word]), begin + 1)
    return None


def _word(words: Sequence[str], index: int) -> str:
    return words[index] if 0 <= index < len(words) else ""
