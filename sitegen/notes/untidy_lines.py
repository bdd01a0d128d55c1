"""An ingredient line as it stands in notes -> its amounts, its name, and what stands around them."""

import re
from dataclasses import dataclass
from functools import cache

from sitegen.notes.amounts_in_notes import NotedAmount, amount_at, spaced
from sitegen.notes.names_in_notes import named
from sitegen.notes.untidy_amounts import Reading, is_known, name_behind_amounts, without_of
from sitegen.notes.values import Desk
from sitegen.notes.word_table import note_words

_METRIC = frozenset({"g", "kg"})
_WEIGHTS = _METRIC | {"oz", "lb"}
_BRACKETS = re.compile(r"[(\[]([^()\[\]]*)[)\]]")
_COMMA = re.compile(r"(?P<comma>,(?!\d))|(?P<dash> [-–—] ?|[–—]|: ?| = |;)")
_MORE_FOR = re.compile(
    r"[,;]?\s*(?:\+|\bplus|\band)\s*(?=(?:an? )?(?:extra|more|a little|a bit|some)\b)", re.IGNORECASE
)
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


def untidy_line(text: str, desk: Desk) -> UntidyLine:
    """text: without bullets. Each of its words is in the name, the amounts, the tail or a note."""
    reading = Reading(desk)
    body = _without_brackets(_lengthened(spaced(text, desk)), reading)
    body = _MORE_FOR.sub(", with ", body)
    head, tail = _cut(body, reading)
    name = _vague(_counted_in(name_behind_amounts(head.strip(" ,.:;-–—"), reading), reading), reading)
    for words in tail:
        _take_tail(words, reading)
    name = _end_words(name, reading)
    return UntidyLine(
        name=" ".join(name.split()).strip(" ,.:;-–—*!?"),
        amounts=tuple(reading.amounts),
        vague=reading.vague,
        tail=tuple(words.strip(" .!") for words in reading.tail if words.strip(" .!")),
        notes=tuple(note for note in reading.notes if note),
        optional=reading.optional,
    )


def _lengthened(text: str) -> str:
    """'2 lge eggs' -> '2 large eggs'."""
    short = {word.casefold(): words for word, words in note_words().short.items()}
    text = re.sub(r"\bof the (?=[\d½¼¾])", "of ", text)
    text = re.sub(r"^(?:pared )?(?:peel|rind) of ", "zest of ", text, flags=re.IGNORECASE)
    return " ".join(
        short.get(word.casefold().rstrip("."), short.get(word.casefold(), word)) for word in text.split()
    )


def _without_brackets(text: str, reading: Reading) -> str:
    """The text without what stands in brackets, which is an amount, a word such as 'optional', or a note."""

    def taken(found: re.Match[str]) -> str:
        _take_bracket(" ".join(found.group(1).split()), text[: found.start()], reading)
        return " "

    body = _BRACKETS.sub(taken, text)
    return " ".join(re.sub(r"[()\[\]]", ", ", body).split())


def _take_bracket(words: str, before: str, reading: Reading) -> None:
    amounts = _all_amounts(words, reading.desk)
    if amounts:
        count = amount_at(before.strip(), reading.desk)
        is_each = bool(_EACH.search(words)) and count is not None
        reading.amounts += [each for each in (_multiplied(one, count, is_each) for one in amounts) if each]
    elif _is_optional(words):
        reading.optional = True
    else:
        reading.notes.append(words)


def _multiplied(one: NotedAmount, count: tuple[NotedAmount, int] | None, is_each: bool) -> NotedAmount | None:
    return one.times(count[0].figure) if is_each and count else one


def _all_amounts(words: str, desk: Desk) -> list[NotedAmount]:
    """The amounts of which words consist, and of nothing else; none for any other words."""
    amounts = []
    plain = re.sub(
        r"\b(?:each|about|approx\.?|or|per \w+|total|in total)\b|[~≈]", " ", words, flags=re.IGNORECASE
    )
    for part in re.split(r"[;,/=]| or ", plain):
        part = " ".join(part.split()).strip(". ")
        if not part:
            continue
        found = amount_at(part, desk)
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
    alone = amount_at(head, reading.desk)
    if len(parts) > 1 and alone is not None and not head[alone[1] :].strip():
        return f"{head} {parts[1]}", parts[2:]
    return head, parts[1:]


def _take_tail(words: str, reading: Reading) -> None:
    """A part behind the comma: an amount that came late, 'optional', or how it comes."""
    desk = reading.desk
    late = amount_at(words, desk)
    if late and (late[0].unit or not words[late[1] :].strip()) and not reading.amounts:
        reading.amounts.append(late[0])
        words = words[late[1] :].strip()
    if _is_optional(words):
        reading.optional = True
    elif words:
        reading.tail.append(words)


def _is_optional(words: str) -> bool:
    return words.casefold().strip(" .*!") in note_words().optional


@cache
def _vague_pattern() -> re.Pattern[str]:
    measures = (*note_words().vague, *note_words().vessels)
    words = "|".join(sorted((re.escape(word) for word in measures), key=len, reverse=True))
    lead = r"(?:(?:an?|the|some|few|good|big|large|small|generous|tiny|little|½|1|2|3|half|two|three) )*"
    return re.compile(rf"(?P<vague>{lead}(?:{words})(?: more)?)(?: of)? (?P<rest>.+)", re.IGNORECASE)


def _counted_in(name: str, reading: Reading) -> str:
    """'3 balls stem ginger': of what the larder weighs by the piece the word goes behind the comma."""
    word, _, rest = name.partition(" ")
    rest = without_of(rest)
    if word.casefold() not in note_words().counted or not reading.amounts or reading.amounts[0].unit:
        return name
    found = named(rest, reading.desk.context.tables.larder, reading.desk.region)
    if found.row is None or is_known(name, reading.desk):
        return name
    if found.row.piece("") is None:
        reading.vague = f"{reading.amounts.pop(0).figure} {word}"
    else:
        reading.tail.insert(0, word)
    return rest


def _vague(name: str, reading: Reading) -> str:
    """'handful of walnuts' -> 'walnuts', and 'handful' kept."""
    found = _vague_pattern().fullmatch(name)
    if not found or any(one.unit for one in reading.amounts):
        return name
    if reading.amounts and not reading.amounts[0].unit:
        first = reading.amounts.pop(0)
        reading.vague = f"{first.figure} {found['vague']}"
    else:
        reading.vague = found["vague"]
    return found["rest"]


def _end_words(name: str, reading: Reading) -> str:
    """'salt to taste', 'walnuts optional' -> the name alone."""
    words = note_words()
    for ending in (*words.optional, *words.to_taste):
        if name.casefold().endswith(f" {ending}"):
            if ending in words.optional:
                reading.optional = True
            else:
                reading.tail.append(ending)
            return name[: -len(ending) - 1]
    return name
