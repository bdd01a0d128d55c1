"""Units and prices behind a number, as they are spoken."""

from collections.abc import Sequence
from dataclasses import dataclass

from sitegen.film.number_words import ARTICLES
from sitegen.film.spoken_numbers import SpokenNumber, number_at
from sitegen.film.vocabulary import SpokenWords
from sitegen.film.whole_numbers import word_at
from sitegen.kitchen.measures import Measures

POUNDS = frozenset({"pound", "pounds"})
"""Of money or of weight, as the words about them tell."""
PRICED = frozenset({"each", "apiece", "for", "per", *ARTICLES})
"""'Four pounds a punnet', and not 'a pound each of butter and sugar'."""
FAR_PAID = 4
"""Words between 'cost' and how much."""
NO_UNITS = frozenset({"in", "gr", "pack", "packs", "sheet", "sheets"})


@dataclass(frozen=True)
class UnitReader:
    """The units of the words of a film."""

    words: Sequence[str]
    known: SpokenWords
    measures: Measures

    def unit_at(self, index: int) -> str:
        """The canonical unit that a word names; '' for none. 'in' and 'l' are no units where one speaks."""
        word = word_at(self.words, index)
        if word == "fluid" and word_at(self.words, index + 1) in ("ounce", "ounces"):
            return "floz"
        if word in self.known.minutes:
            return "min"
        if word in self.known.units:
            return self.known.units[word]
        if word == "dash":
            return word
        is_letter = len(word) < 2 and not word_at(self.words, index - 1)[:1].isdigit()
        return "" if not word or is_letter or word in NO_UNITS else self.measures.unit_named(word) or ""

    def has_unit(self, index: int) -> bool:
        """Whether a unit follows, small words passed over: 'half a teaspoon'."""
        while word_at(self.words, index) in ("of", *ARTICLES):
            index += 1
        return bool(self.unit_at(index))

    def price_end(self, number: SpokenNumber) -> int:
        """The word before which a price ends: 'four pounds fifty'; 0 where the number is none."""
        unit, end = word_at(self.words, number.end), number.end + 1
        if unit in self.known.money:
            return end
        if unit not in POUNDS:
            return 0
        pence = number_at(self.words, end)
        if pence is not None and not pence.is_part and not self.has_unit(pence.end):
            return pence.end
        behind, before = word_at(self.words, end), word_at(self.words, number.begin - 1)
        is_each = behind in PRICED and word_at(self.words, end + 1) != "of"
        is_for_some = before == "for" and number_at(self.words, number.begin - 2) is not None
        is_paid = self.known.paying.any_in(self.words, number.begin - FAR_PAID, number.begin)
        return end if is_each or is_for_some or is_paid else 0
