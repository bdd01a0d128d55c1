"""Oven settings: '150 C fan', '170 C conventional', '350 F', 'gas 4' -> OvenSetting."""

import re
from fractions import Fraction

from sitegen.faults import FaultCode, Severity
from sitegen.kitchen.method import OvenSetting
from sitegen.kitchen.ovens import OvenOutOfRange
from sitegen.kitchen.ovens import read_oven as reading_of
from sitegen.source.context import Context
from sitegen.source.misread import Misread
from sitegen.source.numbers import whole_number

OVEN = FaultCode(
    "oven",
    Severity.ERROR,
    "An oven setting that does not say which oven it is for, or that no oven has.",
    "Write `150 C fan`, `170 C conventional`, `350 F` or `gas 4`.",
    good="oven: 150 C fan",
    bad="oven: 150 C",
)
CODES = (OVEN,)

_DEGREES = re.compile(
    r"(?P<degrees>\d{1,3}(?:\.\d)?) ?(?:°|degrees )? ?(?P<scale>[CF])(?: (?P<kind>fan|conventional))?",
    re.IGNORECASE,
)
_GAS = re.compile(r"gas(?: mark)? (?P<mark>\d{1,2}|1/2|1/4|½|¼)", re.IGNORECASE)


def oven_in(text: str) -> OvenSetting | None:
    """The setting that a whole text states; None for anything else, and for Celsius that says no more.

    Raises Misread for gas mark 0.
    """
    gas = _GAS.fullmatch(text)
    if gas:
        mark = whole_number(text, gas.start("mark"))
        return OvenSetting(mark, "gas", fan=False) if mark is not None else None
    found = _DEGREES.fullmatch(text)
    if found is None:
        return None
    is_celsius = found["scale"].upper() == "C"
    kind = (found["kind"] or "").casefold()
    if is_celsius and not kind:
        return None
    scale = "celsius" if is_celsius else "fahrenheit"
    return OvenSetting(Fraction(found["degrees"]), scale, fan=kind == "fan")


def refuse_impossible(setting: OvenSetting, text: str, context: Context) -> None:
    """Raises Misread for a setting that no oven has. text: the setting as written."""
    try:
        reading_of(setting, context.tables.ovens)
    except OvenOutOfRange as out:
        lowest, highest = int(out.lowest_c), int(out.highest_c)
        way_out = f"ovens go from {lowest} to {highest} C: is the scale right?"
        raise Misread(OVEN, f"no oven is set to '{text}'", way_out, 0, len(text)) from out


def no_oven(text: str) -> Misread:
    """The fault of a text that states no setting."""
    way_out = "write `150 C fan`, `170 C conventional`, `350 F` or `gas 4`"
    if _DEGREES.fullmatch(text):
        way_out = f"say which oven: '{text} fan' or '{text} conventional'"
    return Misread(OVEN, f"'{text}' is no oven setting", way_out, 0, max(len(text), 1))
