"""British texts in another region's spelling and words."""

import re
from functools import lru_cache

Words = tuple[tuple[str, str], ...]
"""(British word or phrase, the region's), any case."""


class Respelling:
    """One region's words. It remembers texts, since most of a recipe's are the same in every batch."""

    def __init__(self, words: Words) -> None:
        self._words = {word.casefold(): other for word, other in words}
        longest_first = sorted(self._words, key=len, reverse=True)
        alternatives = "|".join(map(re.escape, longest_first))
        self._pattern = re.compile(rf"\b({alternatives})\b", re.IGNORECASE)
        self.of = lru_cache(maxsize=4096)(self._respelled)
        """The text in the region's words: whole words only, the longest phrase first.

        'baking parchment' -> 'parchment paper'; a capital at the head of a word stays.
        """

    def _respelled(self, text: str) -> str:
        return self._pattern.sub(self._word, text) if self._words else text

    def _word(self, found: re.Match[str]) -> str:
        written = found.group(0)
        other = self._words[written.casefold()]
        return other[:1].upper() + other[1:] if written[:1].isupper() else other


@lru_cache(maxsize=8)
def respelling_by(words: Words) -> Respelling:
    """The one for these words, made once: it takes longer than to respell a sheet."""
    return Respelling(words)
