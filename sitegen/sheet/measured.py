"""One amount in one edition: from an exact amount to the texts that are printed, and what they weigh."""

from collections.abc import Callable, Mapping

from sitegen.kitchen.amounts import Span
from sitegen.kitchen.editions import Measuring
from sitegen.kitchen.weighing import grams_of
from sitegen.sheet.asks import COUNT_UNITS, MILLILITRE_UNITS, Ask, Measured
from sitegen.sheet.counted import counted
from sitegen.sheet.counted_eggs import counted_eggs, weighed_eggs
from sitegen.sheet.setting import Setting
from sitegen.sheet.spoons import in_sticks, spooned
from sitegen.sheet.weights import SPOONED_UNDER_G, in_millilitres, weighed


def measured(ask: Ask, setting: Setting) -> Measured:
    """The texts of an amount in the setting's edition.

    Eggs become whole ones and a weighed part; what is counted stays counted; spoons stay spoons;
    else the edition's own measure comes first.
    """
    weight = grams_of(ask.amount, ask.choice, ask.row, setting.written, setting.tables)
    exact = weight.times(ask.factor) if weight else None
    if ask.is_egg and exact is not None:
        if ask.amount.unit == "":
            return counted_eggs(ask, exact, setting)
        if setting.tables.measures.is_weight(ask.amount.unit):
            return weighed_eggs(ask, exact, setting)
    if ask.amount.unit in COUNT_UNITS:
        return counted(ask, exact, setting)
    return _BY_MEASURING[setting.edition.measuring](ask, exact, setting)


def _by_weight(ask: Ask, exact: Span | None, setting: Setting) -> Measured:
    """Grams; what the baker wrote by the spoon or the jug stays so."""
    found = spooned(ask, exact, setting, spoons_only=True) if ask.is_spooned else None
    if found:
        return found
    if exact is not None and ask.amount.unit not in MILLILITRE_UNITS:
        return weighed(ask, exact, setting.edition)
    return in_millilitres(ask, exact, setting)


def _by_ounces(ask: Ask, exact: Span | None, setting: Setting) -> Measured:
    """Ounces, liquids too; spoons for what the baker spooned and for what weighs under half an ounce."""
    is_small = exact is not None and exact.high < SPOONED_UNDER_G and _measured_by(ask) in ("cup", "spoon")
    found = spooned(ask, exact, setting, spoons_only=True) if ask.is_spooned or is_small else None
    if found:
        return found
    return in_millilitres(ask, exact, setting) if exact is None else weighed(ask, exact, setting.edition)


def _by_cups(ask: Ask, exact: Span | None, setting: Setting) -> Measured:
    """Cups and spoons with the weight beside; the weight first where no honest measure fits."""
    measured_by = _measured_by(ask)
    found = None
    if exact is not None and measured_by == "stick" and setting.edition.has_sticks and not ask.is_spooned:
        found = in_sticks(ask, exact)
    if found is None and (ask.is_spooned or measured_by in ("cup", "spoon")):
        found = spooned(ask, exact, setting, spoons_only=measured_by == "spoon")
    if found is not None:
        return found
    return in_millilitres(ask, exact, setting) if exact is None else weighed(ask, exact, setting.edition)


def _measured_by(ask: Ask) -> str:
    return ask.row.measured_by if ask.row else "cup"


_BY_MEASURING: Mapping[Measuring, Callable[[Ask, Span | None, Setting], Measured]] = {
    Measuring.WEIGHT: _by_weight,
    Measuring.CUPS: _by_cups,
    Measuring.OUNCES: _by_ounces,
}
