"""What a sentence speaks of beside the bake: the words that say so, and how far they reach."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import Flag, auto

from sitegen.film.phrases import Phrases
from sitegen.film.spoken_numbers import number_at
from sitegen.film.vocabulary import SpokenWords

CONDITIONS = frozenset({"if", "say", "suppose", "unless", "should"})
JOINTS = frozenset({"and", "but", "so", "then", "or", "because"})


class About(Flag):
    """What a sentence speaks of beside the work in hand."""

    NOTHING = 0
    ASIDE = auto()
    ADVICE = auto()
    OTHER_BATCH = auto()
    AHEAD = auto()
    BACK = auto()
    LISTING = auto()
    LIST = auto()


REACH = {About.ASIDE: (30, 12), About.ADVICE: (16, 7), About.OTHER_BATCH: (16, 9)}
"""How many words behind it, and before it, such a word is of. Others are of the whole sentence."""
SUBJECTS = frozenset({"i", "you", "they", "we", "that's", "it's", "it'll", "they'll", "should"})
"""With these a clause begins: 'leave it for two hours | that's plenty if they are small'."""
IT_IS = tuple((it, verb) for it in ("it", "that", "this") for verb in ("is", "will", "would"))
"""'That was' goes back to what stands before."""
CLAUSE = 12
"""Words behind 'which' that are of its clause: 'a spoon of rum | which is how we do it at christmas'."""
FAR_ASKER = 2
"""Words before 'asks about' that are of who asks."""
AT_WORK = frozenset({"i", "i'm", "i've", "we", "we're", "we've"})
"""With these, behind 'and', the talk is of the work again."""
FAR_CALLED, FAR_FIGURE = 3, 3
"""Words between who says so and that he does; and of a figure with its unit before."""
GAS, FAR_OVEN = "gas", 6
"""Words behind 'if' in which an oven is named."""
NOT_THIS_BAKE = About.ASIDE | About.ADVICE | About.OTHER_BATCH


@dataclass(frozen=True)
class Mark:
    """A word that says that its sentence speaks of something else.

    is_spent: whether work was asked for since, which was of it. since: the first word that it can be of.
    end: of its phrase. clause: where its clause begins, told by its subject; 0 where that is not heard.
    until: the first word that it is of no more; 0 where its sentence does not tell.
    """

    word: int
    about: About
    is_spent: bool = False
    since: int = 0
    end: int = 0
    clause: int = 0
    until: int = 0

    def reaches(self, word: int) -> bool:
        """Whether it is said near enough to another word of its sentence."""
        if self.about not in REACH:
            return True
        if self.until and word >= self.until:
            return False
        behind, before = REACH[self.about]
        return word >= self.since and -before <= word - self.word <= behind

    def follows(self, word: int) -> bool:
        """Whether it stands behind a word, in a clause of its own or as advice, and may not be of it."""
        return self.clause > word or (self.about is About.ADVICE and self.word > word)


LISTED = Mark(0, About.LIST)
"""Goes on from sentence to sentence, until work begins."""


def tables_of(known: SpokenWords, others: Phrases) -> tuple[tuple[Phrases, About], ...]:
    """Phrases with what they say that is spoken of. others: names of other recipes."""
    return (
        (known.asides, About.ASIDE),
        (known.questions, About.ASIDE),
        (others, About.ASIDE),
        (known.advice, About.ADVICE),
        (known.other_batches, About.OTHER_BATCH),
        (known.ahead, About.AHEAD),
        (known.back, About.BACK),
        (known.listing, About.LISTING),
        (known.strong_listing, About.LIST),
    )


def marks_in(
    words: Sequence[str],
    begin: int,
    end: int,
    tables: Sequence[tuple[Phrases, About]],
    known: SpokenWords,
) -> Iterator[Mark]:
    """The marks whose phrases begin between two words."""
    for phrases, about in tables:
        for index in phrases.within(words, begin, end):
            before = words[index - 1] if index else ""
            if about is About.AHEAD and words[index] == "later" and before in known.minutes:
                continue
            is_condition = words[index] in CONDITIONS
            if is_condition and _is_of_an_oven(words, index, known):
                continue
            clause = max(known.relatives.within(words, index - CLAUSE, index), default=0)
            begins = is_condition or about is About.ASIDE
            is_led_on = words[index] == "unless" or (begins and before in JOINTS)
            since = index if is_led_on else clause if about is About.ASIDE else 0
            if phrases is known.questions:
                since = index - FAR_ASKER
            behind = index + phrases.at(words, index)
            until = _until(words, index, begin, end, known) if is_condition else _called(words, behind, known)
            yield Mark(
                index,
                about,
                is_spent=is_condition and _is_behind_figure(words, index),
                since=since,
                end=behind,
                clause=_clause(words, index),
                until=until,
            )


def _is_of_an_oven(words: Sequence[str], index: int, known: SpokenWords) -> bool:
    """'if you have no fan', 'if you are on gas': what follows is the same heat for another oven."""
    ovens = known.fan | known.conventional | {GAS}
    return not ovens.isdisjoint(words[index + 1 : index + FAR_OVEN])


def _until(words: Sequence[str], index: int, begin: int, end: int, known: SpokenWords) -> int:
    """Where a condition is over: 'walnuts if that is what you have | and I am folding'; 0 for unknown."""
    closed = known.closed_conditions.at(words, index)
    if closed:
        return index + closed
    if index == begin or words[index - 1] in JOINTS:
        return 0
    return next((at for at in range(index, end - 1) if words[at] in JOINTS and words[at + 1] in AT_WORK), 0)


def _called(words: Sequence[str], behind: int, known: SpokenWords) -> int:
    """'six ounces my mother would have said | two teaspoons': where what others call a figure is over."""
    for index in known.called_so.within(words, behind, behind + FAR_CALLED):
        if _is_behind_figure(words, behind - 1) or _is_behind_figure(words, behind):
            return index + known.called_so.at(words, index)
    return 0


def _is_behind_figure(words: Sequence[str], index: int) -> bool:
    """Whether a figure and its unit stand right before a word."""
    return any(number_at(words, at) is not None for at in range(max(0, index - FAR_FIGURE), index - 1))


def _clause(words: Sequence[str], index: int) -> int:
    """Where the clause of a word begins; 0 where no subject of it is heard."""
    near = range(max(0, index - CLAUSE), index + 1)
    return max((at for at in near if words[at] in SUBJECTS or tuple(words[at : at + 2]) in IT_IS), default=0)
