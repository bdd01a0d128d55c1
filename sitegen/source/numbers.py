"""Numbers as bakers write them: '150', '1.5', '3/4', '1 1/2', '½', '1½', '10-12', '22 to 24'."""

import re
from dataclasses import dataclass
from fractions import Fraction

from sitegen.faults import FaultCode, Severity
from sitegen.kitchen.amounts import Span
from sitegen.source.misread import Misread

GLYPHS = {
    "½": Fraction(1, 2),
    "⅓": Fraction(1, 3),
    "⅔": Fraction(2, 3),
    "¼": Fraction(1, 4),
    "¾": Fraction(3, 4),
    "⅕": Fraction(1, 5),
    "⅖": Fraction(2, 5),
    "⅗": Fraction(3, 5),
    "⅘": Fraction(4, 5),
    "⅙": Fraction(1, 6),
    "⅚": Fraction(5, 6),
    "⅛": Fraction(1, 8),
    "⅜": Fraction(3, 8),
    "⅝": Fraction(5, 8),
    "⅞": Fraction(7, 8),
}
_GLYPH = "[" + "".join(GLYPHS) + "]"
_SLASH = "[/⁄]"
_FORMS = (
    rf"\d{{1,9}} {{1,2}}\d{{1,4}}{_SLASH}\d{{1,4}}",  # 1 1/2
    rf"\d{{1,9}}{_SLASH}\d{{1,4}}",  # 3/4
    rf"\d{{1,9}} ?{_GLYPH}",  # 1½
    _GLYPH,
    r"\d{1,9}(?:\.\d{1,6})?",  # 150, 1.5
    r"\.\d{1,6}",  # .5
)
_ONE = "(?:" + "|".join(_FORMS) + ")"
_NUMBER = re.compile(rf"({_ONE})(?:(?: ?[-–—] ?| to )({_ONE}))?")
_COMMA_DECIMAL = re.compile(r"(\d{1,9}),(\d{1,3})(?!\d)")
_MINUS = re.compile(r"[-–−] ?\d[\d.,/]{0,12}")
_PARTS = re.compile(rf"(?:(\d+) +)?(\d+){_SLASH}(\d+)")

BACKWARDS_RANGE = FaultCode(
    "backwards-range",
    Severity.ERROR,
    "A range whose first figure is the larger one.",
    "Write the smaller figure first.",
    good="wait: 22-24 min",
    bad="wait: 24-22 min",
)
NO_NUMBER = FaultCode(
    "not-a-number",
    Severity.ERROR,
    "A figure that is no amount: nothing, less than nothing, or more digits than any kitchen needs.",
    "Write the amount that goes in.",
    good="150 g plain flour",
    bad="0 g plain flour",
)
COMMA_DECIMAL = FaultCode(
    "comma-decimal",
    Severity.ERROR,
    "A comma inside a number; in an ingredient line a comma begins the preparation.",
    "Write the decimal with a point, and thousands without any mark.",
    good="150 g plain flour",
    bad="1,5 kg plain flour",
)

CODES = (BACKWARDS_RANGE, NO_NUMBER, COMMA_DECIMAL)


@dataclass(frozen=True)
class Found:
    """A number or range at the head of a text, and the index where the rest begins."""

    span: Span
    end: int


def number_at(text: str, start: int = 0) -> Found | None:
    """The number or range that begins at `start`; None where none does.

    Exact. Raises Misread for a range backwards, for what is no amount, and for a comma in a number.
    """
    _refuse_comma(text, start)
    minus = _MINUS.match(text, start)
    if minus:
        raise _no_amount(minus.group(0), minus.span())
    found = _NUMBER.match(text, start)
    if not found:
        return None
    if text[found.end() : found.end() + 1].isdigit():
        raise _no_amount(text[start : found.end() + 1] + "...", (start, found.end() + 1))
    low = _value(found.group(1), found.span(1))
    high = _value(found.group(2), found.span(2)) if found.group(2) else low
    if high < low:
        way_out = f"write '{found.group(2)}-{found.group(1)}'"
        raise Misread(BACKWARDS_RANGE, f"'{found.group(0)}' runs backwards", way_out, *found.span())
    return Found(Span(low, high), found.end())


def whole_number(text: str, start: int = 0) -> Fraction | None:
    """A text that from `start` on is one number and nothing else, exact; None for anything else."""
    found = number_at(text, start)
    whole = found is not None and found.end == len(text) and not found.span.is_range
    return found.span.low if found is not None and whole else None


def _value(text: str, where: tuple[int, int]) -> Fraction:
    value = _unchecked(text)
    if value is None or value <= 0:
        raise _no_amount(text, where)
    return value


def _no_amount(text: str, where: tuple[int, int]) -> Misread:
    return Misread(NO_NUMBER, f"'{text}' is no amount", "write how much it is", *where)


def _refuse_comma(text: str, start: int) -> None:
    """Raises Misread for '1,5'; for '1,500' with both figures that may be meant."""
    found = _COMMA_DECIMAL.match(text, start)
    if not found:
        return
    whole, decimals = found.groups()
    way_out = f"write '{whole}.{decimals}'"
    if len(decimals) == 3:
        way_out = f"write '{whole}{decimals}', or '{whole}.{decimals}' if that is meant"
    raise Misread(COMMA_DECIMAL, f"'{found.group(0)}' has a comma in it", way_out, *found.span())


def _unchecked(text: str) -> Fraction | None:
    if text[-1] in GLYPHS:
        return int(text[:-1].strip() or 0) + GLYPHS[text[-1]]
    parts = _PARTS.fullmatch(text)
    if not parts:
        return Fraction(text)
    whole, over, under = (int(part or 0) for part in parts.groups())
    return whole + Fraction(over, under) if under else None
