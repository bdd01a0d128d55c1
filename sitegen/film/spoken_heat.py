"""Temperatures as they are spoken: degrees, a scale or a kind of oven beside a number; gas marks."""

from collections.abc import Sequence
from dataclasses import dataclass

from sitegen.film.spoken_numbers import SpokenNumber, number_at
from sitegen.film.vocabulary import SpokenWords
from sitegen.film.whole_numbers import word_at

OVEN_FROM, OVEN_TO = 90, 550
"""Degrees on any scale between which a bare figure beside an oven may be its setting."""
LEAST_HEAT = 20
"""No oven of any kind is colder."""
FAR_FAN = 4
"""Words behind a figure in which 'fan' still belongs to it."""
FAR_BEFORE, NEAR_BEFORE = 5, 3
"""Words before a figure in which it is said to be without a fan; and in which 'fan' stands."""
SMALL = frozenset({"in", "on", "a", "an", "the", "if", "your", "my", "with", "for"})
"""What may stand before 'fan': '150 in a fan oven'."""
MARKS = frozenset({"mark", "mart", "marks"})
HIGHEST_MARK = 10


@dataclass(frozen=True)
class SpokenHeat:
    """What makes a number a temperature, and the word before which that ends.

    scale: 'celsius', 'fahrenheit', or '' where none is said. fan: None where neither kind is said.
    """

    scale: str
    fan: bool | None
    end: int


def heat_at(words: Sequence[str], number: SpokenNumber, known: SpokenWords, since: int) -> SpokenHeat | None:
    """What is said of heat behind a number, or 'fan' before it; None for none.

    since: the first word that is of no amount before it.
    """
    heat = _behind(words, number, known) or _before(words, number, known, since)
    is_cold = heat is not None and heat.fan is not None and number.high < LEAST_HEAT
    return None if is_cold else heat


def gas_mark_at(words: Sequence[str], begin: int) -> SpokenNumber | None:
    """The number of 'gas mark four', 'gas 4', 'mark four'; None for anything else."""
    word = word_at(words, begin)
    if word != "gas" and (word != "mark" or word_at(words, begin - 1) == "gas" or not begin):
        return None
    number = number_at(words, begin + 1 + (word == "gas" and word_at(words, begin + 1) in MARKS))
    return number if number is not None and number.high <= HIGHEST_MARK else None


def _behind(words: Sequence[str], number: SpokenNumber, known: SpokenWords) -> SpokenHeat | None:
    scale, fan, is_heat, is_without, end = "", None, False, False, number.end
    for index in range(number.end, number.end + FAR_FAN + 3):
        word = word_at(words, index)
        is_scale = len(word) > 1 or is_heat or index == number.end
        if word in known.degrees:
            is_heat = True
        elif word in known.celsius and is_scale:
            scale, is_heat = "celsius", True
        elif word in known.fahrenheit and is_scale:
            scale, is_heat = "fahrenheit", True
        elif word in known.fan:
            fan, is_heat = not is_without, True
        elif word in known.conventional:
            fan, is_heat = False, True
        elif word in SMALL and (is_heat or _is_near_kind(words, index, known)):
            continue
        elif known.negations.any_in(words, index, index + 1) and _is_near_kind(words, index, known):
            is_without = True
            continue
        else:
            break
        end = index + 1
    return SpokenHeat(scale, fan, end) if is_heat else None


def _before(words: Sequence[str], number: SpokenNumber, known: SpokenWords, since: int) -> SpokenHeat | None:
    before = words[max(since, number.begin - FAR_BEFORE) : number.begin]
    if number.high < OVEN_FROM or not known.fan.intersection(before[-NEAR_BEFORE:]):
        return None
    return SpokenHeat("", not known.negations.any_in(before, 0, len(before)), number.end)


def _is_near_kind(words: Sequence[str], index: int, known: SpokenWords) -> bool:
    """Whether 'fan' or 'conventional' is said within the next words: '150 in a fan oven'."""
    kinds = known.fan | known.conventional
    return any(word_at(words, index + step) in kinds for step in (1, 2))
