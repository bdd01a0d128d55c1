"""'The rest of': what is left of an ingredient or a component once the other parts are taken."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from sitegen.kitchen.amounts import Amount
from sitegen.kitchen.method import Reference, Step
from sitegen.kitchen.recipe import Component, IngredientLine, Line, PartLine
from sitegen.source.references import REST

WHOLE = Fraction(1)


def settled(components: Sequence[Component]) -> tuple[Component, ...]:
    """The components with every 'the rest of' turned into the exact share that is left.

    In lines it is what the other lines of the recipe leave of a component or base recipe; in steps, what the
    earlier steps leave of an ingredient line. Nothing left becomes a share of 0, which the checks report.
    """
    return tuple(_settled_component(component, components) for component in components)


def _settled_component(component: Component, components: Sequence[Component]) -> Component:
    lines = tuple(_settled_line(line, components) for line in component.lines)
    return replace(component, lines=lines, steps=tuple(_settled_steps(component)))


def _settled_line(line: Line, components: Sequence[Component]) -> Line:
    if not isinstance(line, PartLine) or line.share is not None or line.amount is not None:
        return line
    taken = sum(
        (
            other.share
            for component in components
            for other in component.lines
            if isinstance(other, PartLine) and other.source == line.source and other.share is not None
        ),
        Fraction(0),
    )
    return replace(line, share=max(WHOLE - taken, Fraction(0)))


def _settled_steps(component: Component) -> Iterator[Step]:
    taken: dict[int, Fraction] = {}
    for step in component.steps:
        prose = []
        for part in step.prose:
            if isinstance(part, Reference) and part.line is not None:
                part = _settled_reference(part, component.lines[part.line], taken)
            prose.append(part)
        yield replace(step, prose=tuple(prose))


def _settled_reference(reference: Reference, line: Line, taken: dict[int, Fraction]) -> Reference:
    index = reference.line or 0
    gone = taken.get(index, Fraction(0))
    if reference.share == REST:
        reference = replace(reference, share=max(WHOLE - gone, Fraction(0)))
    taken[index] = gone + taken_share(reference, line)
    return reference


def taken_share(reference: Reference, line: Line) -> Fraction:
    """The share of a line that a reference takes: its own share, or its amount over the line's.

    A mention of the whole takes nothing new: the same thing may be named again. An amount in another
    unit than the line's counts as nothing.
    """
    if reference.amount is not None:
        return _amount_share(reference.amount, line)
    return Fraction(0) if reference.share == WHOLE else reference.share


def _amount_share(amount: Amount, line: Line) -> Fraction:
    whole = line.amount if isinstance(line, IngredientLine | PartLine) else None
    if whole is None or whole.unit != amount.unit:
        return Fraction(0)
    return amount.span.middle / whole.span.middle
