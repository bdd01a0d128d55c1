"""Figures in tables: '125 g', '9/4 us_teaspoon', '23 cm', '2.5' -> exact fractions."""

import re
from fractions import Fraction

from sitegen.kitchen.amounts import Amount, single
from sitegen.kitchen.measures import Measures, NotALength, NotAVolume, NotAWeight

_FIGURE = r"(?:(?P<whole>\d+) )?(?P<over>\d+(?:\.\d+)?)(?:/(?P<under>[1-9]\d*))?"
_NUMBER = re.compile(_FIGURE)
_MEASURE = re.compile(_FIGURE + r" ?(?P<unit>[A-Za-z][A-Za-z_]*)")


def number_in(text: str) -> Fraction | None:
    """'2.5', '1/4', '30/12' or '2 1/4' as an exact fraction; None for anything else."""
    found = _NUMBER.fullmatch(text.strip())
    return _value(found) if found else None


def grams_in(text: str, measures: Measures) -> Fraction | None:
    """'125 g', '4.5 oz' in grams, exact; None where that is no weight."""
    found = _amount_in(text)
    try:
        return measures.grams(found).middle if found else None
    except NotAWeight:
        return None


def millilitres_in(text: str, measures: Measures) -> Fraction | None:
    """'1/4 us_cup', '100 ml' in millilitres, exact; None where that is no volume of `data/measures.txt`."""
    found = _amount_in(text)
    try:
        return found.span.middle * measures.unit_ml(found.unit) if found else None
    except NotAVolume:
        return None


def centimetres_in(text: str, measures: Measures) -> Fraction | None:
    """'23 cm', '2.75 in' in centimetres, exact; None where that is no length."""
    found = _amount_in(text)
    try:
        return measures.centimetres(found).middle if found else None
    except NotALength:
        return None


def _amount_in(text: str) -> Amount | None:
    found = _MEASURE.fullmatch(text.strip())
    return Amount(single(_value(found)), found["unit"]) if found else None


def _value(found: re.Match[str]) -> Fraction:
    return Fraction(found["whole"] or 0) + Fraction(found["over"]) / Fraction(found["under"] or 1)
