"""Tins in an edition's words: 'a 12-hole muffin tin', 'two 8 in round pans'."""

from dataclasses import replace
from fractions import Fraction
from math import ceil

from sitegen.kitchen.recipe import BatchKind, Recipe, Tin
from sitegen.kitchen.rounding import rounded_cm, rounded_inches, to_step
from sitegen.kitchen.scaling import Batch
from sitegen.kitchen.tins import hole_ml
from sitegen.sheet.amounts import NO_BREAK, decimal_text, fraction_text, share_text, word_or_figure
from sitegen.sheet.setting import Setting

CM_IN_INCH = Fraction(254, 100)
A_LITRE, FIFTY = Fraction(1000), Fraction(50)
TENTH, HALF_A_CUP = Fraction(1, 10), Fraction(1, 2)


def tin_text(tin: Tin, setting: Setting) -> str:
    """A tin with its size as the edition's trade names it, nominal sizes first: 20 cm = 8 in."""
    table = setting.tables.tins
    words = table.shape(tin.shape).words_in(setting.edition.region)
    text = words.pattern(tin.holes, tin.number).format(
        size=_size(tin, setting),
        depth=_length(tin.depth_cm, setting),
        capacity=_capacity(tin, setting),
        holes=tin.holes,
        number=word_or_figure(tin.number),
    )
    return f"{_article(text)} {text}" if tin.number == 1 else text


def _article(text: str) -> str:
    """'an' before a vowel and before the figures that are read with one (8, 11, 18)."""
    first = text.split(NO_BREAK)[0].split("-")[0].split(" ")[0]
    return "an" if first[:1] in "aeiou8" or first in ("11", "18") else "a"


def batch_tin_text(recipe: Recipe, batch: Batch, setting: Setting) -> str:
    """The tins that a batch fills, of flat trays a whole number; '' for a recipe without a tin."""
    tin = batch.tin or recipe.tin
    if tin is None:
        return ""
    asked_for_tin = batch.ask is not None and batch.ask.kind is BatchKind.TIN
    if asked_for_tin or batch.factor == 1:
        return tin_text(tin, setting)
    if tin.holes > 1:
        return _holes_text(tin, batch.factor, setting)
    number = tin.number * batch.factor
    if not setting.tables.tins.shape(tin.shape).solid:
        number = Fraction(ceil(number))
    if number.denominator == 1:
        return tin_text(_numbered(tin, int(number)), setting)
    tested, factor = tin_text(tin, setting), batch.factor
    how_much = f"{share_text(factor)} as much" if factor < 1 else f"{fraction_text(factor)} times as much"
    vessel = "tin" if tin.number == 1 else "tins"
    holds = f"a {vessel} that holds" if tin.number == 1 else f"{vessel} that hold"
    return setting.respelled(f"{holds} {how_much} as {tested}")


def _holes_text(tin: Tin, factor: Fraction, setting: Setting) -> str:
    """'two 12-hole muffin tins', '6 holes of a 12-hole muffin tin'."""
    holes = ceil(tin.holes * tin.number * factor)
    tins, left = divmod(holes, tin.holes)
    if not left:
        return tin_text(_numbered(tin, tins), setting)
    part = f"{holes} holes of {tin_text(_numbered(tin, max(1, tins + 1)), setting)}"
    return setting.respelled(part)


def _numbered(tin: Tin, number: int) -> Tin:
    return replace(tin, number=number)


def _size(tin: Tin, setting: Setting) -> str:
    unit = setting.edition.lengths
    if tin.length_cm == tin.width_cm:
        return f"{_width(tin, setting)}{NO_BREAK}{unit}"
    longer, shorter = sorted((tin.length_cm, tin.width_cm), reverse=True)
    times = f"{NO_BREAK}×{NO_BREAK}"
    return f"{_number(longer, setting)}{times}{_number(shorter, setting)}{NO_BREAK}{unit}"


def _width(tin: Tin, setting: Setting) -> str:
    """A width as measured, and the one to buy where the trade has no such tin: '8¾ or 9'."""
    own, table = _number(tin.width_cm, setting), setting.tables.tins
    sold, width = table.sold_cm, tin.width_cm
    if setting.edition.lengths == "in":
        sold, width = table.sold_inches, tin.width_cm / CM_IN_INCH
    is_printed = any(own == fraction_text(each) for each in sold)
    near = None if is_printed else table.sold_near(width, sold)
    return own if near is None or tin.holes > 1 else f"{own} or {fraction_text(near)}"


def _capacity(tin: Tin, setting: Setting) -> str:
    """What one basin holds, as it is sold: '1.1 litre', '600 ml', US '5-cup'; '' for a flat tray."""
    if not setting.tables.tins.shape(tin.shape).solid:
        return ""
    ml = hole_ml(tin, setting.tables.tins)
    if setting.edition.lengths == "in":
        cups = to_step(ml / setting.tables.measures.unit_ml(setting.edition.cup), HALF_A_CUP)
        return f"{fraction_text(max(cups, HALF_A_CUP))}-cup"
    if ml < A_LITRE:
        return f"{decimal_text(to_step(ml, FIFTY))}{NO_BREAK}ml"
    return f"{decimal_text(to_step(ml / A_LITRE, TENTH))}{NO_BREAK}litre"


def _length(cm: Fraction, setting: Setting) -> str:
    return f"{_number(cm, setting)}{NO_BREAK}{setting.edition.lengths}"


def _number(cm: Fraction, setting: Setting) -> str:
    if setting.edition.lengths == "cm":
        nominal_cm = setting.tables.tins.nominal_cm(cm / CM_IN_INCH)
        return decimal_text(nominal_cm if nominal_cm is not None else rounded_cm(cm))
    nominal = setting.tables.tins.nominal_inches(cm)
    return fraction_text(nominal if nominal is not None else rounded_inches(cm / CM_IN_INCH))
