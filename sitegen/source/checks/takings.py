"""What the steps take of the ingredients, and the components of each other."""

from collections.abc import Iterator
from fractions import Fraction

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.kitchen.recipe import Component, PartLine, Recipe
from sitegen.kitchen.tables import Tables
from sitegen.source.settling import taken_share

UNUSED = FaultCode(
    "unused-ingredient",
    Severity.ERROR,
    "An ingredient that no step names: the reader would not know when it goes in.",
    "Name it in the step that takes it, in braces, or take out the line.",
    good="{buttermilk} and",
    bad="buttermilk and",
)
SHARES_OVER = FaultCode(
    "shares-over-one",
    Severity.ERROR,
    "The steps take more of an ingredient than its line gives.",
    "Make the shares add up to one; the last may be `{the rest of ...}`.",
    good="Whisk {eggs},",
    bad="Whisk {2/3 of eggs}, {2/3 of eggs},",
)
SHARES_LEFT = FaultCode(
    "shares-left-over",
    Severity.ADVICE,
    "The steps take shares of an ingredient that do not add up to all of it.",
    "Say where the rest goes: `{the rest of ...}`.",
    good="Whisk {eggs},",
    bad="Whisk {1/3 of eggs},",
)
PARTS_UNEVEN = FaultCode(
    "shares-do-not-add-up",
    Severity.ERROR,
    "The shares that are taken of a component do not make one whole.",
    "Make them add up to one: `half of`, `1/3 of`, `the rest of`.",
    good="all of Bay sponge",
    bad="half of Bay sponge",
)
UNUSED_COMPONENT = FaultCode(
    "unused-component",
    Severity.ADVICE,
    "A component that no other takes, in a recipe whose last step does not wait for it.",
    "Take it in another component's ingredients (`all of ...`), or name it in `after`.",
)
CODES = (UNUSED, SHARES_OVER, SHARES_LEFT, PARTS_UNEVEN, UNUSED_COMPONENT)


def every_line_is_taken(recipe: Recipe, _tables: Tables) -> Iterator[Fault]:
    """Each ingredient line is named by a step of its component."""
    for component in recipe.components:
        named = {reference.line for step in component.steps for reference in step.references}
        for index, line in enumerate(component.lines):
            if index not in named and component.steps:
                name = line.source if isinstance(line, PartLine) else line.chosen.name
                way_out = f"name it in the method: {{{name}}}"
                yield UNUSED.fault(line.at, f"no step of '{component.title}' takes '{name}'", way_out)


def shares_of_lines_add_up(recipe: Recipe, _tables: Tables) -> Iterator[Fault]:
    """No step takes what an earlier one has used up, and nothing is left over."""
    for component in recipe.components:
        for index, line in enumerate(component.lines):
            total, whole_named = _taken(component, index)
            name = line.source if isinstance(line, PartLine) else line.chosen.name
            if total > 1 or _has_empty_share(component, index):
                yield SHARES_OVER.fault(line.at, f"the steps take more '{name}' than there is")
            elif 0 < total < 1 and not whole_named:
                yield SHARES_LEFT.fault(line.at, f"the steps leave some of '{name}' over")


def _taken(component: Component, index: int) -> tuple[Fraction, bool]:
    references = [one for step in component.steps for one in step.references if one.line == index]
    total = sum((taken_share(one, component.lines[index]) for one in references), Fraction(0))
    return total, any(one.share == 1 and one.amount is None for one in references)


def _has_empty_share(component: Component, index: int) -> bool:
    """Whether 'the rest of' was asked for where nothing is left."""
    return any(one.line == index and one.share == 0 for step in component.steps for one in step.references)


def parts_add_up(recipe: Recipe, _tables: Tables) -> Iterator[Fault]:
    """What is taken by shares of a component of the recipe makes one whole."""
    for component in recipe.components:
        parts = _parts_of(component, recipe)
        shares = sum((part.share for part in parts if part.share is not None), Fraction(0))
        by_weight = [part for part in parts if part.amount is not None]
        if by_weight and shares == 1:
            sentence = f"all of '{component.title}' is taken by shares, and this weight besides"
            yield PARTS_UNEVEN.fault(by_weight[-1].at, sentence, "take shares only, or weights only")
        elif parts and (shares > 1 or (shares != 1 and not by_weight)):
            sentence = f"the shares of '{component.title}' add up to {shares}, not to 1"
            yield PARTS_UNEVEN.fault(parts[-1].at, sentence, "the last may be `the rest of ...`")


def _parts_of(component: Component, recipe: Recipe) -> list[PartLine]:
    lines = (line for other in recipe.components for line in other.lines)
    return [line for line in lines if isinstance(line, PartLine) and line.source == component.title]


def components_are_taken(recipe: Recipe, _tables: Tables) -> Iterator[Fault]:
    """Each component but the last goes into another, or another waits for it."""
    waited_for = {
        title for component in recipe.components for step in component.steps for title in step.after
    }
    named = {
        reference.target
        for component in recipe.components
        for step in component.steps
        for reference in step.references
    }
    for component in recipe.components[:-1]:
        if not _parts_of(component, recipe) and component.title not in waited_for | named:
            yield UNUSED_COMPONENT.fault(component.at, f"no other component takes '{component.title}'")


CHECKS = (every_line_is_taken, shares_of_lines_add_up, parts_add_up, components_are_taken)
