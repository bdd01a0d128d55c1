"""What could not be computed, as too little is known of an ingredient: one sentence a thing."""

from collections.abc import Iterable, Iterator, Sequence

from sitegen.kitchen.editions import Measuring
from sitegen.kitchen.recipe import Choice, Component, IngredientLine
from sitegen.sheet.amounts import joined
from sitegen.sheet.setting import Setting


def unknowns_of(components: Sequence[Component], setting: Setting) -> tuple[str, ...]:
    """Sentences on weights and cups that nobody knows; none where all is known.

    They go by the ingredient that a line's amount is for. Unknown allergens stand with the allergens, what is
    missing of the nutrition with the nutrition.
    """
    lines = [line for part in components for line in part.lines if isinstance(line, IngredientLine)]
    return (
        *_weights(_names(_unweighed(lines, setting), setting)),
        *_cups(_names(_without_cup(lines, setting), setting)),
    )


def _weights(names: tuple[str, ...]) -> Iterator[str]:
    if names:
        yield (
            f"What a measure of {joined(names)} weighs is not known: it is printed as the recipe has it, and "
            "no weight or percentage counts it."
        )


def _cups(names: tuple[str, ...]) -> Iterator[str]:
    if names:
        yield f"How much of {joined(names)} a cup holds is not known: please weigh it."


def _names(choices: Iterable[Choice], setting: Setting) -> tuple[str, ...]:
    return tuple(dict.fromkeys(setting.name(choice) for choice in choices))


def _unweighed(lines: Iterable[IngredientLine], setting: Setting) -> Iterator[Choice]:
    """What is measured in a way that gives no weight."""
    for line in lines:
        if line.amount is not None and setting.grams(line) is None:
            yield line.chosen


def _without_cup(lines: Iterable[IngredientLine], setting: Setting) -> Iterator[Choice]:
    """What a cup edition has to print by weight, though it would be measured by the cup."""
    if setting.edition.measuring is not Measuring.CUPS:
        return
    for line in lines:
        row = setting.row(line.chosen)
        by_weight = line.amount is not None and setting.tables.measures.is_weight(line.amount.unit)
        if by_weight and row is not None and row.density is None and row.measured_by == "cup":
            yield line.chosen
