"""A set of phrases that is looked for in a row of words."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass

from sitegen.film.words import tokens


@dataclass(frozen=True)
class Phrases:
    """Phrases by their first word, the longest of each first."""

    by_first: dict[str, tuple[tuple[str, ...], ...]]

    @classmethod
    def of(cls, texts: Iterable[str], norm: Callable[[str], str] = str) -> "Phrases":
        """Phrases as they are written. norm: what is done to each word, as to those looked through."""
        found: dict[str, list[tuple[str, ...]]] = {}
        for text in texts:
            words = tuple(map(norm, tokens(text)))
            if words:
                found.setdefault(words[0], []).append(words)
        return cls({first: tuple(sorted(rest, key=len, reverse=True)) for first, rest in found.items()})

    def at(self, words: Sequence[str], index: int) -> int:
        """How many words the longest phrase takes that begins there; 0 for none."""
        for phrase in self.by_first.get(words[index], ()):
            if tuple(words[index : index + len(phrase)]) == phrase:
                return len(phrase)
        return 0

    def within(self, words: Sequence[str], begin: int, end: int) -> Iterator[int]:
        """Where phrases begin between two words, `end` exclusive."""
        return (index for index in range(max(begin, 0), min(end, len(words))) if self.at(words, index))

    def any_in(self, words: Sequence[str], begin: int, end: int) -> bool:
        """Whether a phrase begins there."""
        return any(True for _ in self.within(words, begin, end))

    def ends_near(self, words: Sequence[str], begin: int, end: int, gap: int) -> bool:
        """Whether a phrase stands between two words and ends no more than `gap` words before the second."""
        ends = (index + self.at(words, index) for index in self.within(words, begin, end))
        return any(0 <= end - last <= gap for last in ends)
