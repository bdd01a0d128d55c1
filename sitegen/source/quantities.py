"""The amount at the head of an ingredient line: '150 g', '1 1/2 tbsp', 'a pinch of', 'half a', 'two'."""

import re
from fractions import Fraction

from sitegen.faults import FaultCode, Severity
from sitegen.kitchen.amounts import Amount, Span, single
from sitegen.source.context import Context
from sitegen.source.misread import Misread
from sitegen.source.names import known
from sitegen.source.numbers import Found, number_at
from sitegen.source.stretches import Stretch

NO_AMOUNT = FaultCode(
    "no-amount",
    Severity.ERROR,
    "An ingredient line that does not begin with an amount, and has nothing that says what it is for.",
    "Begin with the amount, or say after a comma what it is for: `plain flour, for dusting`.",
    good="150 g plain flour",
    bad="plain flour",
)
UNKNOWN_UNIT = FaultCode(
    "unknown-unit",
    Severity.ERROR,
    "A unit that no kitchen measures with, or that is misspelt.",
    "Use g, kg, ml, l, tsp, tbsp, cup, oz, lb or a count.",
    good="150 g plain flour",
    bad="150 grsm plain flour",
)
SECOND_AMOUNT = FaultCode(
    "second-amount",
    Severity.ERROR,
    "A second amount in an ingredient line: it would follow neither batch nor edition.",
    "Give one amount; the other measures are worked out. What goes elsewhere wants a line of its own.",
    good="150 g plain flour",
    bad="150 g plain flour, plus 20 g for the table",
)
CODES = (NO_AMOUNT, UNKNOWN_UNIT, SECOND_AMOUNT)

_COUNTED = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
NUMBER_WORDS = {
    **{word: count for count, word in enumerate(_COUNTED, 1)},
    **dict.fromkeys(("a", "an", "the"), 1),
    "a dozen": 12,
}
SMALLEST_MEASURES = frozenset({"pinch", "dash"})
_WORDED = re.compile(
    r"(half an?|" + "|".join(sorted(NUMBER_WORDS, key=len, reverse=True)) + r") ", re.IGNORECASE
)
_SIZES = re.compile(r"(extra[- ]large|very large|small|medium|large|xl) ", re.IGNORECASE)
_WORD = re.compile(r"[^\s,]+")
_SECOND = re.compile(r"(?:[x×+] ?|plus |and )(?=[\d½¼¾⅓⅔.])|[^\s\d]*/ ?\d", re.IGNORECASE)
_BEFORE_THE_AMOUNT = re.compile(r"([^\W\d]+\.?) (?=[\d½¼¾⅓⅔])")


def amount_at(head: Stretch, context: Context) -> tuple[Amount | None, Stretch]:
    """The amount that a stretch begins with, and what follows; None where there is none.

    A number without a unit is a count. Raises Misread for a bad number, a unit without a number, a word
    before the number, and a sum or a second measure.
    """
    worded = _WORDED.match(head.text)
    if worded:
        unit, rest = unit_at(head.after(worded.end()), context)
        return Amount(_said(worded.group(1)), unit), rest
    found = _number(head)
    if found is None:
        return _without_number(head, context)
    unit, rest = unit_at(head.after(found.end), context)
    _refuse_second(head, rest)
    return Amount(found.span, unit), rest


def _number(head: Stretch) -> Found | None:
    try:
        return number_at(head.text)
    except Misread as problem:
        raise problem.moved(head.start) from problem


def _said(word: str) -> Span:
    if word.casefold().startswith("half"):
        return single(Fraction(1, 2))
    return single(NUMBER_WORDS[word.casefold()])


def _without_number(head: Stretch, context: Context) -> tuple[Amount | None, Stretch]:
    """'pinch of salt' is one pinch; any other unit needs its number."""
    before = _BEFORE_THE_AMOUNT.match(head.text)
    if before:
        way_out = f"begin with the amount: '{head.text[before.end() :]}'"
        where = (head.start, head.start + len(before.group(1)))
        raise Misread(NO_AMOUNT, f"'{before.group(1)}' stands before the amount", way_out, *where)
    unit, rest = _any_unit_at(head, context)
    if unit in SMALLEST_MEASURES:
        return Amount(single(1), unit), rest
    if unit and known(rest, context) is not None:
        sentence, way_out = f"'{unit}' without a number", f"write how many: '1 {head.words}'"
        raise Misread(NO_AMOUNT, sentence, way_out, head.start, rest.start)
    return None, head


def _refuse_second(head: Stretch, rest: Stretch) -> None:
    """Raises Misread for '2 x 7 g', '1 cup plus 2 tbsp', '200 g/7 oz'."""
    found = _SECOND.match(rest.text)
    if found:
        sentence = "an amount here is one figure and one unit"
        raise Misread(SECOND_AMOUNT, sentence, "write it in one measure, best in grams", head.start, rest.end)


def unit_at(rest: Stretch, context: Context) -> tuple[str, Stretch]:
    """The unit behind a number ('' for a count), and what follows. Raises Misread for one of length."""
    unit, behind = _any_unit_at(rest, context)
    if unit and context.tables.measures.is_length(unit):
        word = rest.text[: behind.start - rest.start].rstrip()
        sentence = f"'{word}' measures a length, and no amount"
        way_out = "weigh it or count it, and say its size behind a comma: '20 g fresh ginger, a thumb long'"
        raise Misread(UNKNOWN_UNIT, sentence, way_out, rest.start, rest.start + len(word))
    return unit, behind


def _any_unit_at(rest: Stretch, context: Context) -> tuple[str, Stretch]:
    """The unit that a stretch begins with, and what follows. Two words first: 'fl oz'."""
    if known(rest, context) is not None:
        return "", rest
    words = [found for found, _ in zip(_WORD.finditer(rest.text), range(2), strict=False)]
    for word in reversed(words):
        unit = context.tables.measures.unit_named(rest.text[: word.end()])
        if unit is not None:
            return unit, rest.after(word.end())
    return "", rest


def size_at(name: Stretch, context: Context) -> tuple[str, Stretch]:
    """The size before a name ('medium eggs'), '' for none, and the name."""
    size = _SIZES.match(name.text)
    if size is None or known(name, context) is not None:
        return "", name
    return size.group(1).casefold().replace("-", " "), name.after(size.end())


def refuse_strange_unit(rest: Stretch, context: Context) -> None:
    """Raises Misread where a word that is no unit stands between a number and a known ingredient."""
    word = _WORD.match(rest.text)
    if word is None or known(rest, context) is not None or _SIZES.match(rest.text):
        return
    behind = rest.after(word.end())
    if behind.text and known(behind, context) is not None:
        near = context.tables.measures.near_unit(word.group(0))
        way_out = f"did you mean '{near}'?" if near else "use g, ml, tsp, tbsp, cup, oz, lb or a count"
        sentence = f"'{word.group(0)}' is no unit that we know"
        raise Misread(UNKNOWN_UNIT, sentence, way_out, rest.start, rest.start + word.end())
