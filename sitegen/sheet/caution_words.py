"""The cautions of a sheet: which ones it calls for, at which step, in the edition's words."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.kitchen.cautions import ComponentFacts, LineFacts, StepFacts, cautions_for, step_cautions
from sitegen.kitchen.recipe import Component, IngredientLine, Line, PartLine, RefKind, Step
from sitegen.kitchen.temperatures import to_celsius
from sitegen.sheet.setting import Setting
from sitegen.sheet.values import SheetCaution

NO_ROLES: frozenset[str] = frozenset()


@dataclass(frozen=True)
class SheetCautions:
    """cautions: red ones first. at_steps: keys, a tuple a step, in a tuple a component."""

    cautions: tuple[SheetCaution, ...]
    at_steps: tuple[tuple[tuple[str, ...], ...], ...]


def cautions_of(components: Sequence[Component], setting: Setting) -> SheetCautions:
    """What the components call for, by `data/cautions.yaml`."""
    rows, sources = setting.tables.cautions, setting.tables.sources
    baked = _baked_titles(components)
    facts = [_facts(component, component.title in baked, setting) for component in components]
    called = cautions_for(rows, facts)
    at_steps = tuple(
        tuple(tuple(row.key for row in step if row in called) for step in step_cautions(rows, one))
        for one in facts
    )
    printed = tuple(
        SheetCaution(
            key=row.key,
            level=row.level,
            title=setting.respelled(row.title),
            text=setting.respelled(row.text),
            source=sources.get(row.source.split(" ")[0], row.source),
        )
        for row in called
    )
    return SheetCautions(printed, at_steps)


def _baked_titles(components: Sequence[Component]) -> frozenset[str]:
    """Components that go into the oven, by a step of their own or inside a component that does."""
    baked = {component.title for component in components if any(step.oven for step in component.steps)}
    grown = True
    while grown:
        inside = {
            line.source
            for component in components
            if component.title in baked
            for line in component.lines
            if isinstance(line, PartLine)
        }
        grown = not inside <= baked
        baked |= inside
    return frozenset(baked)


def _facts(component: Component, baked: bool, setting: Setting) -> ComponentFacts:
    return ComponentFacts(
        title=component.title,
        lines=tuple(LineFacts(line.text, _roles(line, setting)) for line in component.lines),
        steps=tuple(_step_facts(step) for step in component.steps),
        baked=baked,
    )


def _roles(line: Line, setting: Setting) -> frozenset[str]:
    if not isinstance(line, IngredientLine):
        return NO_ROLES
    row = setting.row(line.chosen)
    return row.roles if row else NO_ROLES


def _step_facts(step: Step) -> StepFacts:
    text = "".join(part.text for part in step.prose)
    return StepFacts(
        text=f"{text} {step.until}",
        celsius=tuple(_celsius(step)),
        uses=tuple(reference.line for reference in step.references if reference.line is not None),
    )


def _celsius(step: Step) -> list[Fraction]:
    amounts = [reference.amount for reference in step.references if reference.kind is RefKind.TEMPERATURE]
    return [to_celsius(amount.span.high, amount.unit) for amount in amounts if amount is not None]
