"""The amounts of an ingredient line in notes: at its head, behind its name, in vessels, summed, twice."""

import re
from dataclasses import dataclass, field
from functools import lru_cache

from sitegen.notes.amounts_in_notes import RANGE, NotedAmount, amount_at, summed, unit_pattern
from sitegen.notes.names_in_notes import named
from sitegen.notes.values import Desk
from sitegen.notes.word_table import note_words

SIZES = frozenset({"small", "medium", "large", "extra large"})
_NEAR = frozenset({"about", "approx", "approximately", "around", "roughly", "circa", "ca", "another"})
_ALTERNATIVE = re.compile(r"\s*(?:/|=|or|,)\s*(?=[\d.½¼¾⅓⅔⅛])", re.IGNORECASE)
_MORE = re.compile(r"\s*(?:\+|plus|and|&)\s*(?=[\d.½¼¾⅓⅔⅛])", re.IGNORECASE)
_TIMES = re.compile(rf"(?P<count>{RANGE}) ?[x×*] ?(?=[\d.½¼¾⅓⅔⅛])", re.IGNORECASE)
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
_WORD_NUMBER = re.compile(
    r"(half an?|an?|one|two|three|four|five|six|seven|eight|nine|ten|twelve|a dozen|a couple of) ",
    re.IGNORECASE,
)
_BOTH_PARTS = re.compile(
    r"(?:finely |grated )*(zest (?:and|&|\+) juice|juice (?:and|&|\+) zest) (?:of )?(?P<rest>.+)",
    re.IGNORECASE,
)
_PART = re.compile(
    r"(?P<part>(?:finely |coarsely )?(?:grated )?(?:zest|juice|rind)) "
    r"(?!of\b)(?P<rest>(?:½|¼|\d|an? |half |one |two ).*)",
    re.IGNORECASE,
)


@dataclass
class Reading:
    """One line while it is read."""

    desk: Desk
    amounts: list[NotedAmount] = field(default_factory=list)
    tail: list[str] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)
    optional: bool = False
    vague: str = ""
    vessel: bool = False


def name_behind_amounts(head: str, reading: Reading) -> str:
    """The name, once the amounts at its head, at its end or in its middle are taken."""
    desk = reading.desk
    both = _BOTH_PARTS.fullmatch(head)
    if both:
        reading.tail.append(both.group(1).casefold())
        head = both["rest"]
    part = _PART.fullmatch(head)
    if part:
        return f"{part['part']} of {part['rest']}"
    body = _without_filling(_ARTICLE.sub("", head), reading)
    times = _TIMES.match(body)
    count = times["count"] if times else ""
    if times:
        body = body[times.end() :]
    found = amount_at(body, desk)
    if found:
        return _amounts_at_head(found[0], body[found[1] :], count, reading)
    body = _spoken_measure(body, reading)
    word = _WORD_NUMBER.match(body)
    measured = re.match(rf"{unit_pattern(desk)}\b\.?(?!['’\w])", body[word.end() :]) if word else None
    if (
        word
        and (measured or word.group(1).casefold() not in ("a", "an"))
        and word.group(1).casefold() in note_words().numbers
    ):
        number = note_words().numbers[word.group(1).casefold()]
        again = amount_at(f"{number} {body[word.end() :]}", desk)
        if again:
            return _amounts_at_head(again[0], f"{number} {body[word.end() :]}"[again[1] :], count, reading)
    return _amount_behind(body, reading)


def _spoken_measure(body: str, reading: Reading) -> str:
    """'a good pinch of salt' -> 'a pinch of salt', and 'good' behind the comma."""
    filling = "|".join(re.escape(word) for word in note_words().filling)
    found = re.match(
        rf"(?P<a>an?|one) (?P<filling>{filling}) (?P<unit>{unit_pattern(reading.desk)})\b",
        body,
        re.IGNORECASE,
    )
    if not found:
        return body
    _take_filling(found["filling"], reading)
    return f"{found['a'].replace('an', 'a')} {body[found.start('unit') :]}"


def _amounts_at_head(first: NotedAmount, rest: str, count: str, reading: Reading) -> str:
    """The amount at the head, its other measures and sums, the vessel that holds it, and what follows."""
    desk = reading.desk
    amount: NotedAmount | None = first.times(count) if count else first
    while more := (_MORE.match(rest) or _smaller_unit(amount, rest, desk)):
        found = amount_at(rest, desk, more.end())
        total = summed(amount, found[0], desk) if amount and found else None
        if not found or total is None:
            break
        amount, rest = total, rest[found[1] :]
    own = [amount] if amount else []
    while other := _ALTERNATIVE.match(rest):
        found = amount_at(rest, desk, other.end())
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


def _smaller_unit(amount: NotedAmount | None, rest: str, desk: Desk) -> re.Match[str] | None:
    """The blank between '1 lb' and '2 oz', which are one amount."""
    blank = _BLANK.match(rest)
    found = amount_at(rest, desk, blank.end()) if blank else None
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
    desk = reading.desk
    found = _amount_inside(unit_pattern(desk)).search(body)
    if found:
        filling = _filling_behind(body[: found.start()])
        name, rest = body[: found.start() - len(filling)].strip(), body[found.end() :].strip()
        for words in (filling.strip(), found["filling"] or ""):
            _take_filling(words.strip(), reading)
        amount = amount_at(f"{found['figure']} {found['unit']}", desk)
        left = _amounts_at_head(amount[0], rest, "", reading) if amount else rest
        if reading.vessel is False and left.casefold().strip(" .") in note_words().vessels:
            left = ""
        return f"{name} {left}".strip() if name else left
    count = _COUNT_BEHIND.fullmatch(body)
    is_told = count is not None and (count["by"] or is_known(count["name"], desk))
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
    filling = "|".join(re.escape(word) for word in note_words().filling)
    return re.compile(
        rf"(?<![\w.,/½¼¾⅓⅔⅛])(?P<figure>{RANGE}) (?P<filling>(?:{filling}) )?(?P<unit>{units})\b\.?(?!['’\w])"
    )


def _take_filling(word: str, reading: Reading) -> None:
    if word.casefold().strip(".") in _NEAR:
        reading.notes.append(word)
    elif word:
        reading.tail.append(word)


def _filling_behind(text: str) -> str:
    last = text.rstrip().rpartition(" ")[2]
    return text[text.rstrip().rfind(last) :] if last.casefold() in note_words().filling else ""


def _without_filling(rest: str, reading: Reading) -> str:
    """'heaped tsp cumin', 'about 150 g flour': the words before the measure go behind the comma."""
    while True:
        word, _, others = rest.partition(" ")
        if word.casefold().strip(".") not in note_words().filling or not others:
            return rest
        following = amount_at(others, reading.desk)
        starts_unit = re.match(rf"{unit_pattern(reading.desk)}\b", others)
        last = reading.amounts[0] if reading.amounts else None
        if starts_unit and last and not last.unit:
            behind = amount_at(f"{last.figure} {others}", reading.desk)
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


def is_known(name: str, desk: Desk) -> bool:
    return named(name, desk.context.tables.larder, desk.region).row is not None
