"""What a baker tells the reader to do: the verbs of a method, and whether a text begins with one."""

import re
from collections.abc import Mapping
from functools import cache

from sitegen.notes.word_table import note_words

WORD = r"[^\W\d_]+(?:[-'][^\W\d_]+)*"
"""A pattern of one word, its hyphens and apostrophes within."""
_WORDS = re.compile(WORD)


@cache
def verb_kinds() -> Mapping[str, str]:
    """Verb -> its row in the table ('bake', 'chill', 'wait', 'hob', 'work'); the first that has it."""
    kinds: dict[str, str] = {}
    for kind, verbs in note_words().verbs.items():
        for verb in verbs:
            kinds.setdefault(verb, kind)
    return kinds


def words_of(text: str) -> list[str]:
    """The words in small letters, figures and marks left out."""
    return [word.casefold() for word in _WORDS.findall(text)]


def first_is_verb(text: str) -> bool:
    """Whether a text begins with a verb of the method, and with no word before it."""
    return next(iter(words_of(text[:200])), "") in verb_kinds() and text.lstrip()[:1].isalpha()


def begins_with_verb(text: str) -> bool:
    """Whether the first word that counts is a verb of the method."""
    for word in words_of(text[:200]):
        if word in verb_kinds():
            return True
        if word not in note_words().verb_leads and not word.endswith("ly"):
            return False
    return False


def has_verb(text: str, among: int = 8) -> bool:
    """Whether a verb stands among the first words."""
    return any(word in verb_kinds() for word in words_of(text[:400])[:among])
