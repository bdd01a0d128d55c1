"""The words of bakers on film: the rows of `data/spoken.yaml` as values."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from sitegen.film.phrases import Phrases
from sitegen.film.stems import stem


@dataclass(frozen=True)
class SpokenWords:
    """All word tables. Phrases are of words as they are heard; those of `adding` are of their stems.

    heard_as: stem of what is heard -> of what it is. may_be: a name -> words that may be heard for it.
    units: spoken -> canonical unit. minutes: unit of time -> minutes. works: stem -> number of the work.
    little: stems that tell no step.
    """

    heard_as: Mapping[str, str] = field(hash=False)
    may_be: Mapping[str, tuple[str, ...]] = field(hash=False)
    units: Mapping[str, str] = field(hash=False)
    minutes: Mapping[str, Fraction] = field(hash=False)
    keeping_places: Mapping[str, str] = field(hash=False)
    works: Mapping[str, int] = field(hash=False)
    work_phrases: Mapping[tuple[str, ...], int] = field(hash=False)
    money: frozenset[str]
    paying: Phrases
    celsius: frozenset[str]
    fahrenheit: frozenset[str]
    degrees: frozenset[str]
    fan: frozenset[str]
    conventional: frozenset[str]
    between: frozenset[str]
    sets_oven: Phrases
    little: frozenset[str]
    seldom_meant: frozenset[str]
    weak_heads: frozenset[str]
    about: Phrases
    repairs: Phrases
    weak_repairs: Phrases
    not_this: Phrases
    negations: Phrases
    warnings: Phrases
    yields: Phrases
    making: Phrases
    goes: frozenset[str]
    more: frozenset[str]
    rests: Phrases
    kept: Phrases
    has: Phrases
    limits: Phrases
    relatives: Phrases
    implements: frozenset[str]
    asides: Phrases
    questions: Phrases
    advice: Phrases
    other_batches: Phrases
    ahead: Phrases
    back: Phrases
    listing: Phrases
    openers: Phrases
    strong_openers: Phrases
    no_openers: Phrases
    states: Phrases
    imperatives: frozenset[str]
    led_to: frozenset[str]
    beginners: Phrases
    stages: Phrases
    subjects: Phrases
    behind_and: Phrases
    fresh_starts: Phrases
    closed_conditions: Phrases
    called_so: Phrases
    strong_listing: Phrases
    leads_up: frozenset[str]
    adding: Phrases

    def works_at(self, norms: Sequence[str], index: int) -> frozenset[int]:
        """The works that are named from a word on."""
        found = {self.works[norms[index]]} if norms[index] in self.works else set()
        for phrase, work in self.work_phrases.items():
            if phrase[0] == norms[index] and phrase == tuple(norms[index : index + len(phrase)]):
                found.add(work)
        return frozenset(found)

    def norm(self, word: str) -> str:
        """A word as it is compared: what recognisers write for another made that other, without endings."""
        return self.norms((word,))[0]

    def norms(self, words: Sequence[str]) -> tuple[str, ...]:
        """The same of many."""
        stems = map(stem, words)
        return tuple(self.heard_as.get(each, each) for each in stems)
