"""A paragraph of a method -> its sentences and clauses, one wait each."""

import re
from collections.abc import Iterator
from functools import cache
from itertools import pairwise

from sitegen.notes.times_in_notes import TimeSaid, times_in
from sitegen.notes.verbs import begins_with_verb, verb_kinds
from sitegen.notes.word_table import note_words

_END = re.compile(r"(?<=[.!?])[)\"]? +(?=[\"(]?[^\W_])")
_CLAUSE = re.compile(
    r"; ?| ?\(then |,? (?:and )?then |, (?:and )?(?=[a-z]+ )| and (?=[a-z]+ )", re.IGNORECASE
)
_WORD = re.compile(r"[^\W\d_]+(?:[-'][^\W\d_]+)*")
_DETERMINERS = frozenset({"the", "a", "an", "of", "my", "your", "her", "our", "this", "that"})
_PLACES = {"oven": "bake", "fridge": "chill", "refrigerator": "chill", "freezer": "freeze"}
"""Where something waits, whatever the verb: 'into the fridge for an hour'."""
_NOT_HOW_LONG = frozenset({"after", "every", "within", "last", "first", "next", "per", "halfway", "final"})
"""Words before a time that says when, and not how long: 'cover after 40 minutes'."""
WAITS = frozenset({"bake", "chill", "freeze", "wait"})


def sentences(text: str) -> list[str]:
    """The sentences of a paragraph, each with its mark; a stop behind a short form ends none."""
    found: list[str] = []
    begin = 0
    for end in _END.finditer(text):
        before = text[begin : end.start()]
        last = before.rstrip(".!?").rpartition(" ")[2].casefold().strip("(,")
        behind = text[end.end() :]
        is_short = before.endswith(".") and last in _abbreviations()
        if is_short and not behind[0].isupper() and not begins_with_verb(behind):
            continue
        found.append(before.strip())
        begin = end.end()
    return [one for one in (*found, text[begin:].strip()) if one]


@cache
def _abbreviations() -> frozenset[str]:
    return frozenset(word.strip(".") for word in note_words().abbreviations)


def kind_of(time: TimeSaid, sentence: str) -> str:
    """What a time is for, by the nearest verb before it, else the first behind it: a row of the table."""
    before = [word.casefold() for word in _WORD.findall(sentence[: time.lead])]
    if before and before[-1] in _NOT_HOW_LONG:
        return ""
    for index in range(len(before) - 1, -1, -1):
        if before[index] in _PLACES:
            return _PLACES[before[index]]
        kind = _kind_at(before, index)
        if kind and not _is_noun(before, index):
            return kind
    behind = [word.casefold() for word in _WORD.findall(sentence[time.end :])]
    kinds = (_kind_at(behind, index) for index in range(len(behind)))
    return next((kind for kind in kinds if kind), "")


def _kind_at(words: list[str], index: int) -> str:
    return verb_kinds().get(words[index], "")


def _is_noun(words: list[str], index: int) -> bool:
    """'the mix', 'a rest': a word that is a verb elsewhere."""
    return index > 0 and words[index - 1] in _DETERMINERS


def clauses(sentence: str) -> Iterator[str]:
    """The sentence, cut where a second thing is waited for: 'chill for 1 hour, then bake for 20 minutes'."""
    waits = [time for time in times_in(sentence) if kind_of(time, sentence) in WAITS]
    begin, prefix = 0, ""
    for first, second in pairwise(waits):
        joints = list(_CLAUSE.finditer(sentence, first.end, second.lead))
        verbs = [one for one in joints if _begins_with_verb(sentence[one.end() :])]
        again = [one for one in joints if "then" in one.group(0)] if not verbs else []
        cut = next(iter((*verbs, *again)), None)
        if cut is not None:
            yield f"{prefix}{sentence[begin : cut.start()]}".strip(" ,;")
            prefix = "Bake " if again and kind_of(first, sentence) == "bake" else ""
            begin = cut.end()
    yield f"{prefix}{sentence[begin:]}".strip()


def _begins_with_verb(text: str) -> bool:
    word = _WORD.match(text.strip())
    return word is not None and word.group(0).casefold() in verb_kinds()
