"""How many a recipe serves: '8', '8-10'."""

from fractions import Fraction

from sitegen.faults import FaultCode, Severity
from sitegen.kitchen.amounts import Span
from sitegen.source.misread import Misread
from sitegen.source.numbers import number_at

SERVES = FaultCode(
    "serves",
    Severity.ERROR,
    "How many a recipe serves is a whole number of portions, or two of them with a dash between.",
    "Write `serves: 8` or `serves: 8-10`, without a word behind it.",
    good="serves: 12",
    bad="serves: a crowd",
)
CODES = (SERVES,)
MOST = 10_000


def read_serves(text: str) -> Span:
    """Portions, whole numbers. Raises Misread."""
    found = number_at(text)
    if found is None or text[found.end :].strip():
        raise Misread(SERVES, f"'{text}' is no number of portions", "write it as 8 or 8-10", 0, len(text))
    if not _is_whole(found.span.low) or not _is_whole(found.span.high):
        raise Misread(SERVES, f"'{text}' portions cannot be served", "write a whole number", 0, len(text))
    return found.span


def _is_whole(portions: Fraction) -> bool:
    return portions.denominator == 1 and portions <= MOST
