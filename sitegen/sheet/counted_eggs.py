"""Eggs as they are counted and cracked: whole ones of the edition's size, and a weighed part of another."""

from dataclasses import replace
from fractions import Fraction
from math import ceil

from sitegen.kitchen.amounts import Span
from sitegen.kitchen.editions import Measuring
from sitegen.kitchen.eggs import NEARLY_NOTHING, EggCount, edible_grams, whole_and_beaten
from sitegen.kitchen.recipe import Choice
from sitegen.kitchen.weighing import egg_part
from sitegen.sheet.amounts import NO_BREAK, span_text
from sitegen.sheet.asks import USUAL_TOLERANCE, Ask, Measured
from sitegen.sheet.setting import Setting
from sitegen.sheet.weights import weighed, weight_texts

NO_REST = Measured("")
UNNOTICED_EGG = Fraction(3, 100)
"""A rest of egg that nobody weighs out, as a share of all the egg; common practice lets up to 5 % pass."""


def counted_eggs(ask: Ask, exact: Span, setting: Setting) -> Measured:
    """Whole eggs of the edition's own size, and the rest weighed from a beaten one.

    exact: grams, whether the baker counted her eggs or weighed them. A range stays one: '2-3 medium', or by
    weight where its ends come to no whole eggs.
    """
    if exact.is_range:
        return _range_of_eggs(ask, exact, setting)
    size, one_g = egg_size(ask.choice, setting), _one_g(ask, setting)
    count = _count(exact.middle, one_g, ask.tolerance)
    beaten = weight_texts(count.beaten_g, setting.edition) if count.beaten_g else NO_REST
    if not count.whole:
        rest = f"from 1{NO_BREAK}{size}{NO_BREAK}egg, beaten"
        return replace(beaten, exact_g=exact.middle, count=Fraction(1), rest=rest)
    return Measured(
        amount=f"{count.whole}{NO_BREAK}{size.replace(' ', '-')}",
        beside=weight_texts(exact.middle, setting.edition).amount,
        exact_g=exact.middle,
        printed_g=count.whole * one_g + (beaten.printed_g or 0),
        count=Fraction(count.whole),
        rest=f"plus {beaten.amount} of another, beaten" if beaten.amount else "",
        beaten=beaten.amount,
    )


def _range_of_eggs(ask: Ask, exact: Span, setting: Setting) -> Measured:
    one_g, weight = _one_g(ask, setting), weighed(ask, exact, setting.edition)
    low, high = (whole_and_beaten(end, one_g) for end in (exact.low, exact.high))
    if low.beaten_g or high.beaten_g:
        return _from_eggs(weight, exact, ask, setting)
    number = span_text(str(low.whole), str(high.whole))
    return Measured(
        amount=f"{number}{NO_BREAK}{egg_size(ask.choice, setting).replace(' ', '-')}",
        beside=weight.amount,
        exact_g=exact.middle,
        printed_g=Fraction(low.whole + high.whole, 2) * one_g,
        count=Fraction(high.whole),
    )


def weighed_eggs(ask: Ask, exact: Span, setting: Setting) -> Measured:
    """Eggs that the baker weighed: the same count and weight as counted ones in an edition of cups.

    Elsewhere the weight comes first, as she wrote it, and how many eggs it takes stands after the name.
    """
    if setting.edition.measuring is Measuring.CUPS:
        return counted_eggs(ask, exact, setting)
    return _from_eggs(weighed(ask, exact, setting.edition), exact, ask, setting)


def _from_eggs(weight: Measured, exact: Span, ask: Ask, setting: Setting) -> Measured:
    """A weight, and how many eggs it takes."""
    number = ceil(exact.high / _one_g(ask, setting) - NEARLY_NOTHING)
    size, eggs = egg_size(ask.choice, setting), "egg" if number <= 1 else "eggs"
    return replace(weight, rest=f"from {max(number, 1)}{NO_BREAK}{size}{NO_BREAK}{eggs}")


def _one_g(ask: Ask, setting: Setting) -> Fraction:
    """What one egg of the edition's size gives of the part that is asked for, grams."""
    size = egg_size(ask.choice, setting)
    return edible_grams(setting.tables.eggs, setting.edition.egg_region, size, _part(ask))


def _count(grams: Fraction, one_g: Fraction, tolerance: Fraction) -> EggCount:
    """Whole eggs and the rest; whole ones alone where they are near enough, nearer in a tight balance."""
    nearest = round(grams / one_g)
    if nearest and abs(nearest * one_g - grams) <= min(UNNOTICED_EGG, tolerance) * grams:
        return EggCount(nearest, Fraction(0))
    if tolerance >= USUAL_TOLERANCE:
        return whole_and_beaten(grams, one_g)
    whole, rest = divmod(grams, one_g)
    return EggCount(int(whole), rest)


def egg_size(choice: Choice, setting: Setting) -> str:
    """The size word printed: the baker's own in her region, the region's usual one elsewhere."""
    same_region = setting.edition.egg_region == setting.written.egg_region
    return choice.size if choice.size and same_region else setting.edition.egg_size


def _part(ask: Ask) -> str:
    return egg_part(ask.choice, ask.row) if ask.row else ""
