"""The sentences of a film, and what each speaks of beside the bake."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import reduce
from operator import or_

from sitegen.film.marks import LISTED, NOT_THIS_BAKE, About, Mark, marks_in, tables_of
from sitegen.film.phrases import Phrases
from sitegen.film.sentence_cuts import Cut, Sign, is_asked, sentence_cuts
from sitegen.film.vocabulary import SpokenWords
from sitegen.film.words import Heard

LONGEST_TAIL = 3
"""Words that are no sentence of their own: 'twelve kilos of flour | last week'."""
LONG_SCOPE = 25
"""Words behind 'if' or 'last year' that may still be of it, where nothing but a weak sign stands between."""


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

    def about_at(self, word: int, since: bool = False, in_clause: bool = False) -> About:
        """What is spoken of where a word of it is said. since: by the words before it alone.

        in_clause: not by those that follow it in a clause of their own.
        """
        reaching = (
            mark.about
            for mark in self.marks
            if mark.reaches(word)
            and not self.is_over(mark, word)
            and not (since and mark.word > word)
            and not (in_clause and mark.follows(word))
        )
        return reduce(or_, reaching, About.NOTHING)

    def is_over(self, mark: Mark, word: int) -> bool:
        """Whether work is asked for between an aside and a word."""
        return mark.about is About.ASIDE and any(mark.end < work <= word for work in self.works)


def sentences(heard: Sequence[Heard], known: SpokenWords, others: Phrases) -> tuple[Sentence, ...]:
    """The words of a film cut into sentences, as well as can be told.

    others: names of other recipes: what is said of them is an aside.
    """
    words = [word.text for word in heard]
    cuts = list(sentence_cuts(heard, words, known))
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
        is_tail = cut.sign is Sign.BEGINNING and end - cut.begin <= LONGEST_TAIL
        if found and (cut.sign is Sign.WEAK or is_tail):
            found[-1] = replace(found[-1], marks=(*found[-1].marks, *own))
        opens = bool(known.strong_openers.at(words, cut.begin) or known.fresh_starts.at(words, cut.begin))
        about = reduce(or_, (mark.about for mark in marks), About.NOTHING)
        works = tuple(index for index in range(cut.begin, end) if is_asked(words, index, known))
        found.append(
            Sentence(cut.begin, end, heard[cut.begin].at_s, about, opens, marks, cut.sign is Sign.WEAK, works)
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


def _carried(mark: Mark, cut: Cut) -> Mark | None:
    """The mark as the next sentence has it; None where that one is of it no more.

    Work that is asked for ends an aside; the second piece of work behind an 'if' is none of the advice.
    """
    if mark is LISTED:
        return mark
    if cut.sign is Sign.STRONG or cut.begin - mark.word > LONG_SCOPE:
        return None
    if cut.sign is not Sign.WORK:
        return mark
    return None if mark.about is About.ASIDE or mark.is_spent else replace(mark, is_spent=True)


def _is_list(words: Sequence[str], begin: int, end: int, known: SpokenWords) -> bool:
    """Whether no work begins between two words, and nothing goes anywhere."""
    if known.fresh_starts.at(words, begin):
        return False
    if known.stages.any_in(words, begin, end):
        return False
    return not any(is_asked(words, index, known) for index in range(begin, end))
