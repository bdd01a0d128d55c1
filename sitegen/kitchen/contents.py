"""What a component is made of: its own ingredients and those of all that it takes of, in grams."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from sitegen.kitchen.larder import Ingredient
from sitegen.kitchen.part_errors import BaseCircle
from sitegen.kitchen.part_weights import PartScale, own_part, own_parts
from sitegen.kitchen.recipe import Choice, Component, IngredientLine, PartLine, Recipe

RowOf = Callable[[Choice], Ingredient | None]


@dataclass(frozen=True)
class Held:
    """One ingredient in a component.

    ingredient: its row in the larder, None where the larder has none. grams: exact; None where it cannot
    be weighed. brought_by: title of the component or base recipe that it came in with, '' for an own line.
    """

    choice: Choice
    ingredient: Ingredient | None
    grams: Fraction | None
    brought_by: str = ""

    @property
    def roles(self) -> frozenset[str]:
        """What it is for; the zest of a fruit flavours, and is neither fruit nor acid."""
        if self.choice.part == "zest":
            return frozenset({"flavouring"})
        return self.ingredient.roles if self.ingredient else frozenset()

    @property
    def key(self) -> str:
        return self.ingredient.key if self.ingredient else ""

    def times(self, factor: Fraction) -> "Held":
        return self if self.grams is None else replace(self, grams=self.grams * factor)


Contents = tuple[Held, ...]
Path = tuple[tuple[str, str], ...]
"""Titles of recipe and component, on the way down."""


@dataclass(frozen=True)
class Unpacking:
    """How components are taken apart. scale: weighs lines, with the base recipes; row: of the larder."""

    scale: PartScale
    row: RowOf

    def component(self, owner: Recipe, component: Component, path: Path = ()) -> Contents:
        """Everything that goes into a component as written, in the order of its lines.

        owner: the recipe that it stands in. What is not measured or is left to the cook is left out.
        path: what is being taken apart, to find a circle. Raises BaseCircle, UnknownPart, NoWeight.
        """
        here = (owner.title, component.title)
        if here in path:
            raise BaseCircle(tuple(title for _, title in (*path[path.index(here) :], here)))
        path = (*path, here)
        return tuple(held for line in component.lines for held in self._line(owner, line, path))

    def _line(self, owner: Recipe, line: IngredientLine | PartLine, path: Path) -> Iterator[Held]:
        if isinstance(line, PartLine):
            yield from (replace(held, brought_by=line.source) for held in self._part(owner, line, path))
        elif line.amount is not None and not line.optional:
            grams = self.scale.weigh(line)
            yield Held(line.chosen, self.row(line.chosen), grams.middle if grams else None)

    def _part(self, owner: Recipe, line: PartLine, path: Path) -> Iterable[Held]:
        """Taken apart before it is weighed: a scale that met a circle would never come to an end."""
        if line.from_base:
            whole, share = self._recipe(self.scale.base(line.source), path), self.scale.whole_share(line)
        else:
            source = own_part(owner, line)
            whole, share = self.component(owner, source, path), self._own_share(owner, source, line)
        return (held.times(share) for held in whole)

    def _recipe(self, recipe: Recipe, path: Path) -> Contents:
        """All that goes into what a recipe makes: into those of its components that no other takes of."""
        divided = {line.source for line in own_parts(recipe)}
        last = (component for component in recipe.components if component.title not in divided)
        return tuple(held for component in last for held in self.component(recipe, component, path))

    def _own_share(self, owner: Recipe, source: Component, line: PartLine) -> Fraction:
        """How much of another component of the recipe a line takes: a weight is taken once it is baked."""
        if line.share is not None:
            return line.share
        whole = self.scale.component(owner, source).grams * (1 - (source.bake_loss or 0))
        taken = self.scale.line(owner, line)
        return taken.grams / whole if taken and whole else Fraction(0)
