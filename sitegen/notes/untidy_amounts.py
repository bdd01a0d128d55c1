"""The amounts of an ingredient line in notes: at its head, behind its name, in vessels, summed, twice."""

import re
from dataclasses import dataclass, field
from functools import cache, lru_cache

from sitegen.film.number_words import ARTICLES
from sitegen.notes.amounts_in_notes import NotedAmount, amount_at, summed, unit_pattern
from sitegen.notes.names_in_notes import named
from sitegen.notes.number_patterns import FIGURE, RANGE, number_word, number_words
from sitegen.notes.values import Lore
from sitegen.notes.word_table import any_of, note_words

_NEED_A_UNIT = ARTICLES | {"half", "quarter"}
"""Words that stand for a number only before a unit."""
SIZES = frozenset({"small", "medium", "large", "extra large"})
_ALTERNATIVE = re.compile(rf"\s*(?:/|=|or|,)\s*(?=\.?{FIGURE})", re.IGNORECASE)
_MORE = re.compile(rf"\s*(?:\+|plus|and|&)\s*(?=\.?{FIGURE})", re.IGNORECASE)
_TIMES = re.compile(rf"(?P<count>{RANGE}) ?[x×*] ?(?=\.?{FIGURE})", re.IGNORECASE)
_TIMES_BEHIND = re.compile(r"(?:^|,? )[x×] ?(?P<count>\d{1,3})\b", re.IGNORECASE)
_COUNT_BEHIND = re.compile(
    r"(?P<name>\D+?) (?P<by>[x×] ?)?(?P<count>\d{1,3})(?P<rest>(?: .*)?)", re.IGNORECASE
)
_EACH_ONE = re.compile(r"\s*(?:each|ea)\b\.? (?!of\b)", re.IGNORECASE)
_BLANK = re.compile(r"\s+")
_PAIRS = frozenset({("lb", "oz"), ("kg", "g"), ("l", "ml"), ("pint", "floz")})
"""A unit and the smaller one in which the rest of an amount is given."""
_ARTICLE = re.compile(r"^an? (?=\d)", re.IGNORECASE)
_OF = re.compile(r"(?:of )?(?:the )?", re.IGNORECASE)
_BOTH_PARTS = re.compile(
    r"(?:finely |grated )*(zest (?:and|&|\+) juice|juice (?:and|&|\+) zest) (?:of )?(?P<rest>.+)",
    re.IGNORECASE,
)


@dataclass
class Reading:
    """One line while it is read."""

    lore: Lore
    amounts: list[NotedAmount] = field(default_factory=list)
    tail: list[str] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)
    optional: bool = False
    vague: str = ""
    vessel: bool = False


def name_behind_amounts(head: str, reading: Reading) -> str:
    """The name, once the amounts at its head, at its end or in its middle are taken."""
    lore = reading.lore
    both = _BOTH_PARTS.fullmatch(head)
    if both:
        reading.tail.append(both.group(1).casefold())
        head = both["rest"]
    part = _part().fullmatch(head)
    if part:
        return f"{part['part']} of {part['rest']}"
    body = _without_filling(_ARTICLE.sub("", head), reading)
    times = _TIMES.match(body)
    count = times["count"] if times else ""
    if times:
        body = body[times.end() :]
    found = amount_at(body, lore)
    if found:
        return _amounts_at_head(found[0], body[found[1] :], count, reading)
    body = _spoken_measure(body, reading)
    figured = _with_figure(body, lore)
    worded = amount_at(figured, lore)
    if worded:
        return _amounts_at_head(worded[0], figured[worded[1] :], count, reading)
    return _amount_behind(body, reading)


@cache
def _part() -> re.Pattern[str]:
    """'zest 1 lemon', 'finely grated juice of half a lime' without its 'of'."""
    return re.compile(
        rf"(?P<part>(?:finely |coarsely )?(?:grated )?(?:zest|juice|rind)) (?!of\b)"
        rf"(?P<rest>(?:{FIGURE}|half |(?:{number_word()}) ).*)",
        re.IGNORECASE,
    )


def _with_figure(body: str, lore: Lore) -> str:
    """'two eggs' -> '2 eggs'; 'a lemon' and 'half the flour' stay, since no unit follows."""
    said = re.match(rf"({number_word()}) ", body, re.IGNORECASE)
    if not said:
        return body
    rest = body[said.end() :]
    if said[1].casefold() in _NEED_A_UNIT and not re.match(rf"{unit_pattern(lore)}\b\.?(?!['’\w])", rest):
        return body
    return f"{number_words()[said[1].casefold()]} {rest}"


def _spoken_measure(body: str, reading: Reading) -> str:
    """'a good pinch of salt' -> 'a pinch of salt', and 'good' behind the comma."""
    found = re.match(
        rf"(?P<a>an?|one) (?P<filling>{_filling()}) (?P<unit>{unit_pattern(reading.lore)})\b",
        body,
        re.IGNORECASE,
    )
    if not found:
        return body
    _take_filling(found["filling"], reading)
    return f"{found['a'].replace('an', 'a')} {body[found.start('unit') :]}"


