"""Percentages: '5 %' -> 1/20."""

from fractions import Fraction

from sitegen.faults import FaultCode, Severity
from sitegen.source.misread import Misread
from sitegen.source.numbers import number_at

PERCENT = FaultCode(
    "percent",
    Severity.ERROR,
    "A percentage that is none: a number over 0 and a percent sign, and no more than the key can mean.",
    "Write it as 5 %.",
    good="spare: 5 %",
    bad="spare: 1/20",
)
CODES = (PERCENT,)

WHOLE = Fraction(100)


def read_percent(text: str, most: Fraction = WHOLE) -> Fraction:
    """A percentage as a share, exact: '5 %' -> 1/20. most: the highest that is taken. Raises Misread."""
    found = number_at(text)
    if found is None or found.span.is_range or text[found.end :].strip() != "%":
        raise Misread(PERCENT, f"'{text}' is no percentage", "write it as 5 %", 0, max(len(text), 1))
    if found.span.low > most:
        raise Misread(PERCENT, f"'{text}' is too much", f"at most {most} %", 0, len(text))
    return found.span.low / 100
