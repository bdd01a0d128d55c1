"""Which cautions a recipe calls for, and at which step; never one that it does not."""

from collections.abc import Sequence
from dataclasses import replace

from sitegen.kitchen.cautions import CautionRow, ComponentFacts, LineFacts, PassesOn, StepFacts, Trigger
from sitegen.kitchen.word_marks import has_word

Steps = Sequence[StepFacts]
Live = tuple[Trigger, frozenset[int]]
"""A trigger that fires in a component, with the lines that it is about (none where it asks for none)."""


def cautions_for(rows: Sequence[CautionRow], facts: Sequence[ComponentFacts]) -> tuple[CautionRow, ...]:
    """The cautions of a recipe, red before amber, else in the table's order.

    facts: `with_passed_on`, where components take dangers from each other.
    """
    called = [row for row in rows if any(_live(row, component) for component in facts)]
    return tuple(sorted(called, key=lambda row: row.level != "red"))


def step_cautions(
    rows: Sequence[CautionRow], component: ComponentFacts
) -> tuple[tuple[CautionRow, ...], ...]:
    """The cautions of each step of a component, in the table's order: one tuple a step."""
    live = [(row, triggers) for row in rows if (triggers := _live(row, component))]
    return tuple(
        tuple(row for row, triggers in live if _told_at(triggers, component, step))
        for step in component.steps
    )


def with_passed_on(rows: Sequence[CautionRow], facts: Sequence[ComponentFacts]) -> tuple[ComponentFacts, ...]:
    """The same facts, where a line that takes a dangerous part bears the role of its danger.

    A caramel that is not said to cool is still hot sugar in the component that dips buns into it, and in
    the one after that.
    """
    known = tuple(facts)
    for row in rows:
        if row.passes_on is not None:
            known = _passed_on(row, row.passes_on, known)
    return known


def _passed_on(
    row: CautionRow, passing: PassesOn, facts: tuple[ComponentFacts, ...]
) -> tuple[ComponentFacts, ...]:
    """As often as there are components, since each round hands the danger on by one."""
    taken = {line.part for one in facts for line in one.lines}
    for _ in facts:
        sources = {one.title for one in facts if one.title in taken and _still_dangerous(row, passing, one)}
        grown = tuple(
            replace(one, lines=tuple(_with_role(line, passing.role, sources) for line in one.lines))
            for one in facts
        )
        if grown == facts:
            break
        facts = grown
    return facts


def _with_role(line: LineFacts, role: str, sources: set[str]) -> LineFacts:
    return replace(line, roles=line.roles | {role}) if line.part in sources else line


def _still_dangerous(row: CautionRow, passing: PassesOn, component: ComponentFacts) -> bool:
    """Whether the danger is there once the component is made."""
    live = _live(row, component)
    calling = [index for index, step in enumerate(component.steps) if _told_at(live, component, step)]
    return bool(calling) and not _any_says(component.steps[calling[-1] :], passing.unless_words)


def _live(row: CautionRow, component: ComponentFacts) -> list[Live]:
    """The triggers of a row that fire somewhere in the component."""
    found = ((trigger, _calling_lines(trigger, component)) for trigger in row.triggers)
    return [
        (trigger, lines)
        for trigger, lines in found
        if lines is not None and _fires(trigger, component, lines)
    ]


def _fires(trigger: Trigger, component: ComponentFacts, lines: frozenset[int]) -> bool:
    return not trigger.asks_a_step or any(
        _fires_at(trigger, component, step, lines) for step in component.steps
    )


def _told_at(live: Sequence[Live], component: ComponentFacts, step: StepFacts) -> bool:
    """Whether a row is told at this step: for its own words or heat, else for what it takes."""
    return any(
        _fires_at(trigger, component, step, lines)
        if trigger.asks_a_step and not trigger.at_lines
        else bool(lines.intersection(step.uses))
        for trigger, lines in live
    )


def _calling_lines(trigger: Trigger, component: ComponentFacts) -> frozenset[int] | None:
    """The lines that the trigger asks for and that stay what they are; empty where it asks for none.

    None where the component has not what it asks for.
    """
    if not _component_fits(trigger, component):
        return None
    if not trigger.asks_a_line:
        return frozenset() if _stays(trigger, component, component.steps) else None
    if trigger.roles and not _any_has(component, trigger.roles):
        return None
    found = frozenset(
        index
        for index, line in enumerate(component.lines)
        if _is_asked_for(trigger, line) and _stays(trigger, component, _from_first_use(component, index))
    )
    return found or None


def _component_fits(trigger: Trigger, component: ComponentFacts) -> bool:
    return (
        (not trigger.titled or has_word(component.title, trigger.titled))
        and (not trigger.with_roles or _any_has(component, trigger.with_roles))
        and not _any_has(component, trigger.unless_roles)
    )


def _any_has(component: ComponentFacts, roles: frozenset[str]) -> bool:
    return not roles.isdisjoint(component.roles)


def _is_asked_for(trigger: Trigger, line: LineFacts) -> bool:
    return (
        (not trigger.roles or bool(line.roles & trigger.roles))
        and (not trigger.line_words or has_word(line.text, trigger.line_words))
        and not has_word(line.text, trigger.unless_line_words)
        and (trigger.at_least_g is None or (line.grams or 0) >= trigger.at_least_g)
        and (trigger.at_least_portion_g is None or (line.portion_grams or 0) >= trigger.at_least_portion_g)
    )


def _from_first_use(component: ComponentFacts, index: int) -> Steps:
    """The steps in which something may become of a line; all of them where none says that it takes it."""
    first = next((at for at, step in enumerate(component.steps) if index in step.uses), 0)
    return component.steps[first:]


def _stays(trigger: Trigger, component: ComponentFacts, steps: Steps) -> bool:
    """Whether none of the steps makes safe what the trigger is about."""
    baked = component.baked or any(step.in_oven for step in steps)
    limit = trigger.unless_c
    return (
        (trigger.baked is None or trigger.baked == baked)
        and not _any_says(steps, trigger.unless_words)
        and not (limit is not None and any(degrees >= limit for step in steps for degrees in step.celsius))
    )


def _fires_at(trigger: Trigger, component: ComponentFacts, step: StepFacts, found: frozenset[int]) -> bool:
    limit = trigger.at_least_c
    return (
        (limit is None or any(degrees >= limit for degrees in step.celsius))
        and (not trigger.words or has_word(step.text, trigger.words))
        and not has_word(step.text, trigger.unless_step_words)
        and (trigger.in_oven is None or trigger.in_oven == step.in_oven)
        and (not trigger.same_step or _takes(trigger, component, step, found))
    )


def _takes(trigger: Trigger, component: ComponentFacts, step: StepFacts, found: frozenset[int]) -> bool:
    """Whether the step takes what the trigger asks for, and what it asks for beside it."""
    beside = frozenset().union(*(component.lines[index].roles for index in step.uses))
    return bool(found & set(step.uses)) and (not trigger.with_roles or bool(trigger.with_roles & beside))


def _any_says(steps: Steps, words: tuple[str, ...]) -> bool:
    return any(has_word(step.text, words) for step in steps)
