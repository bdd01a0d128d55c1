"""Where sentences begin in captions without full stops, and what a sentence speaks of beside the bake."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from enum import IntEnum
from functools import reduce
from operator import or_

from sitegen.film.marks import CONDITIONS, JOINTS, LISTED, NOT_THIS_BAKE, About, Mark, marks_in, tables_of
from sitegen.film.phrases import Phrases
from sitegen.film.spoken_numbers import number_at
from sitegen.film.vocabulary import SpokenWords
from sitegen.film.words import Heard

PAUSE_S = 0.7
"""As long a silence ends a sentence."""
LEAST_WORDS = 3
LONG_SENTENCE = 14
"""Words after which a weaker sign begins a new sentence."""
SHORT_SENTENCE, MIDDLING_SENTENCE = 5, 9
LONGEST_TAIL = 3
"""Words that are no sentence of their own: 'twelve kilos of flour | last week'."""
LONG_SCOPE = 25
"""Words behind 'if' or 'last year' that may still be of it, where nothing but a weak sign stands between."""
SHORT_IF = 12
"""Words behind an 'if' within which 'then' leads on to what it is about."""
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
OF_A_STATE = frozenset({"has", "have", "had", "is", "are", "was", "were"})
"""'It has not. Pour in the milk': behind these and 'not' stands no work that is forbidden."""


@dataclass(frozen=True)
class Sentence:
    """Words [begin, end). opens: whether a word begins it that leads on to something new.

    works: the words that ask for work.
    goes_on: whether the weakest sign parts it from the one before.
    marks: the words that say what it speaks of; those of sentences from which only a weak sign parts it, too.
    """

    begin: int
    end: int
    begins_s: float
    about: About
    opens: bool
    marks: tuple[Mark, ...] = ()
    goes_on: bool = False
    works: tuple[int, ...] = ()

    def about_at(self, word: int, since: bool = False) -> About:
        """What is spoken of where a word of it is said. since: by the words before it alone."""
        reaching = (
            mark.about
            for mark in self.marks
            if mark.reaches(word) and not self.is_over(mark, word) and not (since and mark.word > word)
        )
        return reduce(or_, reaching, About.NOTHING)

    def is_over(self, mark: Mark, word: int) -> bool:
        """Whether work is asked for between an aside and a word."""
        return mark.about is About.ASIDE and any(mark.end < work <= word for work in self.works)


class _Sign(IntEnum):
    """How sure a word is that a sentence begins with it."""

    NONE = 0
    WEAK = 1
    AND_WORK = 2
    BEGINNING = 3
    WORK = 4
    STRONG = 5


_LEAST = {
    _Sign.WEAK: LONG_SENTENCE,
    _Sign.AND_WORK: MIDDLING_SENTENCE,
    _Sign.BEGINNING: SHORT_SENTENCE,
    _Sign.WORK: SHORT_SENTENCE,
    _Sign.STRONG: LEAST_WORDS,
}
"""Words that a sentence has at least before such a sign ends it."""


@dataclass(frozen=True)
class _Cut:
    """The first word of a sentence, and by what sign it was told."""

    begin: int
    sign: _Sign


def sentences(heard: Sequence[Heard], known: SpokenWords, others: Phrases) -> tuple[Sentence, ...]:
    """The words of a film cut into sentences, as well as can be told.

    others: names of other recipes: what is said of them is an aside.
    """
    words = [word.text for word in heard]
    cuts = list(_cuts(heard, words, known))
    ends = [*(cut.begin for cut in cuts[1:]), len(words)]
    tables = tables_of(known, others)
    found: list[Sentence] = []
    carried: list[Mark] = []
    for cut, end in zip(cuts, ends, strict=True):
        carried = [mark for each in carried if (mark := _carried(each, cut)) is not None]
        if LISTED in carried and not _is_list(words, cut.begin, end, known):
            carried.remove(LISTED)
        own = tuple(marks_in(words, cut.begin, end, tables, known))
        marks = (*carried, *own)
        is_tail = cut.sign is _Sign.BEGINNING and end - cut.begin <= LONGEST_TAIL
        if found and (cut.sign is _Sign.WEAK or is_tail):
            found[-1] = replace(found[-1], marks=(*found[-1].marks, *own))
        opens = bool(known.strong_openers.at(words, cut.begin) or known.fresh_starts.at(words, cut.begin))
        about = reduce(or_, (mark.about for mark in marks), About.NOTHING)
        works = tuple(index for index in range(cut.begin, end) if _is_asked(words, index, known))
        found.append(
            Sentence(
                cut.begin, end, heard[cut.begin].at_s, about, opens, marks, cut.sign is _Sign.WEAK, works
            )
        )
        last = found[-1]
        carried = [
            mark
            for mark in marks
            if mark is LISTED or (mark.about in NOT_THIS_BAKE and not last.is_over(mark, end))
        ]
        if LISTED not in carried and About.LIST in about and _is_list(words, cut.begin, end, known):
            carried.append(LISTED)
    return tuple(found)


def _carried(mark: Mark, cut: _Cut) -> Mark | None:
    """The mark as the next sentence has it; None where that one is of it no more.

    Work that is asked for ends an aside; the second piece of work behind an 'if' is none of the advice.
    """
    if mark is LISTED:
        return mark
    if cut.sign is _Sign.STRONG or cut.begin - mark.word > LONG_SCOPE:
        return None
    if cut.sign is not _Sign.WORK:
        return mark
    return None if mark.about is About.ASIDE or mark.is_spent else replace(mark, is_spent=True)


def _is_list(words: Sequence[str], begin: int, end: int, known: SpokenWords) -> bool:
    """Whether no work begins between two words."""
    if known.fresh_starts.at(words, begin):
        return False
    return not any(_is_asked(words, index, known) for index in range(begin, end))


def _is_asked(words: Sequence[str], index: int, known: SpokenWords) -> bool:
    """Whether a word asks for work: 'whisk the eggs', and not 'the whisk'."""
    if words[index] not in known.imperatives or index + 1 >= len(words):
        return False
    before, following = words[index - 1] if index else "", words[index + 1]
    if before in OBJECTS and index > 1 and words[index - 2] in LETTING:
        return False
    is_free = before in JOINTS or before not in known.leads_up
    is_free = is_free or (before == "not" and index > 1 and words[index - 2] in OF_A_STATE)
    return is_free and (following in known.led_to or following[:1].isdigit())


def _cuts(heard: Sequence[Heard], words: Sequence[str], known: SpokenWords) -> Iterator[_Cut]:
    last, opened, condition = 0, 0, -SHORT_IF
    for index, word in enumerate(heard):
        if index == 0:
            yield _Cut(0, _Sign.STRONG)
            opened = known.openers.at(words, 0)
            continue
        if words[index] in CONDITIONS:
            condition = index
        is_ended = heard[index - 1].ends or word.pause_s >= PAUSE_S
        sign = _sign(words, index, known) if index >= opened else _Sign.NONE
        if sign is _Sign.STRONG and words[index] == "then" and index - condition <= SHORT_IF:
            sign = _Sign.NONE
        if is_ended or (sign and index - last >= _LEAST[sign]):
            yield _Cut(index, _Sign.STRONG if is_ended else sign)
            last = index
        if index >= opened:
            opened = max(opened, index + known.openers.at(words, index))


def _sign(words: Sequence[str], index: int, known: SpokenWords) -> _Sign:
    before = words[index - 1]
    if (before in JOINTS and words[index] != "and") or known.no_openers.at(words, index):
        return _Sign.NONE
    if known.strong_openers.at(words, index):
        return _Sign.STRONG
    if known.subjects.at(words, index) and before not in HANGING:
        return _Sign.WORK
    if (before == "that" or before not in HANGING) and (
        known.beginners.at(words, index) or _is_subject(words, index, known)
    ):
        return _Sign.BEGINNING
    if words[index] == "and" and index + 1 < len(words):
        is_work = _is_asked(words, index + 1, known) or known.behind_and.at(words, index + 1)
        return _Sign.AND_WORK if is_work else _Sign.NONE
    if _is_asked(words, index, known) or (_stands_free(before, known) and known.stages.at(words, index)):
        return _Sign.WORK
    is_figure = _stands_free(before, known) and _is_figure(words, index)
    return _Sign.WEAK if is_figure or known.openers.at(words, index) else _Sign.NONE


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
