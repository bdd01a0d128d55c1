"""A paragraph of a method -> its sentences and clauses, one wait each."""

import re
from collections.abc import Iterator
from functools import cache
from itertools import pairwise

from sitegen.notes.heats_in_notes import heats_in
from sitegen.notes.times_in_notes import TimeSaid, times_in
from sitegen.notes.verbs import begins_with_verb, first_is_verb, verb_kinds, words_of
from sitegen.notes.word_table import note_words

_END = re.compile(r"(?<=[.!?])[)\"]? +(?=[\"(]?[^\W_])")
_CLAUSE = re.compile(
    r"; ?| ?\(then |,? (?:and )?then |, (?:and )?(?=[a-z]+ )| and (?=[a-z]+ )", re.IGNORECASE
)
_BEFORE_NOUNS = frozenset(
    {"the", "a", "an", "of", "my", "your", "her", "our", "this", "that", "with", "without"}
)
_PLACES = {"oven": "bake", "fridge": "chill", "refrigerator": "chill", "freezer": "freeze"}
"""Where something waits, whatever the verb: 'into the fridge for an hour'."""
_NOT_HOW_LONG = frozenset({"after", "every", "within", "last", "first", "next", "per", "halfway", "final"})
"""Words before a time that says when, and not how long: 'cover after 40 minutes'."""
WAITS = frozenset({"bake", "chill", "freeze", "wait"})
"""Kinds of verbs (`verbs` in the table) whose time is waited for and not worked."""


def sentences(text: str) -> list[str]:
    """The sentences of a paragraph, each with its mark; a stop behind a short form ends none."""
    found: list[str] = []
    begin = 0
    for end in _END.finditer(text):
        before = text[begin : end.start()]
        last = re.split(r"[ \d-]", before.rstrip(".!?"))[-1].casefold().strip("(,")
        behind = text[end.end() :]
        is_short = before.endswith(".") and last in _abbreviations()
        is_begun = behind[0].isupper() or begins_with_verb(behind) or _says_a_fact(behind)
        if is_short and not is_begun:
            continue
        found.append(before.strip())
        begin = end.end()
    return [one for one in (*found, text[begin:].strip()) if one]


def _says_a_fact(text: str) -> bool:
    """'makes about forty', 'serves 8'."""
    first = text.partition(" ")[0].casefold()
    return first in note_words().facts["makes"] or first in note_words().facts["serves"]


@cache
def _abbreviations() -> frozenset[str]:
    return frozenset(word.strip(".") for word in note_words().abbreviations)


def kind_of(time: TimeSaid, sentence: str) -> str:
    """What a time is for, by the nearest verb before it, else the first behind it: a row of the table."""
    before = words_of(_without_heats(sentence[: time.lead]))
    if before and before[-1] in _NOT_HOW_LONG:
        return ""
    for index in range(len(before) - 1, -1, -1):
        if before[index] in _PLACES:
            return _PLACES[before[index]]
        kind = verb_kinds().get(before[index], "")
        if kind and not _is_noun(before, index):
            return kind
    if any(one.is_oven for heats in heats_in(sentence[: time.lead]) for one in heats.all):
        return "bake"
    behind = words_of(sentence[time.end :])
    return next((verb_kinds()[word] for word in behind if word in verb_kinds()), "")


def _without_heats(text: str) -> str:
    """The 'heat' of '180 C top/bottom heat' is no work."""
    for heats in reversed(list(heats_in(text))):
        text = f"{text[: heats.start]} {text[heats.end :]}"
    return text


def _is_noun(words: list[str], index: int) -> bool:
    """'the mix', 'a rest', 'brown sugar': a word that is a verb elsewhere."""
    if words[index + 1 : index + 2] == ["sugar"]:
        return True
    return index > 0 and words[index - 1] in _BEFORE_NOUNS


def clauses(sentence: str) -> Iterator[str]:
    """The sentence, cut where a second thing is waited for: 'chill for 1 hour, then bake for 20 minutes'."""
    waits = [time for time in times_in(sentence) if kind_of(time, sentence) in WAITS]
    begin, prefix = 0, ""
    for first, second in pairwise(waits):
        joints = list(_CLAUSE.finditer(sentence, first.end, second.lead))
        verbs = [one for one in joints if first_is_verb(sentence[one.end() :])]
        again = [one for one in joints if "then" in one.group(0)] if not verbs else []
        cut = next(iter((*verbs, *again)), None)
        if cut is not None:
            yield f"{prefix}{sentence[begin : cut.start()]}".strip(" ,;")
            prefix = "Bake " if again and kind_of(first, sentence) == "bake" else ""
            begin = cut.end()
    yield f"{prefix}{sentence[begin:]}".strip()
