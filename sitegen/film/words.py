"""Cues -> the words that were heard, each with its second; what rolling captions show twice is taken once."""

import re
import unicodedata
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from sitegen.film.values import Cue

MARKS = frozenset(".!?")
"""What ends a sentence, where captions have any."""
ENDS = MARKS | {"["}
"""The same, and a noise that is told: '[timer]'."""
HESITATIONS = frozenset({"um", "umm", "uh", "uhm", "er", "erm", "hm", "hmm", "mm", "mmm"})
LONGEST_REPEAT = 40
"""Words that a rolling caption shows again at most."""
SLOWEST_S = 0.1
"""Seconds a letter at most: whoever speaks slower makes pauses."""
MOST_WORDS = 80_000
"""More are no film's: six hours, spoken fast. What is said later is not heard."""
LEAST_REPEAT = 3
"""As many words in a row are no chance; fewer are taken for shown again only where they are a whole cue."""

_TOKEN = re.compile(
    r"\d+ ?/ ?\d+"  # 1/2
    r"|\d{1,3}(?:,\d{3})+(?:\.\d+)?"  # 1,500
    r"|\d+(?:\.\d+)?"  # 22 and 1.5
    r"|[½⅓⅔¼¾⅛⅜⅝⅞]"
    r"|[^\W\d_]+(?:['’][^\W\d_]+)*"  # words: don't
    r"|(?<=\d) ?[-–—] ?(?=\d)"  # 22-24
    r"|[%°£$€]"
    r"|[.!?,;:…\[\]]"
)


@dataclass(frozen=True)
class Heard:
    """A word or figure of the film.

    text: in small letters, without accents. at_s: when it begins. ends: whether a mark ends the sentence
    behind it. pause_s: how long nothing was said before it.
    """

    text: str
    at_s: float
    ends: bool = False
    pause_s: float = 0.0


def heard_words(cues: Sequence[Cue]) -> tuple[Heard, ...]:
    """All words, in the order of the film.

    A cue's time is shared out among its new words by their letters; one that stays longer than its words
    take is followed by silence.
    """
    heard: list[Heard] = []
    ended_s, previous = 0.0, 0
    for cue in cues:
        if len(heard) > MOST_WORDS:
            break
        words = list(_words_of(cue))
        if heard and _begins_with_noise(cue):
            heard[-1] = replace(heard[-1], ends=True)
        before = [word.text for word in heard[-LONGEST_REPEAT:]]
        fresh = words[_shown_again(before, words, previous) :]
        letters = sum(word.letters for word in fresh)
        each_s = min(max(0.0, cue.ends_s - cue.begins_s) / max(letters, 1), SLOWEST_S)
        at_s = max(cue.begins_s, ended_s)
        for index, word in enumerate(fresh):
            pause_s = max(0.0, cue.begins_s - ended_s) if index == 0 and heard else 0.0
            heard.append(Heard(word.text, at_s, word.ends, pause_s))
            at_s += word.letters * each_s
        ended_s, previous = (at_s if fresh else ended_s), len(fresh) or previous
    return tuple(heard)


def tokens(text: str) -> tuple[str, ...]:
    """The words and figures of a text, without marks; as `heard_words` cuts them."""
    return tuple(part for part in _parts(plain(text)) if not _is_mark(part))


@lru_cache(maxsize=4096)
def plain(text: str) -> str:
    """A text in small letters without accents: 'Purée' -> 'puree'; fractions stay one sign."""
    if text.isascii():
        return text.lower()
    kept = unicodedata.normalize("NFD", text.lower().replace("’", "'"))
    return "".join(letter for letter in kept if not unicodedata.combining(letter))


def _parts(text: str) -> Iterator[str]:
    for found in _TOKEN.finditer(text):
        part = found[0].replace(" ", "")
        if part in "-–—":
            yield "-"
        elif part[0].isdigit():
            yield part.replace(",", "")
        else:
            yield part


def _is_mark(part: str) -> bool:
    return part in "£$€.!?,;:…[]"


@dataclass(frozen=True)
class _Written:
    """A word of a cue. letters: with the blank behind it."""

    text: str
    letters: int
    ends: bool


def _words_of(cue: Cue) -> Iterator[_Written]:
    """The words of a cue, without hesitations and what stands in brackets: '[mixer running]'."""
    parts = list(_parts(plain(cue.text)))
    is_noise = False
    for index, part in enumerate(parts):
        if part in "[]":
            is_noise = part == "["
        elif not _is_mark(part) and not is_noise and part not in HESITATIONS:
            yield _Written(part, len(part) + 1, index + 1 < len(parts) and parts[index + 1] in ENDS)


def _begins_with_noise(cue: Cue) -> bool:
    """'[timer]': whoever hears it begins anew."""
    return cue.text.lstrip().startswith("[")


def _shown_again(before: Sequence[str], words: Sequence[_Written], previous: int) -> int:
    """How many of the first words of a cue are the last that were heard: captions roll up line by line.

    previous: how many words the cue before it brought.
    """
    for count in range(min(len(before), len(words)), 0, -1):
        is_enough = count >= LEAST_REPEAT or count == len(words) or count == previous
        if is_enough and all(word.text == old for word, old in zip(words, before[-count:], strict=False)):
            return count
    return 0
