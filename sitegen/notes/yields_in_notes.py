"""What notes say that a recipe makes and whom it serves: 'makes two dozen', '8 servings', 'cut into 12'."""

import re
from fractions import Fraction
from functools import cache

from sitegen.kitchen.amounts import NOWHERE
from sitegen.notes.amounts_in_notes import spaced
from sitegen.notes.figures import number_text
from sitegen.notes.number_patterns import NUMBER, RANGE, number_word, number_words
from sitegen.notes.values import Lore
from sitegen.notes.word_table import any_of, note_words
from sitegen.source.misread import Misread
from sitegen.source.yields import read_makes

PIECES = "pieces"
"""What a yield counts where the notes say how many and not of what."""
_DOZEN = 12
_MOST_WORDS = 7
_ISH = re.compile(r"^(\d+)(?:ish| ish|-ish| or so|\+)", re.IGNORECASE)
_TIMES_WEIGHT = re.compile(
    rf"(?P<count>{NUMBER}) ?[x×] ?(?P<each>\d+(?:\.\d+)? ?(?:g|kg|oz|lb)) (?P<noun>.+)", re.IGNORECASE
)
_SIZE_WORD = re.compile(r" (?:\S*\d\S*|cm|inch|large|big|good|small|medium)(?= )")


def made(rest: str, lore: Lore) -> str:
    """The yield as our format reads it; '' for none. Of a range the smaller figure; of a tin what is in it.

    rest: what follows 'makes'.
    """
    figured = spaced(_figured(re.sub(r"\s*\([^()]*\)", "", rest)), lore)
    figured = re.sub(r"^(\d+) ?(?:-|–|to) ?\d+", r"\1", figured)
    figured = _TIMES_WEIGHT.sub(r"\g<count> \g<noun> of \g<each>", figured)
    heads = [part.strip(" .!") for part in re.split(r"[,;(/]| or | \+ | and ", figured)]
    found = [value for value in (_readable(head, lore) for head in heads) if value]
    counted = (value for value in found if value.split()[-1].casefold() not in note_words().tins)
    return next(counted, "") or next(iter(found), "")


def _readable(head: str, lore: Lore) -> str:
    """'16 squares' as our format reads it, without sizes that it has no place for; '' for none."""
    if len(head.split()) > _MOST_WORDS or not head[:1].isdigit():
        return ""
    for tried in (head, _SIZE_WORD.sub("", head), f"{head} {PIECES}"):
        try:
            read_makes(tried, NOWHERE, lore.context)
        except Misread:
            continue
        return tried
    return ""


def made_in(text: str, lore: Lore) -> str:
    """What a step makes of it all: '12 wedges' of 'cut into 12 wedges'; '' for nothing."""
    found = _cut().search(text)
    return made(found["made"], lore) if found else ""


def served(text: str) -> str:
    """'8', '6-8' as our format reads it; '' where a text begins with no figure."""
    figured = re.sub(r" ?(?:–|to) ?", "-", _figured(text), count=1)
    found = re.match(r"(\d{1,4})(?:-(\d{1,4}))?(?![\d.])", figured)
    if not found or int(found[1]) == 0:
        return ""
    low, high = found.groups()
    return f"{low}-{high}" if high and int(high) > int(low) else low


def counts_portions(text: str, *, whole: bool = False) -> bool:
    """Whether a text begins as '8 servings' or '6 to 8 people' does. whole: and says nothing else."""
    figured = _figured(text)
    found = _portions().fullmatch(figured) if whole else _portions().match(figured)
    return found is not None


def counts_weights(text: str) -> bool:
    """Whether a text says how many of which weight: '2 x 900 g loaves'."""
    return _TIMES_WEIGHT.fullmatch(text.strip()) is not None


def counted_in(title: str) -> str:
    """What a title names in the plural with its last word: 'friands'; '' for none."""
    last = title.split()[-1].casefold().strip(".,!") if title.split() else ""
    return last if last.isalpha() and last.endswith("s") else ""


def _figured(text: str) -> str:
    """'about two dozen buns' -> '24 buns', '14ish' -> '14'."""
    rest = _near().sub("", text.strip(" .!"))
    dozens = _dozens().match(rest)
    if dozens:
        said = (dozens["count"] or "1").casefold()
        return f"{number_text(_DOZEN * Fraction(number_words().get(said, said)))}{rest[dozens.end() :]}"
    word = re.match(r"([a-z]+)(?= |$)", rest, re.IGNORECASE)
    number = number_words().get(word[1].casefold(), "") if word else ""
    if word and number.isdigit():
        rest = f"{number}{rest[word.end() :]}"
    return _ISH.sub(r"\1", rest)


@cache
def _near() -> re.Pattern[str]:
    return re.compile(rf"^(?:(?:{any_of(note_words().near)})\b\.?|~)\s*", re.IGNORECASE)


@cache
def _dozens() -> re.Pattern[str]:
    return re.compile(rf"(?:(?P<count>\d{{1,2}}|{number_word()})\s+)?dozen\b", re.IGNORECASE)


@cache
def _cut() -> re.Pattern[str]:
    made = rf"(?P<made>(?:\d+|{number_word()})(?: [a-z]+s)?)"
    return re.compile(rf"\b(?:cut|slice|mark)(?: it| them)? in(?:to)? {made}\b", re.IGNORECASE)


@cache
def _portions() -> re.Pattern[str]:
    return re.compile(rf"{RANGE} (?:{any_of(note_words().portion_nouns)})\b", re.IGNORECASE)
