"""Weights in an edition's own unit: grams, or ounces to the quarter with the grams beside."""

from fractions import Fraction

from sitegen.kitchen.amounts import Span, single
from sitegen.kitchen.editions import Edition, Measuring
from sitegen.kitchen.rounding import GRAMS_IN_OUNCE, quarter_ounces, rounded_grams, rounded_ml, rounded_ounces
from sitegen.sheet.amounts import decimal_text, fraction_text, grams_text, ounces_text, span_text, with_unit
from sitegen.sheet.asks import Ask, Measured
from sitegen.sheet.batches import about_grams
from sitegen.sheet.setting import Setting

SPOONED_UNDER_G = GRAMS_IN_OUNCE / 2
"""Half an ounce: below it a scale of ounces has no step that would do (common practice: a spoon)."""
LITTLE_OUNCES = 4
SCALE_TOLERANCE = Fraction(25, 1000)
"""How far off a scale's step may be, as a share of the weight; a tight balance asks for less."""


def weighed(ask: Ask, exact: Span, edition: Edition) -> Measured:
    """A weight to the step of the edition's scale.

    exact: grams. Ounces come first in an edition that weighs in them, unless a quarter of one is too coarse.
    """
    rounded = in_grams(ask, exact)
    grams = grams_text(rounded)
    ounces = _first_in_ounces(exact, edition, ask.tolerance)
    if ounces is not None:
        return Measured(ounces_text(ounces), grams, exact.middle, ounces.middle * GRAMS_IN_OUNCE)
    return Measured(grams, _beside(exact, edition), exact.middle, rounded.middle)


def in_grams(ask: Ask, exact: Span) -> Span:
    """Grams to the step of a kitchen scale; the tested batch keeps the baker's own figure."""
    if ask.factor == 1 and ask.amount.unit == "g":
        return exact
    return _rounded(exact, fine=ask.is_fine)


def weight_texts(grams: Fraction, edition: Edition, *, fine: bool = False) -> Measured:
    """A single weight that no ingredient line asks for: of a part of a component, of a dough.

    fine: as of `rounded_grams`.
    """
    exact = single(grams)
    rounded = _rounded(exact, fine=fine)
    ounces = _first_in_ounces(exact, edition, SCALE_TOLERANCE)
    if ounces is not None:
        return Measured(ounces_text(ounces), grams_text(rounded), grams, ounces.middle * GRAMS_IN_OUNCE)
    return Measured(grams_text(rounded), _beside(exact, edition), grams, rounded.middle)


def weight_text(grams: Fraction, edition: Edition, *, fine: bool = False) -> str:
    """The same in one text: '300 g', where scales show ounces '300 g (10½ oz)' or '10½ oz (300 g)'."""
    texts = weight_texts(grams, edition, fine=fine)
    return f"{texts.amount} ({texts.beside})" if texts.beside else texts.amount


def about_text(grams: Fraction, edition: Edition) -> str:
    """A weight that is said with 'about': 'about 650 g', 'about 1 lb 7 oz'; little of it to the quarter."""
    if edition.measuring is Measuring.OUNCES and grams >= SPOONED_UNDER_G:
        is_little = grams < LITTLE_OUNCES * GRAMS_IN_OUNCE
        ounces = quarter_ounces(grams) if is_little else Fraction(round(grams / GRAMS_IN_OUNCE))
        return f"about {ounces_text(single(ounces))}"
    return f"about {grams_text(single(about_grams(grams) or rounded_grams(grams, fine=False)))}"


def in_millilitres(ask: Ask, exact: Span | None, setting: Setting) -> Measured:
    """A volume to the step of a jug."""
    volume = setting.tables.measures.millilitres(ask.amount, setting.written).times(ask.factor)
    rounded = Span(rounded_ml(volume.low), rounded_ml(volume.high))
    number = span_text(decimal_text(rounded.low), decimal_text(rounded.high))
    printed = exact.middle * rounded.middle / volume.middle if exact else None
    return Measured(with_unit(number, "ml"), "", exact.middle if exact else None, printed)


def _rounded(exact: Span, *, fine: bool) -> Span:
    return Span(rounded_grams(exact.low, fine), rounded_grams(exact.high, fine))


def _first_in_ounces(exact: Span, edition: Edition, tolerance: Fraction) -> Span | None:
    """Ounces to the quarter where the edition weighs in them and both ends are near enough; None else."""
    if edition.measuring is not Measuring.OUNCES:
        return None
    limit = min(tolerance, SCALE_TOLERANCE)
    ounces = Span(quarter_ounces(exact.low), quarter_ounces(exact.high))
    ends = ((exact.low, ounces.low), (exact.high, ounces.high))
    if any(abs(printed * GRAMS_IN_OUNCE - grams) > limit * grams for grams, printed in ends):
        return None
    return ounces


def _beside(exact: Span, edition: Edition) -> str:
    """Ounces beside grams in a cup edition whose scales show them, to a step that reads at a glance.

    None in an edition of ounces: they were too coarse to print first, and so they are here.
    """
    if not edition.has_ounces or edition.measuring is Measuring.OUNCES:
        return ""
    ounces = Span(rounded_ounces(exact.low), rounded_ounces(exact.high))
    if not (ounces.low and ounces.high):
        return ""
    return with_unit(span_text(fraction_text(ounces.low), fraction_text(ounces.high)), "oz")
