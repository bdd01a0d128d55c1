"""Short phrases: durations, yields, ovens, fills and batches."""

import re
from dataclasses import dataclass
from fractions import Fraction

from sitegen.faults import FaultCode, Place, Severity
from sitegen.kitchen.ovens import OvenOutOfRange
from sitegen.kitchen.ovens import read_oven as reading_of
from sitegen.kitchen.recipe import BatchAsk, BatchKind, IngredientLine, Makes, OvenSetting, Span
from sitegen.source.context import Context
from sitegen.source.lines import read_line
from sitegen.source.misread import Misread
from sitegen.source.numbers import number_at, whole_number
from sitegen.source.shares import WORDS
from sitegen.source.vessels import read_tin

DURATION = FaultCode(
    "duration",
    Severity.ERROR,
    "A time that cannot be put on a clock.",
    "Write `3 min`, `22-24 min`, `1 h 30 min`, `8-12 h` or `2 days`.",
    good="wait: 22-24 min",
    bad="wait: overnight",
)
YIELD = FaultCode(
    "yield",
    Severity.ERROR,
    "A yield that says neither how many of what, nor what weight.",
    "Write `12 cupcakes`, `12 rolls of 85 g` or `900 g`.",
    good="makes: 12 cupcakes",
    bad="makes: plenty",
)
OVEN = FaultCode(
    "oven",
    Severity.ERROR,
    "An oven setting that does not say which oven it is for, or that no oven has.",
    "Write `150 C fan`, `170 C conventional`, `350 F` or `gas 4`.",
    good="oven: 150 C fan",
    bad="oven: 150 C",
)
FILL = FaultCode(
    "fill",
    Severity.ERROR,
    "How full a tin is: a share of its depth, no more than all of it.",
    "Write `2/3` or `1/2`.",
    good="fill: 2/3",
    bad="fill: 3/2",
)
BATCH = FaultCode(
    "batch",
    Severity.ERROR,
    "A batch that says neither a count, nor a tin, nor how many times.",
    "Write `24 cupcakes`, `23 cm round`, `half`, `double`, `times 3/2` or `using 200 g butter`.",
    good="batches: [6 cupcakes,",
    bad="batches: [a heap,",
)
CODES = (DURATION, YIELD, OVEN, FILL, BATCH)

MINUTES = {
    **dict.fromkeys(("min", "mins", "minute", "minutes"), Fraction(1)),
    **dict.fromkeys(("s", "sec", "second", "seconds"), Fraction(1, 60)),
    **dict.fromkeys(("h", "hr", "hrs", "hour", "hours"), Fraction(60)),
    **dict.fromkeys(("day", "days"), Fraction(24 * 60)),
}
LONGEST_MIN = 60 * 24 * 60
TIMES = {"half": Fraction(1, 2), "double": Fraction(2), "treble": Fraction(3), "triple": Fraction(3)}
_UNIT_WORD = re.compile(r" ?([a-z]+) ?", re.IGNORECASE)
_OVEN = re.compile(
    r"(?P<degrees>\d{1,3}(?:\.\d)?) ?(?:°|degrees )? ?(?P<scale>[CF])(?: (?P<kind>fan|conventional))?",
    re.IGNORECASE,
)
_GAS = re.compile(r"gas(?: mark)? (?P<mark>\d{1,2}|1/2|1/4|½|¼)", re.IGNORECASE)
_EACH = re.compile(r"(?P<noun>.+?) of (?P<each>\d.*)", re.IGNORECASE)
_BETWEEN = re.compile(r"(?<=[a-z]) ?(?:[-–]|to) ?(?=\d)", re.IGNORECASE)
_NOUN = re.compile(r"[^\d\W][\w' -]*")


@dataclass(frozen=True)
class _Duration:
    span: Span
    end: int


def read_span_of_minutes(text: str, _at: Place | None = None) -> Span:
    """A duration in minutes, exact: '1 h 30 min' -> 90, '22-24 min' -> 22 to 24. Raises Misread.

    A range may have a unit at both ends: '45 min-1 h 15 min'.
    """
    ends = _BETWEEN.split(text)
    if len(ends) == 2:
        low, high = (_sum_of_parts(end).low for end in ends)
        if high <= low:
            raise _no_duration(text, "write the shorter time first")
        return Span(low, high)
    return _sum_of_parts(text)


def _sum_of_parts(text: str) -> Span:
    total: Span | None = None
    index = 0
    while index < len(text):
        part = _duration_at(text, index)
        if total is not None and (total.is_range or part.span.is_range):
            raise _no_duration(text, "a range stands alone: '8-12 h'")
        total = part.span if total is None else Span(total.low + part.span.low, total.high + part.span.high)
        index = part.end
    if total is None or total.high > LONGEST_MIN:
        raise _no_duration(text, "write it in minutes, hours or days, sixty days at most")
    return total


def _duration_at(text: str, index: int) -> _Duration:
    found = number_at(text, index)
    word = _UNIT_WORD.match(text, found.end) if found else None
    minutes = MINUTES.get(word.group(1).casefold()) if word else None
    if found is None or word is None or minutes is None:
        raise _no_duration(text, "write `3 min`, `22-24 min`, `1 h 30 min`, `8-12 h` or `2 days`")
    return _Duration(found.span.times(minutes), word.end())


def _no_duration(text: str, way_out: str) -> Misread:
    if "overnight" in text.casefold():
        way_out = "say how long: '8-12 h'"
    return Misread(DURATION, f"'{text}' cannot be put on a clock", way_out, 0, max(len(text), 1))


