"""Lines about the whole recipe: what it makes, how many it serves, its tin, its oven, its times."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from sitegen.kitchen.amounts import NOWHERE
from sitegen.notes.amounts_in_notes import NUMBER, spaced
from sitegen.notes.heats_in_notes import Heats, heats_in
from sitegen.notes.times_in_notes import TimeSaid, times_in
from sitegen.notes.tins_in_notes import TinSaid, known_tin, tin_in
from sitegen.notes.values import Desk
from sitegen.notes.word_table import note_words
from sitegen.source.misread import Misread
from sitegen.source.yields import read_makes

_MOST_WORDS = 12
_MOST_YIELD_WORDS = 7
_MOST_TIME_WORDS = 16
_NEAR = re.compile(r"^(?:about|approx\.?|approximately|around|roughly|up to|circa|~)\s*", re.IGNORECASE)
_ISH = re.compile(r"^(\d+)(?:ish| ish|-ish| or so|\+)", re.IGNORECASE)
_NUMBER_WORD = re.compile(r"^(?:(?:a|one|1) dozen|[a-z]+)(?= )", re.IGNORECASE)
_CUT = re.compile(
    r"\b(?:cut|slice)(?: it| them)? into (?P<made>(?:\d+|six|eight|nine|ten|twelve)(?: [a-z]+s)?)\b",
    re.IGNORECASE,
)
_NUTRITION = re.compile(r"\d ?(?:kcals?|kj|cals?|calories)\b|\bcalories\b", re.IGNORECASE)
_TIMES_WEIGHT = re.compile(
    rf"(?P<count>{NUMBER}) ?[x×] ?(?P<each>\d+(?:\.\d+)? ?(?:g|kg|oz|lb)) (?P<noun>.+)", re.IGNORECASE
)
_WORKED_OUT = "times are worked out from the steps"
PIECES = "pieces"
"""What a yield counts where the notes say how many and not of what."""


@dataclass(frozen=True)
class Fact:
    """key: of the recipe file ('makes', 'serves', 'tin'), 'oven', or '' for what no key holds.

    value: as the file will have it. heats: of an oven. reason: why no key holds it.
    """

    key: str
    value: str = ""
    heats: Heats | None = None
    reason: str = ""


def facts_of_cells(cells: tuple[str, ...], desk: Desk) -> tuple[Fact, ...]:
    """What a row of cells says: 'Tin' and '23 cm springform', or a fact in each."""
    each = [facts_in(cell, desk) or _time_of_cell(cell) for cell in cells]
    if len(cells) > 1 and all(each):
        return tuple(fact for facts in each for fact in facts)
    return facts_in(": ".join(cells), desk) if len(cells) == 2 else ()


def _time_of_cell(cell: str) -> tuple[Fact, ...]:
    """'Bake 20 minutes' beside other facts is none of the method's steps."""
    label, _, rest = cell.partition(" ")
    is_time = label.casefold().strip(":") in note_words().cell_times and _is_all_time(rest)
    return (Fact("", cell, reason=_WORKED_OUT),) if is_time else ()


def made_in(text: str, desk: Desk) -> str:
    """What a step makes of it all: '12 wedges' of 'cut into 12 wedges'; '' for nothing."""
    found = _CUT.search(text)
    return _made(found["made"], desk) if found else ""


def facts_within(text: str, desk: Desk) -> tuple[Fact, ...]:
    """What parts of a sentence say of the whole, in brackets or between commas: 'cuts into 20'."""
    parts = [part.strip() for part in re.split(r"[.,;()!?]", text) if part.strip()]
    found = [
        fact for part in parts for fact in (_portions(part, desk) if len(part.split()) <= _MOST_WORDS else ())
    ]
    tin = tin_in(text, desk)
    return (*found, *((Fact("tin", tin.value),) if tin else ()))


def facts_in(text: str, desk: Desk) -> tuple[Fact, ...]:
    """What a whole line says about the recipe; nothing where it speaks of anything else."""
    words = text.split()
    if not words or len(words) > _MOST_TIME_WORDS:
        return ()
    if _NUTRITION.search(text):
        return (Fact("", text, reason="nutrition is worked out from the ingredients"),)
    if len(words) <= _MOST_WORDS:
        portions = _portions(text, desk)
        if portions:
            return portions
        if (
            _lead("oven").match(text)
            and (heats := next(heats_in(text), None))
            and not next(times_in(text), None)
        ):
            return (Fact("oven", heats=heats),)
        label = re.match(r"(?:tin|pan)(?: size)?\s*[:=]\s*", text, re.IGNORECASE)
        if label and (value := known_tin(text[label.end() :].partition(",")[0].strip(" ."), desk)):
            return (Fact("tin", value),)
        tin = tin_in(text, desk)
        if tin and _is_all_tin(text, tin):
            return (Fact("tin", tin.value),)
    return _times(text)


@cache
def _lead(key: str) -> re.Pattern[str]:
    words = sorted(note_words().facts[key], key=len, reverse=True)
    return re.compile(
        rf"(?:it |this |recipe )?(?:{'|'.join(map(re.escape, words))})\b\s*[:=–-]?\s*", re.IGNORECASE
    )


