"""What is in the finished dish: the nutrients of all that went in, and what it weighs when it has cooled.

A dish is what the recipe makes of its components. What is left over of a component or a base recipe is no
part of it, and a component that several others take of is counted once.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import reduce

from sitegen.kitchen.bake_losses import Loss, alcohol_kept, loss_of
from sitegen.kitchen.larder import Composition
from sitegen.kitchen.nutrition import Nutrients, nutrients_of
from sitegen.kitchen.nutrition_table import NutritionTable
from sitegen.kitchen.recipe import Choice, IngredientLine, PartLine, Recipe
from sitegen.kitchen.shares import MadeComponent

Compositions = Callable[[Choice], Composition | None]
NOTHING, WHOLE = Fraction(0), Fraction(1)


@dataclass(frozen=True)
class Missing:
    """An ingredient of which no composition is known, and its share of the weight that goes in."""

    choice: Choice
    share: Fraction


@dataclass(frozen=True)
class Dish:
    """grams: what it weighs when it has cooled. known_share: of the weight that goes in, 0 to 1.

    missing: what is not known, the heaviest first. unweighed: what has an amount that no table can weigh.
    losses: title of a component -> what it loses.
    """

    nutrients: Nutrients
    grams: Fraction
    known_share: Fraction
    missing: tuple[Missing, ...]
    unweighed: tuple[Choice, ...]
    losses: Mapping[str, Loss]


def dish_of(
    recipe: Recipe, made: Sequence[MadeComponent], compositions: Compositions, table: NutritionTable
) -> Dish:
    """The dish that a batch's components make.

    recipe: whose dish it is. made: all components, base recipes included. compositions: of an ingredient as
    it is taken.
    """
    losses = {one.title: loss_of(one, one.base or recipe, table) for one in made}
    used = _Flow(made, lambda one: WHOLE - losses[one.title].waste)
    weight = _Flow(made, lambda one: WHOLE - losses[one.title].waste - losses[one.title].water)
    alcohol = _Flow(made, lambda one: (WHOLE - losses[one.title].waste) * alcohol_kept(one, table))
    put_in = [
        _PutIn(line.chosen, grams, used.of(one), alcohol.of(one), compositions(line.chosen))
        for one in made
        for line, grams in _weighed(one, table)
    ]
    raw = sum((each.grams * each.used for each in put_in), NOTHING)
    known = sum((each.grams * each.used for each in put_in if each.composition is not None), NOTHING)
    nutrients = reduce(Nutrients.plus, (each.nutrients for each in put_in), Nutrients())
    left = sum((grams * weight.of(one) for one in made for _, grams in _weighed(one, table)), NOTHING)
    return Dish(
        nutrients=nutrients,
        grams=max(left, raw - nutrients.water) if known == raw else left,
        known_share=known / raw if raw else NOTHING,
        missing=tuple(_missing(put_in, raw)),
        unweighed=tuple(_unweighed(made, table)),
        losses=losses,
    )


@dataclass(frozen=True)
class _PutIn:
    """An ingredient on its way into the dish.

    used: the share of it that gets there. alcohol_used: the same of its alcohol, which heat drives off.
    """

    choice: Choice
    grams: Fraction
    used: Fraction
    alcohol_used: Fraction
    composition: Composition | None

    @property
    def nutrients(self) -> Nutrients:
        if self.composition is None:
            return Nutrients()
        held = nutrients_of(self.composition, self.grams * self.used)
        if not held.alcohol:
            return held
        return replace(held, alcohol=self.composition.alcohol * self.grams / 100 * self.alcohol_used)


class _Flow:
    """How much of what goes into each component arrives in the dish.

    keeps: the share of what is in a component that it passes on.
    """

    def __init__(self, made: Sequence[MadeComponent], keeps: Callable[[MadeComponent], Fraction]) -> None:
        self._made = made
        self._keeps = keeps
        self._known: dict[str, Fraction] = {}

    def of(self, one: MadeComponent) -> Fraction:
        if one.title not in self._known:
            self._known[one.title] = self._keeps(one) * (WHOLE - _left(one)) * self._passed_on(one)
        return self._known[one.title]

    def _passed_on(self, one: MadeComponent) -> Fraction:
        """The mean over those who take of it, by weight; all of it where it is a part of the dish itself."""
        takers = [(user, grams) for user in self._made for grams in _takes(user, one)]
        if not takers:
            last = _finisher(one, self._made)
            return (WHOLE - _left(last)) * self._passed_on(last) if last else WHOLE
        weights = [grams for _, grams in takers if grams is not None]
        if len(weights) < len(takers) or not sum(weights):
            return sum((self.of(user) for user, _ in takers), NOTHING) / len(takers)
        passed = (self.of(user) * (grams or NOTHING) for user, grams in takers)
        return sum(passed, NOTHING) / sum(weights, NOTHING)


def _takes(user: MadeComponent, source: MadeComponent) -> Iterator[Fraction | None]:
    """The grams of each line that takes of a component."""
    for line, grams in zip(user.component.lines, user.line_grams, strict=True):
        if isinstance(line, PartLine) and user.calls.get(line.source) == source.title:
            yield grams


def _finisher(one: MadeComponent, made: Sequence[MadeComponent]) -> MadeComponent | None:
    """The last component of the same base recipe, which stands for the whole of it; None for itself."""
    if one.base is None or one.component is one.base.components[-1]:
        return None
    last = one.base.components[-1]
    return next((other for other in made if other.component is last and other.made_for == one.made_for), None)


def _left(one: MadeComponent) -> Fraction:
    """The share of a component that nothing takes. What is baked is left over as it came from the oven."""
    if one.base is not None:
        return one.left_share / one.factor
    if not one.left_g or not one.grams:
        return NOTHING
    return one.left_g / (one.grams * (WHOLE - (one.component.bake_loss or NOTHING)))


def _eaten(one: MadeComponent, table: NutritionTable) -> Iterator[tuple[IngredientLine, Fraction | None]]:
    """The lines of ingredients that stay in the dish, with their grams."""
    for line, grams in zip(one.component.lines, one.line_grams, strict=True):
        if isinstance(line, IngredientLine) and table.is_eaten(line):
            yield line, grams


def _weighed(one: MadeComponent, table: NutritionTable) -> Iterator[tuple[IngredientLine, Fraction]]:
    for line, grams in _eaten(one, table):
        if grams is not None:
            yield line, grams


def _unweighed(made: Sequence[MadeComponent], table: NutritionTable) -> Iterator[Choice]:
    """What is asked for by an amount that cannot be weighed; what has no amount, or is optional, is not."""
    for one in made:
        for line, grams in _eaten(one, table):
            if line.amount is not None and not line.optional and grams is None:
                yield line.chosen


def _missing(put_in: Sequence[_PutIn], raw: Fraction) -> Iterator[Missing]:
    """Each ingredient without a composition once, the heaviest first."""
    grams: dict[Choice, Fraction] = {}
    for each in put_in:
        if each.composition is None and raw:
            grams[each.choice] = grams.get(each.choice, NOTHING) + each.grams * each.used
    for choice in sorted(grams, key=lambda one: -grams[one]):
        yield Missing(choice, grams[choice] / raw)
