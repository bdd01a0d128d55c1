"""Figures of a finding as a reader would write them: '180 g', '1 1/2 tsp', '22-24 min', '150 C fan'."""

from fractions import Fraction

from sitegen.kitchen.amounts import Amount, Span
from sitegen.kitchen.method import OvenSetting

_SCALES = {"celsius": "C", "fahrenheit": "F"}
_KILO_G = Fraction(1000)
_HOUR_MIN = 60
KEEPING_UNITS = (("months", 43200, 1), ("weeks", 10080, 2), ("days", 1440, 1))
"""How much of it is the least that is told in it."""


def number_text(value: Fraction) -> str:
    """'2', '1/2', '1 1/2'; '2.35' for what no spoon has."""
    if value.denominator == 1:
        return str(value.numerator)
    if value.denominator > 16:
        return f"{float(value):.4g}"
    whole, rest = divmod(value, 1)
    return f"{whole} {rest}" if whole else str(rest)


def span_text(span: Span) -> str:
    """'22' or '22-24'."""
    return f"{number_text(span.low)}-{number_text(span.high)}" if span.is_range else number_text(span.low)


def amount_text(amount: Amount) -> str:
    """'180 g'; '3' for a count; less than a kilo in grams."""
    if amount.unit == "kg" and amount.span.high < 1:
        return f"{span_text(amount.span.times(_KILO_G))} g"
    return f"{span_text(amount.span)} {amount.unit}".strip()


def minutes_text(span: Span) -> str:
    """'45 min', '38-42 min', '1 h 30 min', '8-12 h'; '30 s' below a minute."""
    if span.high < 1:
        return f"{span_text(span.times(Fraction(60)))} s"
    if span.is_range and span.high < 2 * _HOUR_MIN:
        return f"{span_text(span)} min"
    if span.is_range:
        return f"{span_text(span.times(Fraction(1, _HOUR_MIN)))} h"
    hours, minutes = divmod(span.low, _HOUR_MIN)
    texts = [f"{hours} h" if hours else "", f"{number_text(minutes)} min" if minutes else ""]
    return " ".join(text for text in texts if text)


def keeping_text(span: Span) -> str:
    """'12 h', '10 days', '3 weeks', '2 months', of minutes."""
    for title, minutes, least in KEEPING_UNITS:
        if span.low >= least * minutes and not span.low % minutes and not span.high % minutes:
            unit = title if span.high != minutes else title.removesuffix("s")
            return f"{span_text(span.times(Fraction(1, minutes)))} {unit}"
    return minutes_text(span)


def heat_text(span: Span, scale: str, fan: bool | None) -> str:
    """'150 C fan', 'gas 4', '350 F'."""
    if scale == "gas":
        return f"gas {span_text(span)}"
    kind = "" if fan is None else " fan" if fan else " conventional"
    return f"{span_text(span)} {_SCALES.get(scale, 'degrees')}{kind}"


def oven_text(oven: OvenSetting) -> str:
    """An oven's setting as written."""
    fan = None if oven.scale == "gas" else oven.fan
    return heat_text(Span(oven.degrees, oven.degrees), oven.scale, fan)