def _portions(text: str, desk: Desk) -> tuple[Fact, ...]:
    """'makes 1 loaf, 10 slices', 'Yield: 16 bars', 'serves 8', '8 servings'."""
    makes, serves = _lead("makes").match(text), _lead("serves").match(text)
    rest = text[(makes or serves).end() :] if makes or serves else ""  # type: ignore[union-attr]
    if makes and rest:
        noun = re.match(rf"{NUMBER}(?: ?(?:-|–|to) ?\d+)? (?P<noun>[a-z]+)", _figured(rest), re.IGNORECASE)
        if noun and noun["noun"].casefold() in note_words().portion_nouns:
            return (Fact("serves", _served(rest)),) if _served(rest) else ()
        value = _made(rest, desk)
        return (Fact("makes", value),) if value else ()
    if serves and _served(rest):
        return (Fact("serves", _served(rest)),)
    nouns = "|".join(note_words().portion_nouns)
    if re.fullmatch(rf"{NUMBER}(?: ?(?:-|–|to) ?\d+)? (?:{nouns})", text.strip(" ."), re.IGNORECASE):
        return (Fact("serves", _served(text)),) if _served(text) else ()
    return ()


def _figured(text: str) -> str:
    """'about two dozen buns' -> '24 buns', '14ish' -> '14'."""
    rest = _NEAR.sub("", text.strip(" .!"))
    dozens = re.match(r"(?:(a|one|1|two|2|three|3|four|4|half a)\s+)?dozen\b", rest, re.IGNORECASE)
    if dozens:
        said = (dozens.group(1) or "1").casefold()
        count = {
            "a": 12,
            "one": 12,
            "1": 12,
            "two": 24,
            "2": 24,
            "three": 36,
            "3": 36,
            "four": 48,
            "4": 48,
        }.get(said, 6)
        return f"{count}{rest[dozens.end() :]}"
    word = re.match(r"([a-z]+) ", rest, re.IGNORECASE)
    number = note_words().numbers.get(word.group(1).casefold(), "") if word else ""
    if word and number.isdigit():
        rest = f"{number}{rest[word.end() - 1 :]}"
    return _ISH.sub(r"\1", rest)


def _made(rest: str, desk: Desk) -> str:
    """The yield as our format reads it; '' for none. Of a range the smaller figure."""
    figured = spaced(_figured(re.sub(r"\s*\([^()]*\)", "", rest)), desk)
    figured = re.sub(r"^(\d+) ?(?:-|–|to) ?\d+", r"\1", figured)
    figured = _TIMES_WEIGHT.sub(r"\g<count> \g<noun> of \g<each>", figured)
    head = re.split(r"[,;(/]| or | \+ | and ", figured)[0].strip(" .!")
    if len(head.split()) > _MOST_YIELD_WORDS:
        return ""
    for tried in (
        head,
        re.sub(r" (?:\S*\d\S*|cm|inch|large|big|good|small|medium)(?= )", "", head),
        f"{head} {PIECES}",
    ):
        try:
            read_makes(tried, NOWHERE, desk.context)
        except Misread:
            continue
        return tried
    return ""


def _served(text: str) -> str:
    figured = re.sub(r" ?(?:–|to) ?", "-", _figured(text), count=1)
    found = re.match(r"(\d{1,4})(?:-(\d{1,4}))?(?![\d.])", figured)
    if not found or int(found.group(1)) == 0:
        return ""
    low, high = found.groups()
    return f"{low}-{high}" if high and int(high) > int(low) else low


def _is_all_tin(text: str, tin: TinSaid) -> bool:
    """Whether a line says little beside its tin: 'Tin: 20 cm round', '2 lb loaf tin, lined'."""
    others = f"{text[: tin.start]} {text[tin.end :]}"
    left = _lead("tin").sub(" ", others).casefold().replace("lined", " ").replace("greased", " ")
    return len(re.findall(r"[a-z]{3,}", left)) <= 3 and not next(times_in(text), None)


def _is_all_time(rest: str) -> bool:
    """Whether a label is followed by a time, or by times with labels of their own, and by nothing else."""
    times = list(times_in(rest))
    words = re.findall(r"[a-z]{3,}", " ".join(_between(rest, times)).casefold())
    return bool(times) and len(words) <= 2 * len(times)


def _between(text: str, times: list[TimeSaid]) -> Iterator[str]:
    """What stands outside the times."""
    begin = 0
    for one in times:
        yield text[begin : one.lead]
        begin = one.end
    yield text[begin:]


def _times(text: str) -> tuple[Fact, ...]:
    """'Prep Time: 20 minutes', 'ready in 1 hour': the format works times out from the steps."""
    found = _lead("time").match(text)
    has_colon = found is not None and ":" in found.group(0)
    is_label = has_colon or (found is not None and _is_all_time(text[found.end() :]))
    if not is_label or found is None:
        return ()
    about_time = next(times_in(text), None)
    reason = _WORKED_OUT if about_time else "no key of a recipe file holds it"
    return (Fact("", text, reason=reason),)
