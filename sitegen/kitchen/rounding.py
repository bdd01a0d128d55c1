"""How the trade rounds what it prints. Pure rules; only the sheet calls them, once, at the very end.

Sources: common practice; grams in an ounce, NIST Handbook 44, Appendix C.
"""

from fractions import Fraction
from math import floor

USUAL_LIMIT = Fraction(25, 1000)
FINE_LIMIT = Fraction(1, 100)
# Grams from which a step may be used, and the step; the coarsest first.
GRAM_STEPS = (
    (Fraction(2000), Fraction(10)),
    (Fraction(250), Fraction(5)),
    (Fraction(20), Fraction(1)),
    (Fraction(5), Fraction(1, 2)),
    (Fraction(0), Fraction(1, 10)),
    (Fraction(0), Fraction(1, 20)),
)
FIVES_FROM_G, FIVES_TO_G = 20, 250
FIVES_LIMIT = Fraction(1, 100)
ML_STEPS = (
    (Fraction(250), Fraction(10)),
    (Fraction(0), Fraction(5)),
    (Fraction(0), Fraction(1)),
    (Fraction(0), Fraction(1, 2)),
    (Fraction(0), Fraction(1, 10)),
)
GRAMS_IN_OUNCE = Fraction(28349523125, 10**9)
OUNCE_LIMIT = Fraction(1, 10)
HALF_OUNCES_FROM = 8
TWOS_AND_THREES_MIN = (15, 18, 20, 22, 25, 28, 30)
CM_LIMIT = Fraction(1, 20)


def to_step(value: Fraction, step: Fraction) -> Fraction:
    """The nearest multiple of a step, halves upwards, exact."""
    return floor(value / step + Fraction(1, 2)) * step


def rounded_grams(grams: Fraction, fine: bool) -> Fraction:
    """A weight as a kitchen scale shows it, grams.

    grams: exact, 0 or more. fine: salt, leavening, yeast and gelatine, which keep within 1 % instead
    of 2.5 %.
    Steps: 0.1 g below 5 g, 0.5 to 20, 1 to 250 (5 where that is within 1 %), 5 to 2 kg, 10 above; a finer
    one where the usual would be too far off. 0.05 g is the finest, whatever its error, and what is not
    nothing is never rounded to nothing.
    """
    if FIVES_FROM_G <= grams < FIVES_TO_G and not fine:
        by_fives = to_step(grams, Fraction(5))
        if abs(by_fives - grams) <= FIVES_LIMIT * grams:
            return by_fives
    return _first_within(grams, GRAM_STEPS, FINE_LIMIT if fine else USUAL_LIMIT)


def rounded_ml(ml: Fraction) -> Fraction:
    """A volume as a jug shows it, ml: to 5 below 250, to 10 above, finer where that is over 2.5 % off.

    A few ml are to 0.5, else to 0.1, as a syringe shows them.
    """
    return _first_within(ml, ML_STEPS, USUAL_LIMIT)


def _first_within(value: Fraction, steps: tuple[tuple[Fraction, Fraction], ...], limit: Fraction) -> Fraction:
    """The value to the coarsest step that is near enough; to the finest where none is, never to 0."""
    if value <= 0:
        return Fraction(0)
    usable = [step for least, step in steps if value >= least]
    for step in usable:
        rounded = to_step(value, step)
        if abs(rounded - value) <= limit * value:
            return rounded
    return max(to_step(value, usable[-1]), usable[-1])


def rounded_ounces(grams: Fraction) -> Fraction:
    """A weight in ounces: to 1/4 below 8 oz, to 1/2 above.

    grams: exact. Returns ounces; 0 where the nearest step is more than a tenth off, so that no
    ounces are printed rather than wrong ones.
    """
    ounces = grams / GRAMS_IN_OUNCE
    step = Fraction(1, 2) if ounces >= HALF_OUNCES_FROM else Fraction(1, 4)
    rounded = to_step(ounces, step)
    return rounded if abs(rounded - ounces) <= OUNCE_LIMIT * ounces else Fraction(0)


def quarter_ounces(grams: Fraction) -> Fraction:
    """A weight in ounces to the nearest 1/4, as an American scale shows it; how far off, the caller judges.

    grams: exact. Returns ounces. Source: common practice.
    """
    return to_step(grams / GRAMS_IN_OUNCE, Fraction(1, 4))


def rounded_minutes(minutes: Fraction) -> Fraction:
    """A worked-out time: to 1 minute under 15, to 2 or 3 up to half an hour, to 5 above; never to 0."""
    if minutes <= 0:
        return Fraction(0)
    if minutes < TWOS_AND_THREES_MIN[0]:
        return max(to_step(minutes, Fraction(1)), Fraction(1))
    if minutes <= TWOS_AND_THREES_MIN[-1]:
        return Fraction(min(TWOS_AND_THREES_MIN, key=lambda printed: abs(printed - minutes)))
    return to_step(minutes, Fraction(5))


def rounded_cm(cm: Fraction) -> Fraction:
    """A length in cm: to 0.5, to a millimetre where that is over a twentieth off; never to 0."""
    halves = to_step(cm, Fraction(1, 2))
    if abs(halves - cm) <= CM_LIMIT * cm:
        return halves
    return max(to_step(cm, Fraction(1, 10)), Fraction(1, 10))


def rounded_inches(inches: Fraction) -> Fraction:
    """A length in inches: to 1/4, below 1 in to 1/8; a thin sheet to 1/16 and never to 0."""
    if inches >= 1:
        return to_step(inches, Fraction(1, 4))
    return to_step(inches, Fraction(1, 8)) or Fraction(1, 16)
