"""What heat does to a component: which it meets, and how much weight and alcohol go off."""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from sitegen.kitchen.method import Words
from sitegen.kitchen.nutrition_table import NutritionTable
from sitegen.kitchen.recipe import Component, Recipe
from sitegen.kitchen.shares import MadeComponent

NOTHING, WHOLE = Fraction(0), Fraction(1)


class Heat(StrEnum):
    """The hottest that a component meets."""

    OVEN = "oven"
    HOB = "hob"
    NONE = "none"


@dataclass(frozen=True)
class Loss:
    """What a component loses between the scales and the plate, as shares of what goes in.

    water: goes off as steam. waste: stays in the bowl and the sieve, and takes its nutrients with it.
    is_assumed: from our table, not from the baker. kind: the table's row, '' where the baker says.
    """

    water: Fraction = NOTHING
    waste: Fraction = NOTHING
    is_assumed: bool = False
    kind: str = ""


def heat_of(component: Component, table: NutritionTable) -> Heat:
    """The oven where a step has a setting; the hob where the method speaks of boiling."""
    if any(step.oven for step in component.steps):
        return Heat.OVEN
    text = " ".join(part.text for step in component.steps for part in step.prose if isinstance(part, Words))
    text = text.casefold()
    for phrase in table.not_hob_words:
        text = text.replace(phrase, "")
    return Heat.HOB if any(word in text for word in table.hob_words) else Heat.NONE


def loss_of(made: MadeComponent, owner: Recipe, table: NutritionTable) -> Loss:
    """What a component loses.

    owner: the recipe that it stands in. The baker's own `bake-loss` goes first, then the weight that a recipe
    of one component says it makes (water where it
    is heated, else waste), then the table's row for its kind.
    """
    heat = heat_of(made.component, table)
    if made.component.bake_loss is not None:
        return Loss(water=made.component.bake_loss)
    short = _stated_shortfall(made, owner, table)
    if short is not None:
        return Loss(waste=short) if heat is Heat.NONE else Loss(water=short)
    name = f"{made.component.kind} {made.component.title}".casefold()
    for row in table.bake_losses:
        if row.heat == heat and (not row.words or any(word in name for word in row.words)):
            return Loss(row.share, is_assumed=True, kind=row.name)
    return Loss()


def _stated_shortfall(made: MadeComponent, owner: Recipe, table: NutritionTable) -> Fraction | None:
    """How much less a recipe of one component says it makes than goes into it; None where unsaid.

    A weight of pieces ('12 rolls of 85 g') is said of the dough, before it is baked.
    """
    lines = zip(made.component.lines, made.line_grams, strict=True)
    put_in = sum((grams for line, grams in lines if grams is not None and table.is_eaten(line)), NOTHING)
    makes = owner.makes
    if makes.grams is None or makes.noun or len(owner.components) > 1 or not put_in:
        return None
    return max(WHOLE - makes.grams * made.factor / put_in, NOTHING)


def alcohol_kept(made: MadeComponent, table: NutritionTable) -> Fraction:
    """The share of its alcohol that is left in a component."""
    kept = {Heat.OVEN: table.alcohol_left.oven, Heat.HOB: table.alcohol_left.hob, Heat.NONE: WHOLE}
    return kept[heat_of(made.component, table)]
