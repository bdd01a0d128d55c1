"""Which cautions a recipe calls for, and at which step; never one that it does not."""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache


@dataclass(frozen=True)
class Trigger:
    """One thing that calls for a caution: it fires where ALL conditions that it states hold.

    roles: an ingredient line has any of these roles. unless_line_words: a line with any of these words
    does not count for `roles` ('ground' for nuts).
    words: any of these stands in a step's text.
    at_least_c: a step has an exact temperature of that or more, C.
    unless_words: none of these stands in any step of the component.
    unless_c: no step of the component has an exact temperature of that or more, C.
    baked: True where the component must be baked, False where it must not be, None for either.
    A word matches whole words in any case; with a star at its end also longer ones ('caramelis*').
    """

    roles: frozenset[str] = frozenset()
    unless_line_words: tuple[str, ...] = ()
    words: tuple[str, ...] = ()
    at_least_c: Fraction | None = None
    unless_words: tuple[str, ...] = ()
    unless_c: Fraction | None = None
    baked: bool | None = None


@dataclass(frozen=True)
class CautionRow:
    """A row of `data/cautions.yaml`: it is printed where ANY of its triggers fires.

    level: 'red' (can hurt someone today) or 'amber'. source: a key of `data/sources.yaml`.
    """

    key: str
    level: str
    title: str
    text: str
    source: str
    triggers: tuple[Trigger, ...]


@dataclass(frozen=True)
class LineFacts:
    """An ingredient line: its text as written, and the roles of its ingredient."""

    text: str
    roles: frozenset[str]


@dataclass(frozen=True)
class StepFacts:
    """A step: its plain text, its exact temperatures in C, and the lines that it uses (indices)."""

    text: str
    celsius: tuple[Fraction, ...] = ()
    uses: tuple[int, ...] = ()


@dataclass(frozen=True)
class ComponentFacts:
    """What the cautions of a component hang on.

    baked: whether it goes into the oven, by a step of its own or of a component that it becomes part of.
    """

    title: str
    lines: tuple[LineFacts, ...]
    steps: tuple[StepFacts, ...]
    baked: bool


def cautions_for(rows: Sequence[CautionRow], facts: Sequence[ComponentFacts]) -> tuple[CautionRow, ...]:
    """The cautions of a recipe, red before amber, else in the table's order."""
    called = [row for row in rows if any(_calls(row, component) for component in facts)]
    return tuple(sorted(called, key=lambda row: row.level != "red"))


def step_cautions(
    rows: Sequence[CautionRow], component: ComponentFacts
) -> tuple[tuple[CautionRow, ...], ...]:
    """The cautions of each step of a component, in the table's order: one tuple a step."""
    return tuple(
        tuple(row for row in rows if any(_calls_at(trigger, component, step) for trigger in row.triggers))
        for step in component.steps
    )


def _calls(row: CautionRow, component: ComponentFacts) -> bool:
    return any(
        _possible(trigger, component)
        and _line_indices(trigger, component) is not None
        and _heated(trigger, component.steps)
        and _said(trigger, component.steps)
        for trigger in row.triggers
    )


def _calls_at(trigger: Trigger, component: ComponentFacts, step: StepFacts) -> bool:
    """Whether a trigger fires at this step: by its own words or heat, else by what it takes."""
    found = _line_indices(trigger, component)
    if found is None or not _possible(trigger, component):
        return False
    if trigger.words or trigger.at_least_c is not None:
        return _heated(trigger, (step,)) and _said(trigger, (step,))
    return bool(found & set(step.uses))


def _possible(trigger: Trigger, component: ComponentFacts) -> bool:
    """The conditions on the component as a whole."""
    if trigger.baked is not None and trigger.baked != component.baked:
        return False
    if any(_has_word(step.text, trigger.unless_words) for step in component.steps):
        return False
    limit = trigger.unless_c
    return limit is None or not any(degrees >= limit for step in component.steps for degrees in step.celsius)


def _line_indices(trigger: Trigger, component: ComponentFacts) -> frozenset[int] | None:
    """The lines that have the trigger's roles; None where it asks for roles and none has them."""
    if not trigger.roles:
        return frozenset()
    found = frozenset(
        index
        for index, line in enumerate(component.lines)
        if line.roles & trigger.roles and not _has_word(line.text, trigger.unless_line_words)
    )
    return found or None


def _heated(trigger: Trigger, steps: Iterable[StepFacts]) -> bool:
    limit = trigger.at_least_c
    return limit is None or any(degrees >= limit for step in steps for degrees in step.celsius)


def _said(trigger: Trigger, steps: Iterable[StepFacts]) -> bool:
    return not trigger.words or any(_has_word(step.text, trigger.words) for step in steps)


def _has_word(text: str, words: tuple[str, ...]) -> bool:
    return bool(words) and _pattern(words).search(text) is not None


@lru_cache(maxsize=512)
def _pattern(words: tuple[str, ...]) -> re.Pattern[str]:
    alternatives = (
        re.escape(word.removesuffix("*")) + (r"\w*" if word.endswith("*") else "") for word in words
    )
    return re.compile(r"\b(?:" + "|".join(alternatives) + r")\b", re.IGNORECASE)
