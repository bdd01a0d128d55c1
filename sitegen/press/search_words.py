"""How a search compares words: here, where the index is made, and by the same rules where it is asked."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from unicodedata import category, normalize

_WORD = re.compile(r"[^\W_]+")
_APOSTROPHES = re.compile("['’]")


@dataclass(frozen=True)
class WordRules:
    """passed_over: words that are never looked for. letters: (letter, plain ones that stand for it).

    endings: (ending, what stands for it), taken off one after another: 's' -> '', 'i' -> 'y' makes 'berries'
    and 'berry' the same.
    """

    passed_over: tuple[str, ...] = ()
    letters: tuple[tuple[str, str], ...] = ()
    endings: tuple[tuple[str, str], ...] = ()

    def words(self, text: str) -> Iterator[str]:
        """The words of a text, small and without accents: 'Crème brûlée' -> 'creme', 'brulee'."""
        return (word for word in _WORD.findall(self.plain(text)) if word not in self.passed_over)

    def plain(self, text: str) -> str:
        marked = normalize("NFD", _APOSTROPHES.sub("", text))
        plain = "".join(sign for sign in marked if not category(sign).startswith("M")).lower()
        for letter, instead in self.letters:
            plain = plain.replace(letter, instead)
        return plain

    def stem(self, word: str) -> str:
        """What the forms of a word for one and for many have in common; no word of a language."""
        for ending, instead in self.endings:
            if word.endswith(ending):
                word = word.removesuffix(ending) + instead
        return word

    def one_of_each(self, words: Iterable[str]) -> dict[str, str]:
        """Stem -> the shortest of its forms, which stands for all of them."""
        forms: dict[str, str] = {}
        for word in sorted(words, key=lambda word: (len(word), word)):
            forms.setdefault(self.stem(word), word)
        return forms
