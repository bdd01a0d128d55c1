"""A film made ready to be compared: words, sentences, names, amounts, and the step in hand at each word."""

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass, field

from sitegen.film.marks import NOT_THIS_BAKE, About
from sitegen.film.names import Mention
from sitegen.film.sentences import Sentence
from sitegen.film.spoken_amounts import SpokenAmount
from sitegen.film.steps import FilmStep
from sitegen.film.vocabulary import SpokenWords
from sitegen.film.words import Heard
from sitegen.kitchen.editions import Edition
from sitegen.kitchen.recipe import Recipe
from sitegen.kitchen.tables import Tables

FAR_BEHIND = 5
"""Words that may stand between an amount and the name behind it, all of them small."""


@dataclass(frozen=True)
class Scene:
    """words, norms: of the film, place by place. begun: (first word, step) of the steps found, in its order.

    written: the edition that the recipe is written in.
    """

    recipe: Recipe
    tables: Tables
    written: Edition
    known: SpokenWords
    heard: Sequence[Heard]
    words: Sequence[str]
    norms: Sequence[str]
    sentences: Sequence[Sentence]
    mentions: Sequence[Mention]
    amounts: Sequence[SpokenAmount]
    begun: Sequence[tuple[int, FilmStep]]
    _sentence_begins: list[int] = field(default_factory=list)
    _mention_begins: list[int] = field(default_factory=list)
    _begun_words: list[int] = field(default_factory=list)

    def __post_init__(self) -> None:
        self._sentence_begins.extend(sentence.begin for sentence in self.sentences)
        self._mention_begins.extend(mention.begin for mention in self.mentions)
        self._begun_words.extend(word for word, _ in self.begun)

    def second(self, word: int) -> int:
        """When a word is said, whole seconds."""
        return int(self.heard[word].at_s)

    def sentence_at(self, word: int) -> Sentence:
        """The sentence that a word stands in."""
        return self.sentences[bisect_right(self._sentence_begins, word) - 1]

    def about(self, word: int) -> About:
        """What is spoken of where a word is said."""
        return self.sentence_at(word).about_at(word)

    def about_in_clause(self, word: int) -> About:
        """The same, but not by a clause that begins behind it."""
        return self.sentence_at(word).about_at(word, in_clause=True)

    def is_doubted(self, word: int) -> bool:
        """Whether a clause that begins behind it may be of another bake, and it with that."""
        return bool((self.about(word) & ~self.about_in_clause(word)) & NOT_THIS_BAKE)

    def are_of_one_step(self, word: int, other: int) -> bool:
        """Whether no step begins between two words."""
        return bisect_right(self._begun_words, word) == bisect_right(self._begun_words, other)

    def about_since(self, word: int) -> About:
        """The same, by what was said before it alone."""
        return self.sentence_at(word).about_at(word, since=True)

    def step_at(self, word: int) -> FilmStep | None:
        """The step that was begun last; None before the first."""
        index = bisect_right(self._begun_words, word) - 1
        return self.begun[index][1] if index >= 0 else None

    def begun_at(self, word: int) -> int:
        """The first word of the step that was begun last; that word itself before the first."""
        index = bisect_right(self._begun_words, word) - 1
        return self._begun_words[index] if index >= 0 else word

    def next_step(self, word: int) -> FilmStep | None:
        """The step that is begun next; None behind the last."""
        index = bisect_right(self._begun_words, word)
        return self.begun[index][1] if index < len(self.begun) else None

    def steps_about(self, word: int) -> tuple[FilmStep, ...]:
        """The step that was begun last, and the one that is begun next."""
        return tuple(step for step in (self.step_at(word), self.next_step(word)) if step is not None)

    def mentions_from(self, word: int) -> Sequence[Mention]:
        """Names said from a word on."""
        index = bisect_right(self._mention_begins, word - 1)
        return self.mentions[index : index + 3]

    def mentions_before(self, word: int) -> Sequence[Mention]:
        """Names said before a word, the nearest first."""
        index = bisect_right(self._mention_begins, word - 1)
        return tuple(reversed(self.mentions[max(0, index - 3) : index]))

    def named_behind(self, word: int) -> Mention | None:
        """The name that follows an amount that ends before a word, with only small words between."""
        for mention in self.mentions_from(word)[:1]:
            between = self.words[word : mention.begin]
            if len(between) <= FAR_BEHIND and self.known.between.issuperset(between):
                return mention
        return None
