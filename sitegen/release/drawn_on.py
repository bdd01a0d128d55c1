"""Which other recipes a recipe may draw on, told from the bare text of its file.

A line draws on a recipe by its title, so a file in which the title does not stand cannot draw on it. What is
told here may be too much (a note that praises another bake). It is too little only where a title is written
in escapes of YAML, which shows once the line is read.
"""

import re
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

_WORD = re.compile(r"\w+")


@dataclass(frozen=True)
class Titles:
    """The titles of a school, each filed under the rarest of its words: title, folded -> slugs."""

    by_word: Mapping[str, tuple[tuple[str, str], ...]]

    @classmethod
    def of(cls, titles: Iterable[tuple[str, str]]) -> "Titles":
        """titles: (slug, title) of each recipe."""
        folded = [(slug, _folded(title)) for slug, title in titles]
        common = Counter(word for _, title in folded for word in _words(title))
        by_word: dict[str, list[tuple[str, str]]] = {}
        for slug, title in folded:
            rarest = min(_words(title), key=lambda word: (common[word], word), default="")
            by_word.setdefault(rarest, []).append((slug, title))
        return cls({word: tuple(filed) for word, filed in by_word.items()})

    def named_in(self, text: str) -> tuple[str, ...]:
        """Slugs of the recipes whose title stands in a text, whatever its capitals and line ends, sorted."""
        folded = _folded(text)
        words = {"", *_words(folded)}
        filed = (row for word in words for row in self.by_word.get(word, ()))
        return tuple(sorted({slug for slug, title in filed if title in folded}))


def with_drawn_on(slug: str, named: Mapping[str, Sequence[str]]) -> tuple[str, ...]:
    """The recipe and all that it may draw on through any number of others, sorted.

    named: slug -> slugs whose title stands in its file.
    """
    waiting, seen = [slug], {slug}
    while waiting:
        found = set(named.get(waiting.pop(), ())) - seen
        seen |= found
        waiting += found
    return tuple(sorted(seen))


def _folded(text: str) -> str:
    return " ".join(text.casefold().split())


def _words(folded: str) -> list[str]:
    """Runs of letters and figures: what stands beside them in a line (quotes, commas) is none of the word."""
    return _WORD.findall(folded)
