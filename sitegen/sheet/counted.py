"""What is counted: lemons, bananas, bay leaves, leaves of gelatine, packets of yeast."""

from fractions import Fraction

from sitegen.kitchen.amounts import Span
from sitegen.kitchen.rounding import to_step
from sitegen.sheet.amounts import fraction_text, grams_text, span_text, with_unit
from sitegen.sheet.asks import Ask, Measured
from sitegen.sheet.leaf_words import is_in_leaves, leaf_word
from sitegen.sheet.setting import Setting
from sitegen.sheet.weights import in_grams, weighed

HALF, QUARTER = Fraction(1, 2), Fraction(1, 4)
SETTING_LIMIT = Fraction(5, 100)
"""How far off a count of what sets or raises may be; beyond it the weight is printed (common practice)."""


def counted(ask: Ask, exact: Span | None, setting: Setting) -> Measured:
    """A count to halves, rounded up, as a lemon is cut: 1.2 -> 1½.

    exact: grams. What would rather be weighed, a banana, has its weight beside where the count is no longer
    exact; gelatine and yeast are counted only where that is near enough.
    """
    if ask.is_fine and exact is not None:
        return _counted_fine(ask, exact, setting)
    wanted = ask.amount.span.times(ask.factor)
    printed = Span(_up_to_half(wanted.low), _up_to_half(wanted.high))
    is_weighed = exact is not None and ask.row is not None and ask.row.measured_by != "piece"
    beside = grams_text(in_grams(ask, exact)) if exact and is_weighed and printed != wanted else ""
    return Measured(_text(ask, printed, setting), beside, exact.middle if exact else None, count=printed.high)


def _counted_fine(ask: Ask, exact: Span, setting: Setting) -> Measured:
    """Leaves to the quarter, as scissors cut them, packets to the half; by weight where that is too far off.

    The weight stands beside, since a leaf of another grade has another and sets alike.
    """
    step = QUARTER if is_in_leaves(ask.row, ask.amount.unit) else HALF
    wanted = ask.amount.span.times(ask.factor)
    printed = Span(*(max(to_step(end, step), step) for end in (wanted.low, wanted.high)))
    grams = exact.middle * printed.middle / wanted.middle
    if abs(grams - exact.middle) > SETTING_LIMIT * exact.middle:
        return weighed(ask, exact, setting.edition)
    beside = grams_text(in_grams(ask, exact))
    return Measured(_text(ask, printed, setting), beside, exact.middle, grams, printed.high)


def _text(ask: Ask, printed: Span, setting: Setting) -> str:
    number = span_text(fraction_text(printed.low), fraction_text(printed.high))
    word = _unit_word(ask, printed.high, setting)
    return with_unit(number, word) if word else number


def _unit_word(ask: Ask, count: Fraction, setting: Setting) -> str:
    unit = ask.amount.unit
    if is_in_leaves(ask.row, unit):
        return leaf_word(ask.row, count, setting.edition.region)
    return f"{unit}s" if unit and count > 1 else unit


def _up_to_half(count: Fraction) -> Fraction:
    return Fraction(-(-count * 2 // 1), 2)
