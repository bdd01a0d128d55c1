"""Numbers, times and weights of a recipe as a baker writes them: exact, in the units that `source/` reads."""

from collections.abc import Mapping
from fractions import Fraction

from sitegen.kitchen.amounts import Span
from sitegen.kitchen.measures import Measures

_MOST_DECIMALS = 6
_MOST_PART = 9999
"""Of a fraction, above and below: what `source/numbers.py` reads."""
_DAY_MIN, _HOUR_MIN = 24 * 60, 60
_KEEPING_HOURS = {"month": 720, "week": 168, "day": 24}
_WEIGHTS = ("g", "kg", "oz", "lb")


class NoFigure(Exception):
    """A number that no recipe file can hold exactly."""

    def __init__(self, value: Fraction) -> None:
        super().__init__(value)
        self.value = value


def number_text(value: Fraction) -> str:
    """'12', '0.1', '3/4', '1 1/2': exact. Raises NoFigure."""
    if value.denominator == 1:
        return str(value.numerator)
    scaled = value * 10**_MOST_DECIMALS
    if value.denominator not in (2, 3, 4, 8) and scaled.denominator == 1:
        return f"{value.numerator / value.denominator:.{_MOST_DECIMALS}f}".rstrip("0")
    whole, part = divmod(value.numerator, value.denominator)
    if part > _MOST_PART or value.denominator > _MOST_PART:
        raise NoFigure(value)
    fraction = f"{part}/{value.denominator}"
    return f"{whole} {fraction}" if whole else fraction


def span_text(span: Span) -> str:
    """'12', '22-24'. Raises NoFigure."""
    low = number_text(span.low)
    return f"{low}-{number_text(span.high)}" if span.is_range else low


def minutes_text(span: Span) -> str:
    """A duration in minutes as '3 min', '1 h 30 min', '8-12 h', '2 days'. Raises NoFigure."""
    if _all_whole(span, _DAY_MIN):
        days = span.times(Fraction(1, _DAY_MIN))
        return f"{span_text(days)} {'day' if days.high == 1 else 'days'}"
    if _all_whole(span, _HOUR_MIN):
        return f"{span_text(span.times(Fraction(1, _HOUR_MIN)))} h"
    hours, rest = divmod(span.low, _HOUR_MIN)
    if not span.is_range and hours and rest.denominator == 1:
        return f"{hours} h {rest} min"
    if span.low.denominator != 1 and _all_whole(span, Fraction(1, 60)):
        return f"{span_text(span.times(Fraction(60)))} s"
    return f"{span_text(span)} min"


def keeping_text(hours: Span) -> str:
    """How long something keeps: '12 h', '2 days', '1 week', '2 months'. Raises NoFigure."""
    for unit, length in _KEEPING_HOURS.items():
        if _all_whole(hours, length):
            figure = hours.times(Fraction(1, length))
            return f"{span_text(figure)} {unit if figure.high == 1 else unit + 's'}"
    return f"{span_text(hours)} h"


def weight_text(grams: Fraction, measures: Measures) -> str:
    """'85 g', '1/2 oz': in the first unit in which it can be written exactly. Raises NoFigure."""
    for unit in _WEIGHTS:
        try:
            return f"{number_text(grams / measures.gram_factor(unit))} {unit}"
        except NoFigure:
            continue
    raise NoFigure(grams)


def degrees_text(celsius: Fraction, scale: Mapping[str, tuple[Fraction, Fraction]]) -> str:
    """'25 C', '77 F': in the first scale that writes it with one decimal.

    scale: its letter -> factor and summand that lead from degrees C to it. Raises NoFigure.
    """
    for letter, (factor, summand) in scale.items():
        degrees = celsius * factor + summand
        if (degrees * 10).denominator == 1:
            return f"{float(degrees):g} {letter}"
    raise NoFigure(celsius)


def _all_whole(span: Span, unit: int | Fraction) -> bool:
    return all((figure / unit).denominator == 1 for figure in (span.low, span.high))
