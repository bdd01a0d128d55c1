"""Rows of `data/cautions.yaml` -> the kitchen's values.

These rows are ours: a wrong one raises at once (pydantic's ValidationError, or BrokenTable).
"""

from fractions import Fraction
from typing import Literal

from pydantic import Field, RootModel

from sitegen.kitchen.cautions import CautionRow, PassesOn, Trigger
from sitegen.source.file_texts import FileModel, YesNo
from sitegen.source.table_rows import figure

Words = tuple[str, ...]


class TriggerFile(FileModel):
    """What calls for a caution: the head of the table tells each key."""

    roles: Words = ()
    line_words: Words = ()
    unless_line_words: Words = ()
    at_least_g: str | None = None
    at_least_portion_g: str | None = None
    with_roles: Words = ()
    unless_roles: Words = ()
    titled: Words = ()
    words: Words = ()
    unless_step_words: Words = ()
    at_least: str | None = None
    in_oven: YesNo | None = None
    same_step: YesNo = False
    unless_words: Words = ()
    unless_at_least: str | None = None
    baked: YesNo | None = None
    told_at: Literal["step", "line"] = "step"


class PassesOnFile(FileModel):
    role: str
    unless_words: Words


class CautionFile(FileModel):
    level: Literal["red", "amber"]
    title: str
    text: str
    source: str
    triggers: list[TriggerFile] = Field(min_length=1)
    passes_on: PassesOnFile | None = None


class CautionsFile(RootModel[dict[str, CautionFile]]):
    """Key -> row."""


def caution_rows(file: CautionsFile) -> tuple[CautionRow, ...]:
    """Cautions in the file's order."""
    return tuple(_caution(key, row) for key, row in file.root.items())


def _caution(key: str, row: CautionFile) -> CautionRow:
    return CautionRow(
        key=key,
        level=row.level,
        title=row.title,
        text=row.text,
        source=row.source,
        triggers=tuple(map(_trigger, row.triggers)),
        passes_on=PassesOn(row.passes_on.role, row.passes_on.unless_words) if row.passes_on else None,
    )


def _trigger(row: TriggerFile) -> Trigger:
    return Trigger(
        roles=frozenset(row.roles),
        line_words=row.line_words,
        unless_line_words=row.unless_line_words,
        at_least_g=_figure(row.at_least_g),
        at_least_portion_g=_figure(row.at_least_portion_g),
        with_roles=frozenset(row.with_roles),
        unless_roles=frozenset(row.unless_roles),
        titled=row.titled,
        words=row.words,
        unless_step_words=row.unless_step_words,
        at_least_c=_figure(row.at_least),
        in_oven=row.in_oven,
        same_step=row.same_step,
        unless_words=row.unless_words,
        unless_c=_figure(row.unless_at_least),
        baked=row.baked,
        at_lines=row.told_at == "line",
    )


def _figure(text: str | None) -> Fraction | None:
    return None if text is None else figure(text)