def _amounts_at_head(first: NotedAmount, rest: str, count: str, reading: Reading) -> str:
    """The amount at the head, its other measures and sums, the vessel that holds it, and what follows."""
    lore = reading.lore
    amount: NotedAmount | None = first.times(count) if count else first
    while more := (_MORE.match(rest) or _smaller_unit(amount, rest, lore)):
        found = amount_at(rest, lore, more.end())
        total = summed(amount, found[0], lore) if amount and found else None
        if not found or total is None:
            break
        amount, rest = total, rest[found[1] :]
    own = [amount] if amount else []
    while other := _ALTERNATIVE.match(rest):
        found = amount_at(rest, lore, other.end())
        if not found or not found[0].unit:
            break
        own.append(found[0])
        rest = rest[found[1] :]
    reading.amounts[:0] = own
    each = _EACH_ONE.match(rest)
    if each:
        reading.tail.append("each")
        rest = rest[each.end() :]
    rest = _without_vessel(rest.strip(), reading)
    behind = _TIMES_BEHIND.search(rest)
    if behind and amount:
        product = amount.times(behind["count"])
        reading.amounts[0] = product or amount
        rest = rest[: behind.start()] + rest[behind.end() :]
    return without_of(_without_filling(rest.strip(), reading))


def _smaller_unit(amount: NotedAmount | None, rest: str, lore: Lore) -> re.Match[str] | None:
    """The blank between '1 lb' and '2 oz', which are one amount."""
    blank = _BLANK.match(rest)
    found = amount_at(rest, lore, blank.end()) if blank else None
    pair = (amount.key, found[0].key) if amount and found else ("", "")
    return blank if pair in _PAIRS else None


def _without_vessel(rest: str, reading: Reading) -> str:
    """'tins chopped tomatoes' behind a weight -> 'chopped tomatoes'."""
    word, _, others = rest.partition(" ")
    is_vessel = word.casefold().strip(".,") in note_words().vessels
    weighed = [one for one in reading.amounts if one.unit]
    if not (is_vessel and others and weighed):
        return rest
    bare = [one for one in reading.amounts if not one.unit]
    if bare and len(weighed) == 1 and bare[0].figure != "1":
        product = weighed[0].times(bare[0].figure)
        weighed = [product] if product else weighed
    reading.amounts[:] = weighed
    reading.vessel = True
    return others


def _amount_behind(body: str, reading: Reading) -> str:
    """'strong white flour 500 g', 'instant yeast 7 g sachet x 1', 'eggs 2'."""
    lore = reading.lore
    found = _amount_inside(unit_pattern(lore)).search(body)
    if found:
        filling = _filling_behind(body[: found.start()])
        name, rest = body[: found.start() - len(filling)].strip(), body[found.end() :].strip()
        for words in (filling.strip(), found["filling"] or ""):
            _take_filling(words.strip(), reading)
        amount = amount_at(f"{found['figure']} {found['unit']}", lore)
        left = _amounts_at_head(amount[0], rest, "", reading) if amount else rest
        if reading.vessel is False and left.casefold().strip(" .") in note_words().vessels:
            left = ""
        return f"{name} {left}".strip() if name else left
    count = _COUNT_BEHIND.fullmatch(body)
    is_told = count is not None and (count["by"] or is_known(count["name"], lore))
    is_told = is_told and not re.search(r"\d", count["rest"] if count else "")
    if count is not None and is_told:
        reading.amounts.insert(0, NotedAmount(count["count"]))
        size = count["rest"].strip()
        if size.casefold() in SIZES:
            return f"{size.casefold()} {count['name']}"
        if size:
            reading.tail.append(size)
        return count["name"]
    return body


@lru_cache(maxsize=4)
def _amount_inside(units: str) -> re.Pattern[str]:
    """An amount with a unit anywhere in a line, with a word between them such as 'heaped'."""
    return re.compile(
        rf"(?<![\w.,/])(?P<figure>{RANGE}) (?P<filling>(?:{_filling()}) )?(?P<unit>{units})\b\.?(?!['’\w])"
    )


@cache
def _filling_words() -> frozenset[str]:
    """How a measure is filled, and how near it is."""
    return frozenset((*note_words().filling, *note_words().near))


@cache
def _filling() -> str:
    return any_of(_filling_words())


def _take_filling(word: str, reading: Reading) -> None:
    """How near goes into a note, how full behind the comma."""
    if word.casefold().strip(".") in note_words().near:
        reading.notes.append(word)
    elif word:
        reading.tail.append(word)


def _filling_behind(text: str) -> str:
    last = text.rstrip().rpartition(" ")[2]
    return text[text.rstrip().rfind(last) :] if last.casefold() in _filling_words() else ""


def _without_filling(rest: str, reading: Reading) -> str:
    """'heaped tsp cumin', 'about 150 g flour': the words before the measure go behind the comma."""
    while True:
        word, _, others = rest.partition(" ")
        if word.casefold().strip(".") not in _filling_words() or not others:
            return rest
        following = amount_at(others, reading.lore)
        starts_unit = re.match(rf"{unit_pattern(reading.lore)}\b", others)
        last = reading.amounts[0] if reading.amounts else None
        if starts_unit and last and not last.unit:
            behind = amount_at(f"{last.figure} {others}", reading.lore)
            if behind and behind[0].unit:
                reading.amounts[0] = behind[0]
                others = f"{last.figure} {others}"[behind[1] :].strip()
        elif not following:
            return rest
        _take_filling(word, reading)
        rest = without_of(others)


def without_of(rest: str) -> str:
    found = _OF.match(rest)
    return rest[found.end() :] if found and rest.casefold().startswith("of ") else rest


def is_known(name: str, lore: Lore) -> bool:
    return named(name, lore.context.tables.larder, lore.region).row is not None