def read_makes(text: str, at: Place, context: Context) -> Makes:
    """A yield: '12 cupcakes', '12 rolls of 85 g', '900 g'. Raises Misread."""
    found = number_at(text)
    if found is None or found.span.is_range:
        raise _no_yield(text)
    rest = text[found.end :].strip()
    count, measures = found.span.low, context.tables.measures
    unit = measures.unit_named(rest)
    if unit is not None and measures.is_weight(unit):
        grams = _grams(text, context)
        return Makes(grams, "", grams, at)
    each = _EACH.fullmatch(rest)
    noun = each.group("noun") if each else rest
    if unit is not None or not _NOUN.fullmatch(noun):
        raise _no_yield(text)
    grams_each = _grams(each.group("each"), context) if each else None
    return Makes(count, noun, count * grams_each if grams_each else None, at)


def _grams(text: str, context: Context) -> Fraction:
    """A lone weight in grams."""
    found = number_at(text)
    unit = context.tables.measures.unit_named(text[found.end :].strip()) if found else None
    if found is None or unit is None or not context.tables.measures.is_weight(unit):
        raise _no_yield(text)
    return context.tables.measures.gram_factor(unit) * found.span.middle


def _no_yield(text: str) -> Misread:
    way_out = "write `12 cupcakes`, `12 rolls of 85 g` or `900 g`"
    return Misread(YIELD, f"'{text}' is no yield", way_out, 0, max(len(text), 1))


def read_oven(text: str, _at: Place, context: Context) -> OvenSetting:
    """An oven setting: '150 C fan', '350 F', 'gas 4'. Raises Misread."""
    setting = oven_in(text)
    if setting is None:
        raise Misread(OVEN, f"'{text}' is no oven setting", _oven_way_out(text), 0, max(len(text), 1))
    try:
        reading_of(setting, context.tables.ovens)
    except OvenOutOfRange as out:
        lowest, highest = int(out.lowest_c), int(out.highest_c)
        way_out = f"ovens go from {lowest} to {highest} C: is the scale right?"
        raise Misread(OVEN, f"no oven is set to '{text}'", way_out, 0, len(text)) from out
    return setting


def oven_in(text: str) -> OvenSetting | None:
    """The setting that a whole text states; None for anything else, and for Celsius that says no more."""
    gas = _GAS.fullmatch(text)
    if gas:
        mark = whole_number(gas.group("mark"))
        return OvenSetting(mark, "gas", fan=False) if mark is not None else None
    found = _OVEN.fullmatch(text)
    if found is None:
        return None
    is_celsius = found.group("scale").upper() == "C"
    kind = (found.group("kind") or "").casefold()
    if is_celsius and not kind:
        return None
    scale = "celsius" if is_celsius else "fahrenheit"
    return OvenSetting(Fraction(found.group("degrees")), scale, fan=kind == "fan")


def _oven_way_out(text: str) -> str:
    if _OVEN.fullmatch(text):
        return f"say which oven: '{text} fan' or '{text} conventional'"
    return "write `150 C fan`, `170 C conventional`, `350 F` or `gas 4`"


def read_fill(text: str, _at: Place | None = None) -> Fraction:
    """How full a tin is: over 0, at most 1. Raises Misread."""
    value = WORDS.get(text.casefold()) or whole_number(text)
    if value is None or not 0 < value <= 1:
        raise Misread(FILL, f"'{text}' is no share of a tin's depth", "write `2/3`", 0, max(len(text), 1))
    return value


def read_batch(text: str, at: Place, context: Context) -> BatchAsk:
    """A batch in the words of a baker. Raises Misread."""
    word, _, rest = text.partition(" ")
    if text.casefold() in TIMES:
        return BatchAsk(BatchKind.TIMES, times=TIMES[text.casefold()])
    if word.casefold() == "times":
        return BatchAsk(BatchKind.TIMES, times=_times(rest, text))
    if word.casefold() == "using":
        return BatchAsk(BatchKind.USING, using=_in_hand(rest, text, at, context))
    makes = _count(text, context)
    if makes is not None:
        return BatchAsk(BatchKind.MAKES, makes=makes)
    try:
        return BatchAsk(BatchKind.TIN, tin=read_tin(text, at, context))
    except Misread as problem:
        raise _no_batch(text) from problem


def _times(rest: str, text: str) -> Fraction:
    value = whole_number(rest.strip())
    if value is None:
        raise _no_batch(text)
    return value


def _in_hand(rest: str, text: str, at: Place, context: Context) -> IngredientLine:
    line = read_line(rest.strip(), at, context)
    if not isinstance(line, IngredientLine) or line.amount is None:
        raise _no_batch(text)
    return line


def _count(text: str, context: Context) -> Fraction | None:
    """'24 cupcakes' -> 24, '1.2 kg' -> 1,200; None where a tin is meant."""
    found = number_at(text)
    rest = text[found.end :].strip() if found else ""
    if found is None or found.span.is_range or not _NOUN.fullmatch(rest):
        return None
    measures = context.tables.measures
    unit = measures.unit_named(rest)
    if unit is not None and measures.is_weight(unit):
        return found.span.low * measures.gram_factor(unit)
    is_tin = measures.unit_named(rest.split(" ")[0]) is not None or rest.casefold().startswith("x ")
    shape_words = context.tables.tins.shape_written(rest) or context.tables.tins.tin_named(text)
    return None if is_tin or shape_words else found.span.low


def _no_batch(text: str) -> Misread:
    way_out = "write `24 cupcakes`, `23 cm round`, `half`, `double`, `times 3/2` or `using 200 g butter`"
    return Misread(BATCH, f"'{text}' is no batch", way_out, 0, max(len(text), 1))
