"""Lines about the whole recipe: what it makes, how many it serves, its tin, its oven, its times."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from sitegen.notes.heats_in_notes import Heats, heats_in
from sitegen.notes.times_in_notes import TimeSaid, times_in
from sitegen.notes.tins_in_notes import TinSaid, known_tin, tin_in
from sitegen.notes.values import Lore
from sitegen.notes.verbs import begins_with_verb
from sitegen.notes.word_table import any_of, note_words
from sitegen.notes.yields_in_notes import counts_portions, counts_weights, made, served

_MOST_CELLS = 12
_MOST_WORDS = 12
_MOST_TIME_WORDS = 16
_PART_ENDS = re.compile(r"[.,;()!?]|\s[-–—|/·•]\s")
_LIST_ENDS = re.compile(r"[,;|]\s| / ")
_TIN_LABEL = re.compile(r"(?:tin|pan)(?: size)?\s*[:=]\s*", re.IGNORECASE)
_VOTES = re.compile(r"\b(?:votes?|ratings?|reviews?|comments)$", re.IGNORECASE)
_NUTRITION = re.compile(r"\d ?(?:kcals?|kj|cals?|calories)\b|\bcalories\b", re.IGNORECASE)
WORKED_OUT = "times are worked out from the steps"
NO_KEY = "no key of a recipe file holds it"
"""Why a line of the notes is set aside."""


@dataclass(frozen=True)
class Fact:
    """key: of the recipe file ('makes', 'serves', 'tin'), 'oven', or '' for what no key holds.

    value: as the file will have it. heats: of an oven. reason: why no key holds it.
    """

    key: str
    value: str = ""
    heats: Heats | None = None
    reason: str = ""


def facts_of_cells(cells: tuple[str, ...], lore: Lore) -> tuple[Fact, ...]:
    """What a row of cells says: 'Tin' and '23 cm springform', or a fact in each."""
    if len(cells) > _MOST_CELLS:
        return ()
    each = [facts_in(cell, lore) or _time_of_cell(cell) for cell in cells]
    if len(cells) > 1 and all(each):
        return tuple(fact for facts in each for fact in facts)
    return facts_in(": ".join(cells), lore) if len(cells) == 2 else ()


def _time_of_cell(cell: str) -> tuple[Fact, ...]:
    """'Bake 20 minutes' beside other facts is none of the method's steps."""
    label, _, rest = cell.partition(" ")
    is_time = label.casefold().strip(":") in note_words().cell_times and _is_all_time(rest)
    return (Fact("", cell, reason=WORKED_OUT),) if is_time else ()


def facts_within(text: str, lore: Lore) -> tuple[Fact, ...]:
    """What parts of a sentence say of the whole, in brackets or between commas: 'cuts into 20'."""
    parts = [part.strip() for part in _PART_ENDS.split(text) if len(part.split()) <= _MOST_WORDS]
    found = [fact for part in parts for fact in (_portions(part, lore) or _weighed(part, lore))]
    found += [Fact("tin", said) for part in parts if part[:1].isdigit() and (said := known_tin(part, lore))]
    tin = tin_in(text, lore)
    return (*found, *((Fact("tin", tin.value),) if tin else ()))


def facts_in(text: str, lore: Lore) -> tuple[Fact, ...]:
    """What a whole line says about the recipe; nothing where it speaks of anything else."""
    words = text.split()
    if not words or len(words) > _MOST_TIME_WORDS:
        return ()
    if _NUTRITION.search(text):
        return (Fact("", text, reason="nutrition is worked out from the ingredients"),)
    if text.casefold().strip(" .:*!") in note_words().page_lines or _VOTES.search(text):
        return (Fact("", text, reason=NO_KEY),)
    if len(words) <= _MOST_WORDS:
        first, *more = (_portions(part, lore) for part in _LIST_ENDS.split(text))
        if first:
            return (*first, *(fact for facts in more for fact in facts if fact.key != first[0].key))
        fact = _oven(text) or _tin(text, lore)
        if fact is not None:
            return (fact,)
    return _unkept(text)


def _oven(text: str) -> Fact | None:
    """'Oven: 180 C', without a time, which would make a step of it."""
    heats = next(heats_in(text), None) if _lead("oven").match(text) else None
    return None if heats is None or next(times_in(text), None) else Fact("oven", heats=heats)


def _tin(text: str, lore: Lore) -> Fact | None:
    """'Tin: 23 cm springform', '2 lb loaf tin, lined'."""
    label = _TIN_LABEL.match(text)
    value = known_tin(text[label.end() :].partition(",")[0].strip(" ."), lore) if label else ""
    if value:
        return Fact("tin", value)
    tin = tin_in(text, lore)
    is_step = begins_with_verb(text) and not _lead("tin").match(text)
    return Fact("tin", tin.value) if tin and not is_step and _is_all_tin(text, tin) else None


@cache
def _lead(key: str) -> re.Pattern[str]:
    return _label(tuple(note_words().facts[key]))


@cache
def _label(words: tuple[str, ...]) -> re.Pattern[str]:
    """Any of the words at the beginning, with a colon or a blank behind it."""
    return re.compile(rf"(?:it |this |recipe )?(?:{any_of(words)})\b\s*[:=–-]?\s*", re.IGNORECASE)


def _portions(text: str, lore: Lore) -> tuple[Fact, ...]:
    """'makes 1 loaf, 10 slices', 'Yield: 16 bars', 'serves 8', '8 servings'."""
    makes = _lead("makes").match(text)
    if makes and text[makes.end() :]:
        rest = text[makes.end() :]
        return _fact("serves", served(rest)) if counts_portions(rest) else _fact("makes", made(rest, lore))
    serves = _lead("serves").match(text)
    if serves:
        return _fact("serves", served(text[serves.end() :]))
    return _fact("serves", served(text)) if counts_portions(text, whole=True) else ()


def _weighed(text: str, lore: Lore) -> tuple[Fact, ...]:
    """'2 x 900 g loaves' in a title."""
    return _fact("makes", made(text, lore)) if counts_weights(text) else ()


def _fact(key: str, value: str) -> tuple[Fact, ...]:
    return (Fact(key, value),) if value else ()


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


def _unkept(text: str) -> tuple[Fact, ...]:
    """'Prep Time: 20 minutes', 'Author: my aunt': what no key of a recipe file holds."""
    found = _label(tuple(note_words().unkept_labels)).match(text)
    if found is None or not (":" in found[0] or _is_all_time(text[found.end() :])):
        return ()
    about_time = next(times_in(text), None)
    reason = WORKED_OUT if about_time else NO_KEY
    return (Fact("", text, reason=reason),)
