"""An ingredient line as it stands in notes -> its amounts, its name, and what stands around them."""

import re
from dataclasses import dataclass

from sitegen.notes.amounts_in_notes import NotedAmount, amount_at, spaced, spellings
from sitegen.notes.number_patterns import FIGURE
from sitegen.notes.short_forms import lengthened
from sitegen.notes.untidy_amounts import Reading, is_known, name_behind_amounts
from sitegen.notes.untidy_names import name_alone, without_measure
from sitegen.notes.values import Lore
from sitegen.notes.word_table import note_words
from sitegen.source.quantities import SMALLEST_MEASURES

_METRIC = frozenset({"g", "kg"})
_WEIGHTS = _METRIC | {"oz", "lb"}
_BRACKETS = re.compile(r"[(\[]([^()\[\]]*)[)\]]")
_COMMA = re.compile(r"(?P<comma>,(?!\d))|(?P<dash> [-–—] ?|[–—]|: ?| = |;)")
_MORE_FOR = re.compile(
    r"[,;]?\s*(?:\+|\bplus|\band)\s*(?=(?:an? )?(?:extra|more|a little|a bit|some)\b)", re.IGNORECASE
)
_PERCENT = re.compile(
    r",? ?(?:\bmin(?:imum|\.)? )?\b\d{1,3}(?:\.\d+)? ?%(?: cocoa(?: solids)?| fat| hydration)?", re.IGNORECASE
)
_IN_ANOTHER = re.compile(rf" (?=in {FIGURE})", re.IGNORECASE)
"""'½ tsp bicarb in 2 tbsp water': the water is no part of the name."""
_EACH = re.compile(r"\beach\b|\bper\b", re.IGNORECASE)


@dataclass(frozen=True)
class UntidyLine:
    """amounts: as found. vague: 'a handful' where no scale knows it. tail: what follows, in order.

    notes: what stood in brackets. optional: whether any of it said so.
    """

    name: str
    amounts: tuple[NotedAmount, ...] = ()
    vague: str = ""
    tail: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    optional: bool = False

    @property
    def amount(self) -> NotedAmount | None:
        """The one that the file will have: a metric weight where there is one, a weight, else the first."""
        metric = (one for one in self.amounts if one.key in _METRIC)
        weights = (one for one in self.amounts if one.key in _WEIGHTS)
        return next(metric, None) or next(weights, None) or next(iter(self.amounts), None)


def untidy_line(text: str, lore: Lore) -> UntidyLine:
    """text: without bullets. Each of its words is in the name, the amounts, the tail or a note."""
    reading = Reading(lore)
    body = _without_brackets(lengthened(spaced(text, lore), lore), reading)
    body = _IN_ANOTHER.sub(", ", _MORE_FOR.sub(", with ", body))
    body = _without_percents(body, reading)
    first, colon, rest = body.partition(":")
    if colon and _is_optional(first):
        reading.optional, body = True, rest
    head, tail = _cut(body, reading)
    name = without_measure(name_behind_amounts(head.strip(" ,.:;-–—"), reading), reading)
    for words in tail:
        _take_tail(words, reading)
    name = name_alone(name, reading)
    said = [words.strip(" .!") for words in reading.tail]
    is_loud = text.isupper()
    return UntidyLine(
        name=name,
        amounts=tuple(reading.amounts),
        vague=reading.vague,
        tail=tuple(words.lower() if is_loud else words for words in said if words),
        notes=tuple(note.lower() if is_loud else note for note in reading.notes if note),
        optional=reading.optional,
    )


def _without_percents(text: str, reading: Reading) -> str:
    """'dark chocolate, 70 %' -> 'dark chocolate', and '70 %' in a note; '2% milk' is a name of its own."""
    if is_known(text, reading.lore) or any(is_known(part, reading.lore) for part in _after_percents(text)):
        return text
    reading.notes += [" ".join(found[0].split()).strip(" ,") for found in _PERCENT.finditer(text)]
    return _PERCENT.sub(" ", text)


def _after_percents(text: str) -> list[str]:
    """From each share on, what follows the amount: '2% milk' of '200 ml 2% milk'."""
    return [text[found.start() :].strip() for found in _PERCENT.finditer(text)]


def _without_brackets(text: str, reading: Reading) -> str:
    """The text without what stands in brackets, which is an amount, a word such as 'optional', or a note."""

    def taken(found: re.Match[str]) -> str:
        _take_bracket(" ".join(found.group(1).split()), text[: found.start()], reading)
        return " "

    body = _BRACKETS.sub(taken, text)
    return " ".join(re.sub(r"[()\[\]]", ", ", body).split())


def _take_bracket(words: str, before: str, reading: Reading) -> None:
    amounts = _all_amounts(words, reading.lore)
    if amounts:
        count = amount_at(before.strip(), reading.lore)
        is_each = bool(_EACH.search(words)) and count is not None
        reading.amounts += [each for each in (_multiplied(one, count, is_each) for one in amounts) if each]
    elif _is_optional(words):
        reading.optional = True
    else:
        reading.notes.append(words)


def _multiplied(one: NotedAmount, count: tuple[NotedAmount, int] | None, is_each: bool) -> NotedAmount | None:
    return one.times(count[0].figure) if is_each and count else one


def _all_amounts(words: str, lore: Lore) -> list[NotedAmount]:
    """The amounts of which words consist, and of nothing else; none for any other words."""
    amounts = []
    plain = re.sub(
        r"\b(?:each|about|approx\.?|or|per \w+|total|in total)\b|[~≈]", " ", words, flags=re.IGNORECASE
    )
    for part in re.split(r"[;,/=]| or ", plain):
        part = " ".join(part.split()).strip(". ")
        if not part:
            continue
        found = amount_at(part, lore)
        if found is None or not found[0].unit or part[found[1] :].strip():
            return []
        amounts.append(found[0])
    return amounts


def _cut(body: str, reading: Reading) -> tuple[str, list[str]]:
    """What stands before the first comma or dash, and the parts behind; an amount behind a dash is taken."""
    parts, begin = [], 0
    for found in _COMMA.finditer(body):
        parts.append(body[begin : found.start()].strip())
        begin = found.end()
    parts.append(body[begin:].strip())
    parts = [part for part in parts if part]
    head = parts[0] if parts else ""
    alone = amount_at(head, reading.lore)
    if len(parts) > 1 and alone is not None and not head[alone[1] :].strip():
        return f"{head} {parts[1]}", parts[2:]
    return head, parts[1:]


def _take_tail(words: str, reading: Reading) -> None:
    """A part behind the comma: an amount that came late, 'optional', or how it comes."""
    if not reading.amounts:
        words = _without_late_amount(words, reading)
    if _is_optional(words):
        reading.optional = True
    elif words:
        reading.tail.append(words)


def _without_late_amount(words: str, reading: Reading) -> str:
    """'about 1 tbsp', '5 heaped tbsp', 'pinch', '2': taken; '2 halves' is no amount of the line."""
    if spellings(reading.lore).get(words, ("", ""))[1] in SMALLEST_MEASURES:
        words = f"1 {words}"
    alone = Reading(reading.lore)
    left = name_behind_amounts(words, alone)
    if not alone.amounts or not (alone.amounts[0].unit or not left):
        return words
    reading.amounts += alone.amounts
    reading.notes += alone.notes
    reading.tail += alone.tail
    return left


def _is_optional(words: str) -> bool:
    return words.casefold().strip(" .*!") in note_words().optional
