"""The cautions of a sheet: which ones it calls for, at which step, in the edition's words."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.kitchen.caution_calls import cautions_for, step_cautions, with_passed_on
from sitegen.kitchen.cautions import ComponentFacts, LineFacts, StepFacts
from sitegen.kitchen.method import RefKind, Step
from sitegen.kitchen.recipe import Component, IngredientLine, Line, PartLine, Recipe
from sitegen.kitchen.scaling import Batch
from sitegen.kitchen.temperatures import to_celsius
from sitegen.sheet.setting import Setting
from sitegen.sheet.values import SheetCaution, SheetLine

NO_ROLES: frozenset[str] = frozenset()


@dataclass(frozen=True)
class InBatch:
    """A component as this batch knows it.

    printed: its lines as printed. portions: how many the batch gives, or None.
    """

    component: Component
    printed: tuple[SheetLine, ...]
    portions: Fraction | None = None


@dataclass(frozen=True)
class SheetCautions:
    """cautions: red ones first. at_steps: keys, a tuple a step, in a tuple a component."""

    cautions: tuple[SheetCaution, ...]
    at_steps: tuple[tuple[tuple[str, ...], ...], ...]


def portions_of(recipe: Recipe, batch: Batch) -> Fraction | None:
    """How many portions the batch gives: what it serves, else its pieces; None for a yield by weight."""
    if recipe.serves is not None:
        return recipe.serves.middle * batch.factor
    return batch.makes if recipe.makes.noun else None


def cautions_of(made: Sequence[InBatch], setting: Setting) -> SheetCautions:
    """What the components call for, by `data/cautions.yaml`."""
    rows = setting.tables.cautions
    baked = _baked_inside([one.component for one in made])
    facts = with_passed_on(rows, [_facts(one, one.component.title in baked, setting) for one in made])
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
            source=setting.tables.source_in_short(row.source),
        )
        for row in called
    )
    return SheetCautions(printed, at_steps)


def _baked_inside(components: Sequence[Component]) -> frozenset[str]:
    """Components that go into the oven inside one that is baked after it took them."""
    baked: frozenset[str] = frozenset()
    while True:
        inside = frozenset(
            line.source
            for component in components
            for index, line in enumerate(component.lines)
            if isinstance(line, PartLine) and (component.title in baked or _bakes_after(component, index))
        )
        if inside <= baked:
            return baked
        baked |= inside


def _bakes_after(component: Component, index: int) -> bool:
    """Whether a step has the oven on, from the first that takes the line; any step where none says so."""
    taking = (
        at
        for at, step in enumerate(component.steps)
        if any(reference.line == index for reference in step.references)
    )
    return any(step.oven for step in component.steps[next(taking, 0) :])


def _facts(one: InBatch, baked: bool, setting: Setting) -> ComponentFacts:
    return ComponentFacts(
        title=one.component.title,
        lines=tuple(
            _line_facts(line, printed.exact_g, one.portions, setting)
            for line, printed in zip(one.component.lines, one.printed, strict=True)
        ),
        steps=tuple(_step_facts(step) for step in one.component.steps),
        baked=baked,
    )


def _line_facts(line: Line, grams: Fraction | None, portions: Fraction | None, setting: Setting) -> LineFacts:
    return LineFacts(
        text=line.text,
        roles=_roles(line, setting),
        grams=grams,
        portion_grams=grams / portions if grams is not None and portions else None,
        part=line.source if isinstance(line, PartLine) else "",
    )


def _roles(line: Line, setting: Setting) -> frozenset[str]:
    """Of all that the line names: a reader may take the alternative."""
    if not isinstance(line, IngredientLine):
        return NO_ROLES
    rows = (setting.row(choice) for choice in line.choices)
    return NO_ROLES.union(*(row.roles for row in rows if row))


def _step_facts(step: Step) -> StepFacts:
    text = "".join(part.text for part in step.prose)
    return StepFacts(
        text=f"{text} {step.until}",
        celsius=tuple(_celsius(step)),
        uses=tuple(reference.line for reference in step.references if reference.line is not None),
        in_oven=step.oven is not None,
    )


def _celsius(step: Step) -> list[Fraction]:
    amounts = [reference.amount for reference in step.references if reference.kind is RefKind.TEMPERATURE]
    return [to_celsius(amount.span.high, amount.unit) for amount in amounts if amount is not None]
