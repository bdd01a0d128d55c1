"""What a component says of itself: its kind (`creamed cake`) and the temperatures of its dough."""

import re
from fractions import Fraction

from pydantic import Field

from sitegen.faults import FaultCode, Place, Severity
from sitegen.kitchen.temperatures import F_IN_C, celsius_of
from sitegen.source.context import Context
from sitegen.source.file_texts import FileModel, Short
from sitegen.source.misread import Misread

UNKNOWN_KIND = FaultCode(
    "unknown-kind",
    Severity.ERROR,
    "A component is of a kind that no table of balances has, so that nothing could be held against it.",
    "Use a kind of the table, such as `creamed cake` or `enriched bun`, or leave the key out.",
    good="kind: oil cake",
    bad="kind: rocket fuel",
)
DOUGH_TEMPERATURE = FaultCode(
    "dough-temperature",
    Severity.ERROR,
    "A temperature of a dough, its kitchen or its flour that no bakery has, or one without its scale.",
    "Write it as `25 C` or `77 F`; friction also by the mixer: `by hand`, `stand mixer`.",
    good="    kind: oil cake\n",
    bad="    kind: oil cake\n    dough: {temperature: 250 C}\n",
)
CODES = (UNKNOWN_KIND, DOUGH_TEMPERATURE)

COLDEST_C, HOTTEST_C = Fraction(-5), Fraction(50)
MOST_FRICTION_C = Fraction(30)
_DEGREES = re.compile(r"(?P<degrees>-?\d{1,3}(?:\.\d)?) ?°? ?(?P<scale>[CF])", re.IGNORECASE)


class DoughFile(FileModel):
    """What is wanted of a dough, and what its parts usually have."""

    temperature: Short = Field(description="Of the mixed dough.", examples=["25 C", "77 F"])
    room: Short | None = Field(None, description="Of the kitchen it was tested in.", examples=["21 C"])
    flour: Short | None = Field(None, description="Without it: as the kitchen.", examples=["20 C"])
    preferment: Short | None = Field(None, description="Without it: as the kitchen.", examples=["18 C"])
    friction: Short | None = Field(
        None, description="What mixing adds, in degrees or by the mixer.", examples=["9 C", "stand mixer"]
    )


def read_kind(text: str, _at: Place, context: Context) -> str:
    """A kind of the table, whatever its case. Raises Misread."""
    balances = context.tables.balances
    known = next((kind.key for kind in balances.kinds if kind.key.casefold() == text.casefold()), None)
    if known is None:
        near = " or ".join(f"'{kind}'" for kind in balances.near(text))
        way_out = f"did you mean {near}?" if near else UNKNOWN_KIND.cure
        raise Misread(UNKNOWN_KIND, f"'{text}' is no kind that is known", way_out, 0, max(len(text), 1))
    return known


def read_degrees(text: str, _at: Place | None = None) -> Fraction:
    """'25 C', '77 F' in degrees C, exact. Raises Misread."""
    found = _DEGREES.fullmatch(text)
    if found is None:
        raise _no_degrees(text)
    degrees = Fraction(found["degrees"])
    celsius = degrees if found["scale"].upper() == "C" else celsius_of(degrees)
    if not COLDEST_C <= celsius <= HOTTEST_C:
        raise _no_degrees(text)
    return celsius


def read_friction(text: str, _at: Place, context: Context) -> Fraction:
    """'9 C', '16 F', 'stand mixer' -> the degrees C that mixing adds, exact. Raises Misread."""
    doughs = context.tables.doughs
    by_mixer = doughs.temperatures.friction if doughs else {}
    if text.casefold() in by_mixer:
        return by_mixer[text.casefold()]
    found = _DEGREES.fullmatch(text)
    if found is None:
        raise _no_degrees(text, f"write `9 C`, or the mixer: {', '.join(by_mixer)}")
    degrees = Fraction(found["degrees"]) / (1 if found["scale"].upper() == "C" else F_IN_C)
    if not 0 <= degrees <= MOST_FRICTION_C:
        raise _no_degrees(text)
    return degrees


def _no_degrees(text: str, way_out: str = "write it as `25 C` or `77 F`") -> Misread:
    return Misread(DOUGH_TEMPERATURE, f"'{text}' is no temperature of a dough", way_out, 0, max(len(text), 1))
