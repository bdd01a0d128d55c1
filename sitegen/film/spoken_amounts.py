"""Amounts, times and temperatures as they are spoken: a number with its unit."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from fractions import Fraction

from sitegen.film.number_words import ARTICLES
from sitegen.film.spoken_heat import OVEN_FROM, OVEN_TO, gas_mark_at, heat_at
from sitegen.film.spoken_numbers import SpokenNumber, number_at
from sitegen.film.spoken_units import UnitReader
from sitegen.film.vocabulary import SpokenWords
from sitegen.kitchen.amounts import Span
from sitegen.kitchen.measures import Measures

HOUR_MIN = Fraction(60)
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
OTHER = "other"
"""The other half is what is left, and no figure."""
HEARD_FOR = {"to": Fraction(2), "too": Fraction(2), "for": Fraction(4)}
SPOONS = frozenset({"teaspoons", "tablespoons", "cups", "ounces"})
"""Before these, 'to' is what a recogniser writes for two, and 'for' for four."""
COARSE = frozenset({"tsp", "dsp", "tbsp", "cup", "stick", "pint", "l", "kg", "lb", "pinch"})
MOST_COARSE = 10
"""Nobody counts so many of these and a part of one: 'two hundred and a quarter teaspoon of salt' are two."""
OVEN_STEP = 5
"""Degrees between two settings of an oven."""
FAR_OTHER_OVEN = 4
"""Words between an oven's heat and the same for the other kind of oven."""


class Said(StrEnum):
    """What a spoken figure measures."""

    MEASURE = "measure"
    LENGTH = "length"
    TIME = "time"
    TEMPERATURE = "temperature"
    PRICE = "price"
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
    reader = _Reader(words, known, UnitReader(words, known, measures))
    found: list[SpokenAmount] = []
    index = 0
    while index < len(words):
        amount = reader.amount_at(index, found[-1] if found else None)
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
    units: UnitReader

    def amount_at(self, begin: int, last: SpokenAmount | None) -> SpokenAmount | None:
        """The amount that begins there, with the range or the rest that goes on behind it.

        last: the amount before it.
        """
        first = self._one_at(begin, last.end if last is not None else 0)
        if first is None:
            return None
        if last is not None and self._is_other_oven(last, first):
            return replace(first, what=Said.TEMPERATURE)
        first = self._with_more(first)
        if self._word(first.end) not in ("to", "or", "-"):
            return self._hedged(first)
        second = self._one_at(first.end + 1, first.end)
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

    def _is_other_oven(self, last: SpokenAmount, amount: SpokenAmount) -> bool:
        """'a hundred and fifty fan so one seventy without': the same heat for the other kind of oven."""
        return (
            last.fan is not None
            and amount.what is Said.BARE
            and amount.begin - last.end <= FAR_OTHER_OVEN
            and OVEN_FROM <= amount.span.low <= OVEN_TO
            and not amount.span.low % OVEN_STEP
        )

    def _one_at(self, begin: int, since: int) -> SpokenAmount | None:
        word = self._word(begin)
        mark = gas_mark_at(self.words, begin)
        if mark is not None:
            span = Span(mark.low, mark.high)
            return SpokenAmount(Said.TEMPERATURE, span, "gas", begin, mark.end, fan=False)
        number = number_at(self.words, begin)
        if number is not None and number.is_part and self._word(begin - 1) == OTHER:
            return None
        if number is not None:
            return self._measured(number, since)
        if word in HEARD_FOR and self._word(begin + 1) in SPOONS:
            count = HEARD_FOR[word]
            return self._measured(SpokenNumber(count, count, begin, begin + 1), since)
        if word in (*ARTICLES, "another"):
            one = SpokenNumber(Fraction(1), Fraction(1), begin, begin + 1)
            amount = self._measured(one, since)
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

    def _measured(self, number: SpokenNumber, since: int) -> SpokenAmount:
        """A number with its unit. since: the first word that is of no amount before it."""
        span = Span(number.low, number.high)
        end = number.end
        if number.is_part and self._word(end) in ("a", "an"):
            end += 1
        elif number.is_part and self._word(end) == "of" and self._word(end + 1) in ("a", "an"):
            end += 2
        while self._word(end) in FILLED or (self._word(end) == "full" and self.units.unit_at(end + 1)):
            end += 1
        word = self._word(end)
        heat = heat_at(self.words, number, self.known, since)
        if heat is not None:
            return SpokenAmount(Said.TEMPERATURE, span, heat.scale, number.begin, heat.end, fan=heat.fan)
        price_end = self.units.price_end(number)
        if price_end:
            return SpokenAmount(Said.PRICE, span, "", number.begin, price_end)
        minutes = self.known.minutes.get(word)
        if minutes is not None:
            return SpokenAmount(Said.TIME, span.times(minutes), "min", number.begin, end + 1)
        unit = self.units.unit_at(end)
        if number.whole is not None and unit in COARSE and number.low > MOST_COARSE:
            return self._measured(number.whole, since)
        if unit:
            what = Said.LENGTH if self.units.measures.is_length(unit) else Said.MEASURE
            end += 2 if word == "fluid" else 1
            return SpokenAmount(what, span, unit, number.begin, end)
        return SpokenAmount(Said.BARE, span, "", number.begin, number.end, is_part=number.is_part)

    def _with_more(self, amount: SpokenAmount) -> SpokenAmount:
        """'an hour and a half', 'a teaspoon and a half', 'one hour twenty', 'an hour and ten minutes'."""
        if amount.what not in (Said.TIME, Said.MEASURE) or amount.span.is_range:
            return amount
        joined = self._word(amount.end) == "and"
        number = number_at(self.words, amount.end + joined)
        if number is None or number.low != number.high:
            return amount
        unit = self._word(amount.end - 1)
        if number.is_part and joined and not self.units.has_unit(number.end):
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
        is_bare = minutes is None and not joined and number.low >= 5 and not self.units.unit_at(number.end)
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
