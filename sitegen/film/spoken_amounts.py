"""Amounts, times and temperatures as they are spoken: a number with its unit."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from fractions import Fraction

from sitegen.film.spoken_numbers import ARTICLES, SpokenNumber, number_at
from sitegen.film.vocabulary import SpokenWords
from sitegen.kitchen.amounts import Span
from sitegen.kitchen.measures import Measures

HOUR_MIN = Fraction(60)
OVEN_FROM, OVEN_TO = 90, 550
"""Degrees on any scale between which a bare figure beside an oven may be its setting."""
FILLED = frozenset(
    {
        "level",
        "heaped",
        "heaping",
        "scant",
        "rounded",
        "generous",
        "good",
        "more",
        "whole",
        "big",
        "small",
        "flat",
    }
)
"""Words between a figure and a spoon."""
HEARD_FOR = {"to": Fraction(2), "too": Fraction(2), "for": Fraction(4)}
SPOONS = frozenset({"teaspoons", "tablespoons", "cups", "ounces"})
"""Before these, 'to' is what a recogniser writes for two, and 'for' for four."""
FAR_FAN = 4
"""Words behind a figure in which 'fan' still belongs to it."""


class Said(StrEnum):
    """What a spoken figure measures."""

    MEASURE = "measure"
    LENGTH = "length"
    TIME = "time"
    TEMPERATURE = "temperature"
    BARE = "bare"


@dataclass(frozen=True)
class SpokenAmount:
    """A figure and the words that it takes: [begin, end).

    span: exact; minutes for a time. unit: canonical; of a temperature its scale, or '' where none is said.
    fan: of a temperature, None where neither is said. is_part: 'half', 'two thirds' without a unit.
    is_about: said as about right. is_article: 'a teaspoon', where nothing but the article counts.
    """

    what: Said
    span: Span
    unit: str
    begin: int
    end: int
    fan: bool | None = None
    is_part: bool = False
    is_about: bool = False
    is_article: bool = False


def spoken_amounts(words: Sequence[str], known: SpokenWords, measures: Measures) -> tuple[SpokenAmount, ...]:
    """Every figure with its unit, from left to right."""
    reader = _Reader(words, known, measures)
    found: list[SpokenAmount] = []
    index = 0
    while index < len(words):
        amount = reader.amount_at(index)
        if amount is None:
            index += 1
            continue
        found.append(amount)
        index = amount.end
    return tuple(found)


@dataclass(frozen=True)
class _Reader:
    words: Sequence[str]
    known: SpokenWords
    measures: Measures

    def amount_at(self, begin: int) -> SpokenAmount | None:
        """The amount that begins there, with the range or the rest that goes on behind it."""
        first = self._one_at(begin)
        if first is None:
            return None
        first = self._with_more(first)
        if self._word(first.end) not in ("to", "or", "-"):
            return self._hedged(first)
        second = self._one_at(first.end + 1)
        second = self._with_more(second) if second else None
        if (
            second is None
            or (second.what, second.unit) != (first.what, first.unit)
            or first.what is Said.BARE
        ):
            return self._hedged(first)
        if second.span.high <= first.span.low:
            return self._hedged(first)
        return self._hedged(replace(first, span=Span(first.span.low, second.span.high), end=second.end))

    def _one_at(self, begin: int) -> SpokenAmount | None:
        word = self._word(begin)
        if word == "gas" or (word == "mark" and self._word(begin - 1) != "gas"):
            marked = begin + 1 + (word == "gas" and self._word(begin + 1) in ("mark", "mart", "marks"))
            number = number_at(self.words, marked) if word == "gas" or begin else None
            if number is not None and number.high <= 10:
                return SpokenAmount(
                    Said.TEMPERATURE, Span(number.low, number.high), "gas", begin, number.end, fan=False
                )
        number = number_at(self.words, begin)
        if number is not None:
            return self._measured(number)
        if word in HEARD_FOR and self._word(begin + 1) in SPOONS:
            count = HEARD_FOR[word]
            return self._measured(SpokenNumber(count, count, begin, begin + 1))
        if word in (*ARTICLES, "another"):
            one = SpokenNumber(Fraction(1), Fraction(1), begin, begin + 1)
            amount = self._measured(one)
            return self._of_an_article(amount) if amount.what is not Said.BARE else None
        return None

    def _of_an_article(self, amount: SpokenAmount) -> SpokenAmount | None:
        """'a minute' is mostly no time: 'in a minute', 'give it a minute'."""
        before = self._word(amount.begin - 1)
        if amount.what is Said.TIME and (amount.span.high < 1 or before in ("in", "just", "wait", "take")):
            return None
        if amount.what is Said.TEMPERATURE:
            return None
        return replace(amount, is_article=True)

    def _measured(self, number: SpokenNumber) -> SpokenAmount:
        span = Span(number.low, number.high)
        end = number.end
        if number.is_part and self._word(end) in ("a", "an"):
            end += 1
        elif number.is_part and self._word(end) == "of" and self._word(end + 1) in ("a", "an"):
            end += 2
        while self._word(end) in FILLED or (self._word(end) == "full" and self._unit_at(end + 1)):
            end += 1
        word = self._word(end)
        temperature = self._temperature(number)
        if temperature is not None:
            return temperature
        minutes = self.known.minutes.get(word)
        if minutes is not None:
            return SpokenAmount(Said.TIME, span.times(minutes), "min", number.begin, end + 1)
        unit = self._unit_at(end)
        if unit:
            what = Said.LENGTH if self.measures.is_length(unit) else Said.MEASURE
            end += 2 if word == "fluid" else 1
            return SpokenAmount(what, span, unit, number.begin, end)
        return SpokenAmount(Said.BARE, span, "", number.begin, number.end, is_part=number.is_part)

    def _unit_at(self, index: int) -> str:
        """The canonical unit that a word names; '' for none. 'in' and 'l' are no units where one speaks."""
        word = self._word(index)
        if word == "fluid" and self._word(index + 1) in ("ounce", "ounces"):
            return "floz"
        if word in self.known.minutes:
            return "min"
        if word in self.known.units:
            return self.known.units[word]
        is_short = len(word) < 3 and not self._word(index - 1)[:1].isdigit()
        if not word or is_short or word in ("in", "gr", "pack", "packs", "sheet", "sheets", "dash"):
            return "dash" if word == "dash" else ""
        return self.measures.unit_named(word) or ""

    def _has_unit(self, index: int) -> bool:
        """Whether a unit follows, small words passed over: 'half a teaspoon'."""
        while self._word(index) in ("of", *ARTICLES):
            index += 1
        return bool(self._unit_at(index))

    def _temperature(self, number: SpokenNumber) -> SpokenAmount | None:
        """A figure with degrees, a scale or a kind of oven behind it, or 'fan' before it."""
        index, scale, fan, is_heat, is_without = number.end, "", None, False, False
        while index < number.end + FAR_FAN + 3:
            word = self._word(index)
            if word in self.known.degrees:
                is_heat = True
            elif word in self.known.celsius and (len(word) > 1 or is_heat or index == number.end):
                scale, is_heat = "celsius", True
            elif word in self.known.fahrenheit and (len(word) > 1 or is_heat or index == number.end):
                scale, is_heat = "fahrenheit", True
            elif word in self.known.fan:
                fan, is_heat = not is_without, True
            elif word in self.known.conventional:
                fan, is_heat = False, True
            elif word in ("in", "on", "a", "an", "the", "if", "your", "my", "with", "for") and is_heat | (
                self._near_kind(index)
            ):
                index += 1
                continue
            elif self.known.negations.any_in(self.words, index, index + 1) and self._near_kind(index):
                is_without = True
                index += 1
                continue
            else:
                break
            index += 1
            end = index
        if not is_heat:
            before = [self._word(number.begin - back) for back in (1, 2, 3, 4, 5)]
            if number.high < OVEN_FROM or not self.known.fan.intersection(before[:3]):
                return None
            fan, end = not self.known.negations.any_in(before, 0, len(before)), number.end
        if number.low < 0 or (fan is not None and number.high < 20):
            return None
        return SpokenAmount(
            Said.TEMPERATURE, Span(number.low, number.high), scale, number.begin, end, fan=fan
        )

    def _near_kind(self, index: int) -> bool:
        """Whether 'fan' or 'conventional' is said within the next words: '150 in a fan oven'."""
        kinds = self.known.fan | self.known.conventional
        return any(self._word(index + step) in kinds for step in (1, 2))

    def _with_more(self, amount: SpokenAmount) -> SpokenAmount:
        """'an hour and a half', 'a teaspoon and a half', 'one hour twenty', 'an hour and ten minutes'."""
        if amount.what not in (Said.TIME, Said.MEASURE) or amount.span.is_range:
            return amount
        joined = self._word(amount.end) == "and"
        number = number_at(self.words, amount.end + joined)
        if number is None or number.low != number.high:
            return amount
        unit = self._word(amount.end - 1)
        if number.is_part and joined and not self._has_unit(number.end):
            one = self.known.minutes.get(unit, Fraction(1)) if amount.what is Said.TIME else Fraction(1)
            more = number.low * one
            return replace(amount, span=Span(amount.span.low + more, amount.span.high + more), end=number.end)
        if (
            amount.what is not Said.TIME
            or self.known.minutes.get(unit) != HOUR_MIN
            or number.high >= HOUR_MIN
        ):
            return amount
        minutes = self.known.minutes.get(self._word(number.end))
        is_bare = minutes is None and not joined and number.low >= 5 and not self._unit_at(number.end)
        if minutes != 1 and not is_bare:
            return amount
        more = number.low
        end = number.end + (minutes is not None)
        return replace(amount, span=Span(amount.span.low + more, amount.span.high + more), end=end)

    def _hedged(self, amount: SpokenAmount) -> SpokenAmount:
        begin = amount.begin
        before = self.known.about.any_in(self.words, begin - 2, begin)
        behind = self.known.about.any_in(self.words, amount.end, amount.end + 1)
        return replace(amount, is_about=before or behind)

    def _word(self, index: int) -> str:
        return self.words[index] if 0 <= index < len(self.words) else ""
