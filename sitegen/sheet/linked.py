"""Components as one batch knows them: what they name bears the title of what was made for them."""

from collections.abc import Mapping
from dataclasses import replace

from sitegen.kitchen.method import Prose, Reference, RefKind, Words
from sitegen.kitchen.recipe import Component, Line, PartLine
from sitegen.kitchen.shares import MadeComponent


def linked(made: MadeComponent) -> Component:
    """The component under its title in the batch, and so all that its lines and steps take or wait for.

    For the plan and the cautions, which follow titles; print keeps the words of the baker.
    """
    calls, component = made.calls, made.component
    return replace(
        component,
        title=made.title,
        lines=tuple(_linked_line(line, calls) for line in component.lines),
        steps=tuple(
            replace(
                step,
                prose=_linked_prose(step.prose, calls),
                after=tuple(calls.get(title, title) for title in step.after),
            )
            for step in component.steps
        ),
    )


def _linked_line(line: Line, calls: Mapping[str, str]) -> Line:
    return replace(line, source=calls.get(line.source, line.source)) if isinstance(line, PartLine) else line


def _linked_prose(prose: Prose, calls: Mapping[str, str]) -> Prose:
    return tuple(_linked_part(part, calls) for part in prose)


def _linked_part(part: Words | Reference, calls: Mapping[str, str]) -> Words | Reference:
    if isinstance(part, Reference) and part.kind is RefKind.COMPONENT:
        return replace(part, target=calls.get(part.target, part.target))
    return part
