"""Where sentences begin in captions without full stops: at pauses, and at words that begin one."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import IntEnum

from sitegen.film.marks import CONDITIONS, JOINTS
from sitegen.film.spoken_numbers import number_at
from sitegen.film.vocabulary import SpokenWords
from sitegen.film.words import Heard

PAUSE_S = 0.7
"""As long a silence ends a sentence."""
LEAST_WORDS = 3
LONG_SENTENCE = 14
"""Words after which a weaker sign begins a new sentence."""
SHORT_SENTENCE, MIDDLING_SENTENCE = 5, 9
LED_ON = {"then": 12, "so": 4}
"""Words behind an 'if', or behind 'making double', within which these lead on to what it is about."""
OBJECTS = frozenset({"it", "them", "that", "this", "these", "those"})
LETTING = frozenset({"let", "make", "help", "watch", "have", "leave", "see", "lets", "makes", "helps"})
"""'Let it stand' asks for one thing; 'whisk it, stand the bowl' for two."""
HANGING = frozenset(
    {
        "until",
        "till",
        "when",
        "if",
        "as",
        "while",
        "before",
        "after",
        "than",
        "what",
        "how",
        "that",
        "where",
        "once",
        "long",
        "which",
        "who",
        "because",
    }
)
"""Behind these, a verb with its subject begins no sentence: 'as long as it takes'."""
VERBS = frozenset({"will", "wants", "needs", "takes", "should"})
FAR_ASIDE = 4
"""Words of a phrase that names somebody else: what he does right behind it is not asked for."""
COPULAS = frozenset({"is", "are", "be", "it's", "that's", "they're", "you're", "it'll", "i'm", "we're"})
OF_A_STATE = frozenset({"has", "have", "had", "is", "are", "was", "were"})
"""'It has not. Pour in the milk': behind these and 'not' stands no work that is forbidden."""


class Sign(IntEnum):
    """How sure a word is that a sentence begins with it."""

    NONE = 0
    WEAK = 1
    AND_WORK = 2
    BEGINNING = 3
    WORK = 4
    STRONG = 5


_LEAST = {
    Sign.WEAK: LONG_SENTENCE,
    Sign.AND_WORK: MIDDLING_SENTENCE,
    Sign.BEGINNING: SHORT_SENTENCE,
    Sign.WORK: SHORT_SENTENCE,
    Sign.STRONG: LEAST_WORDS,
}
"""Words that a sentence has at least before such a sign ends it."""


@dataclass(frozen=True)
class Cut:
    """The first word of a sentence, and by what sign it was told."""

    begin: int
    sign: Sign


def sentence_cuts(heard: Sequence[Heard], words: Sequence[str], known: SpokenWords) -> Iterator[Cut]:
    """The first words of all sentences, from left to right. words: the texts of those heard."""
    last, opened, condition = 0, 0, -max(LED_ON.values()) - 1
    for index, word in enumerate(heard):
        if index == 0:
            yield Cut(0, Sign.STRONG)
            opened = known.openers.at(words, 0)
            continue
        if words[index] in CONDITIONS:
            condition = index
        elif other_batch := known.other_batches.at(words, index):
            condition = index + other_batch - 1
        is_ended = heard[index - 1].ends or word.pause_s >= PAUSE_S
        sign = _sign(words, index, known) if index >= opened else Sign.NONE
        if index - condition <= LED_ON.get(words[index], -1):
            sign = Sign.NONE
        if is_ended or (sign and index - last >= _LEAST[sign]):
            yield Cut(index, Sign.STRONG if is_ended else sign)
            last = index
        if index >= opened:
            opened = max(opened, index + known.openers.at(words, index))


def _sign(words: Sequence[str], index: int, known: SpokenWords) -> Sign:
    before = words[index - 1]
    if (before in JOINTS and words[index] != "and") or known.no_openers.at(words, index):
        return Sign.NONE
    if before in COPULAS and known.states.at(words, index):
        return Sign.NONE
    if known.strong_openers.at(words, index):
        return Sign.STRONG
    if known.subjects.at(words, index) and before not in HANGING:
        return Sign.WORK
    if (before == "that" or before not in HANGING) and (
        known.beginners.at(words, index) or _is_subject(words, index, known)
    ):
        return Sign.BEGINNING
    if words[index] == "and" and index + 1 < len(words):
        is_work = is_asked(words, index + 1, known) or known.behind_and.at(words, index + 1)
        return Sign.AND_WORK if is_work else Sign.NONE
    if is_asked(words, index, known) or (_stands_free(before, known) and known.stages.at(words, index)):
        return Sign.WORK
    is_figure = _stands_free(before, known) and _is_figure(words, index)
    return Sign.WEAK if is_figure or known.openers.at(words, index) else Sign.NONE


def _is_subject(words: Sequence[str], index: int, known: SpokenWords) -> bool:
    """'the custard will want an hour': a name with a verb behind it, that hangs on no word before it."""
    verb = words[index + 2] if index + 2 < len(words) else ""
    is_free = _stands_free(words[index - 1], known) and not known.relatives.at(words, index - 1)
    return words[index] == "the" and verb in VERBS and is_free


def _stands_free(before: str, known: SpokenWords) -> bool:
    """Whether a place or a figure does not hang on the word before it: 'put it in the oven'."""
    return before not in known.leads_up and before not in OBJECTS


def _is_figure(words: Sequence[str], index: int) -> bool:
    """Whether an amount begins there: 'three hundred grams of cream', and not 'one of those'."""
    number = number_at(words, index)
    return number is not None and number.high > 1 and number_at(words, index - 1) is None


def is_asked(words: Sequence[str], index: int, known: SpokenWords) -> bool:
    """Whether a word asks for work: 'whisk the eggs', and not 'the whisk', nor 'my mother whisked'."""
    if words[index] not in known.imperatives or index + 1 >= len(words):
        return False
    before, following = words[index - 1] if index else "", words[index + 1]
    if any(known.asides.at(words, at) == index - at for at in range(max(0, index - FAR_ASIDE), index)):
        return False
    if before in OBJECTS and index > 1 and words[index - 2] in LETTING:
        return False
    is_free = before in JOINTS or before not in known.leads_up
    is_free = is_free or (before == "not" and index > 1 and words[index - 2] in OF_A_STATE)
    return is_free and (following in known.led_to or following[:1].isdigit())
