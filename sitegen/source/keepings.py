"""`keeps`: how long a component keeps, in words or by place: {room: 2 days, fridge: 5 days, note: dry}."""

import re
from collections.abc import Callable
from fractions import Fraction
from typing import Any

from pydantic import Field, model_validator
from pydantic_core import CoreSchema, PydanticKnownError

from sitegen.faults import FaultCode, Severity
from sitegen.kitchen.amounts import Span
from sitegen.kitchen.keeping import NOT_THERE
from sitegen.kitchen.recipe import Keeps
from sitegen.source.file_texts import FileModel, Sentence, Short
from sitegen.source.misread import Misread
from sitegen.source.numbers import number_at

KEEPING_TIME = FaultCode(
    "keeping-time",
    Severity.ERROR,
    "How long something keeps in a place is a number with hours, days, weeks, months or years, or `no`.",
    "Write `2 days`, `2-3 days`, `1 week`, `2 months`, or `no` for a place where it must not stand.",
    good="fridge: 2 days",
    bad="fridge: a while",
)
CODES = (KEEPING_TIME,)

HOURS = {
    **dict.fromkeys(("h", "hour", "hours"), Fraction(1)),
    **dict.fromkeys(("day", "days"), Fraction(24)),
    **dict.fromkeys(("week", "weeks"), Fraction(7 * 24)),
    **dict.fromkeys(("month", "months"), Fraction(30 * 24)),
    **dict.fromkeys(("year", "years"), Fraction(365 * 24)),
}
"""A month is thirty days: common practice on labels of frozen food."""
LONGEST_HOURS = 3 * HOURS["year"]
_UNIT = re.compile(r" ?([a-z]+)", re.IGNORECASE)


class KeepsFile(FileModel):
    """How long it keeps, place by place; `no` where it must not stand. Or a sentence."""

    room: Short | None = Field(None, description="At room temperature.", examples=["2 days", "no"])
    fridge: Short | None = Field(None, description="At 5 C or under.", examples=["5 days", "no"])
    freezer: Short | None = Field(None, description="At -18 C.", examples=["2 months", "no"])
    note: Sentence | None = Field(
        None, description="How, and what to heed.", examples=["covered", "unfilled, in an airtight tin"]
    )

    @model_validator(mode="before")
    @classmethod
    def _sentence(cls, value: object) -> object:
        """A bare text is a note without places; braces with nothing in them say nothing."""
        if value == {}:
            raise PydanticKnownError(
                "too_short", {"field_type": "Dictionary", "min_length": 1, "actual_length": 0}
            )
        return {"note": value} if isinstance(value, str) else value

    @classmethod
    def __get_pydantic_json_schema__(cls, core_schema: CoreSchema, handler: Callable[..., Any]) -> Any:
        places = handler(core_schema) | {"minProperties": 1}
        text = {"type": ["string", "number", "boolean"], "minLength": 1, "maxLength": 400}
        return {"anyOf": [text, places], "description": cls.__doc__}


def read_keeps(text: str, place: str) -> Keeps:
    """How long it keeps in one place. Raises Misread."""
    return Keeps(place, NOT_THERE if text.casefold() in ("no", "never") else _hours(text))


def _hours(text: str) -> Span:
    found = number_at(text)
    unit = _UNIT.fullmatch(text, found.end) if found else None
    hours = HOURS.get(unit.group(1).casefold()) if unit else None
    if found is None or hours is None or found.span.high * hours > LONGEST_HOURS:
        way_out = "write `2 days`, `2-3 days`, `1 week`, `2 months` or `no`"
        raise Misread(KEEPING_TIME, f"'{text}' is no time to keep a thing", way_out, 0, max(len(text), 1))
    return found.span.times(hours)
