"""What recipes, components and lines weigh as written, the parts that they take of each other counted in."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from sitegen.kitchen.amounts import Span
from sitegen.kitchen.part_errors import BaseCircle, MoreThanIsMade, NoWeight, SharesDontAddUp, UnknownPart
from sitegen.kitchen.recipe import Choice, Component, IngredientLine, Line, PartLine, Recipe

Weigh = Callable[[IngredientLine], Span | None]
NOTHING = Fraction(0)


@dataclass(frozen=True)
class Weight:
    """Grams in the tested batch, and the names that are missing in them."""

    grams: Fraction = NOTHING
    unknown: tuple[str, ...] = ()

    @property
    def known(self) -> Fraction | None:
        return None if self.unknown else self.grams

    def plus(self, other: "Weight") -> "Weight":
        return Weight(self.grams + other.grams, (*self.unknown, *other.unknown))

    def times(self, share: Fraction) -> "Weight":
        return Weight(self.grams * share, self.unknown)


@dataclass(frozen=True)
class PartScale:
    """The scale and the base recipes at hand.

    bases: recipes by title. weigh: an ingredient line as written -> its grams, or None.
    """

    bases: Mapping[str, Recipe]
    weigh: Weigh
    _recipes: dict[str, Weight] = field(default_factory=dict, init=False, repr=False)

    def base(self, title: str) -> Recipe:
        """The base recipe of that title. Raises UnknownPart."""
        if title not in self.bases:
            raise UnknownPart(title)
        return self.bases[title]

    def whole_share(self, line: PartLine) -> Fraction:
        """How much of its base recipe a line takes, as a share of the whole as written. Raises NoWeight."""
        if line.share is not None:
            return line.share
        base = self.base(line.source)
        whole = self.recipe(base)
        if whole.known is None or not whole.grams:
            raise NoWeight(base.title, whole.unknown)
        taken = self.weigh(as_ingredient(line))
        if taken is None:
            raise NoWeight(base.title, (line.text,))
        return taken.middle / whole.grams

    def recipe(self, recipe: Recipe) -> Weight:
        """What a recipe makes: the weight that it states, else all that goes into its last components.

        What is left over of a component that others take of by weight is no part of it.
        """
        if recipe.makes.grams is not None:
            return Weight(recipe.makes.grams)
        if recipe.title not in self._recipes:
            divided = {line.source for line in own_parts(recipe)}
            last = (component for component in recipe.components if component.title not in divided)
            self._recipes[recipe.title] = _sum(self.component(recipe, component) for component in last)
        return self._recipes[recipe.title]

    def component(self, owner: Recipe, component: Component, path: tuple[str, ...] = ()) -> Weight:
        """All that goes into a component. path: titles on the way here, to find a circle."""
        if component.title in path:
            raise BaseCircle((*path[path.index(component.title) :], component.title))
        path = (*path, component.title)
        return _sum(self.line(owner, line, path) for line in component.lines)

    def line(self, owner: Recipe, line: Line, path: tuple[str, ...] = ()) -> Weight | None:
        """One line as written; None for what is not measured or is left to the cook."""
        if isinstance(line, IngredientLine):
            return None if line.amount is None or line.optional else self._weighed(line)
        if line.amount is not None:
            return self._weighed(as_ingredient(line))
        share = line.share or NOTHING
        if line.from_base:
            return self.recipe(self.base(line.source)).times(share)
        return self.component(owner, own_part(owner, line), path).times(share)

    def _weighed(self, line: IngredientLine) -> Weight:
        grams = self.weigh(line)
        return Weight(unknown=(line.chosen.name,)) if grams is None else Weight(grams.middle)

    def left_of(self, owner: Recipe, source: Component) -> Weight | None:
        """What the recipe as written leaves of a component that others take of; None where none does.

        A share is taken of what is there once it is baked or boiled (`bake_loss`), a weight as it is.
        Raises SharesDontAddUp, MoreThanIsMade.
        """
        lines = [line for line in own_parts(owner) if line.source == source.title]
        if not lines:
            return None
        shares = sum((line.share for line in lines if line.share is not None), NOTHING)
        by_weight = [line for line in lines if line.amount is not None]
        if shares > 1 or (not by_weight and shares != 1):
            raise SharesDontAddUp(source.title, shares)
        if not by_weight:
            return Weight()
        made = self.component(owner, source).times((1 - (source.bake_loss or 0)) * (1 - shares))
        taken = _sum(self.line(owner, line) for line in by_weight)
        if made.known is not None and taken.grams > made.grams:
            raise MoreThanIsMade(source.title, taken.grams, made.grams)
        return made.plus(taken.times(Fraction(-1)))


def parts(component: Component) -> Iterator[PartLine]:
    """The lines of a component that take of a component or base recipe."""
    return (line for line in component.lines if isinstance(line, PartLine))


def own_parts(recipe: Recipe) -> Iterator[PartLine]:
    """The lines of a recipe that take of its own components."""
    return (line for component in recipe.components for line in parts(component) if not line.from_base)


def own_part(owner: Recipe, line: PartLine) -> Component:
    """The component that a line takes of. Raises UnknownPart."""
    component = owner.component(line.source)
    if component is None:
        raise UnknownPart(line.source)
    return component


def as_ingredient(line: PartLine) -> IngredientLine:
    """A part line with a weight, as the scale takes it."""
    return IngredientLine(line.text, line.amount, (Choice(line.source, ""),), at=line.at)


def _sum(weights: Iterable[Weight | None]) -> Weight:
    total = Weight()
    for weight in weights:
        total = total.plus(weight) if weight else total
    return total
