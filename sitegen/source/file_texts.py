"""The kinds of text that files hold, and the base of every file model, the tables' among them."""

import re
from datetime import date
from typing import Annotated, Any

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, StringConstraints, WithJsonSchema
from pydantic_core import PydanticCustomError

from sitegen import limits
from sitegen.source.markdown_bounds import too_tangled


class _PlainScalars:
    """Lets a schema accept what an editor takes for a number or a truth value: here it is text too."""

    @classmethod
    def __get_pydantic_json_schema__(cls, core_schema: Any, handler: Any) -> dict[str, Any]:
        schema: dict[str, Any] = handler(core_schema)
        return schema | {"type": ["string", "number", "boolean"]}


def _text(longest: int) -> Any:
    return StringConstraints(strip_whitespace=True, min_length=1, max_length=longest)


def _not_tangled(text: str) -> str:
    if reason := too_tangled(text):
        raise PydanticCustomError("too_tangled", "too tangled", {"reason": reason})
    return text


_Untangled = AfterValidator(_not_tangled)

Short = Annotated[str, _text(120), _PlainScalars]
"""A few words: a title, a yield, a tin, a duration."""
Sentence = Annotated[str, _text(400), _Untangled, _PlainScalars]
Passage = Annotated[str, _text(3_000), _Untangled, _PlainScalars]
"""The prose of one step."""
Essay = Annotated[str, _text(limits.MARKDOWN_CHARACTERS), _Untangled, _PlainScalars]
"""Markdown of any length."""
SLUG_PATTERN = r"^[a-z0-9]+(-[a-z0-9]+)*$"
Slug = Annotated[str, StringConstraints(pattern=SLUG_PATTERN, max_length=80)]

_DAY = re.compile(r"\d{4}-\d{2}-\d{2}")


def _read_day(value: object) -> date:
    """`2026-07-03` and nothing else: 3/7/2026 means two different days on two sides of an ocean."""
    if isinstance(value, str) and _DAY.fullmatch(value):
        try:
            return date.fromisoformat(value)
        except ValueError as problem:
            raise PydanticCustomError("no_such_day", "no such day in the calendar") from problem
    raise PydanticCustomError("not_a_day", "not a day")


def _read_yes_no(value: object) -> bool:
    if value not in ("yes", "no"):
        raise PydanticCustomError("not_yes_or_no", "neither yes nor no")
    return value == "yes"


Day = Annotated[
    date,
    BeforeValidator(_read_day),
    WithJsonSchema({"type": "string", "format": "date", "pattern": r"^\d{4}-\d{2}-\d{2}$"}),
]
YesNo = Annotated[bool, BeforeValidator(_read_yes_no), WithJsonSchema({"enum": ["yes", "no", True, False]})]
Address = Annotated[
    str, StringConstraints(strip_whitespace=True, pattern=r"^https?://[^\s/]+(/\S*)?$", max_length=500)
]
FileName = Annotated[str, _text(200), _PlainScalars]


def _kebab(name: str) -> str:
    return name.replace("_", "-")


class FileModel(BaseModel):
    """Keys in kebab-case; a key that is not listed is a fault."""

    model_config = ConfigDict(extra="forbid", frozen=True, alias_generator=_kebab)
