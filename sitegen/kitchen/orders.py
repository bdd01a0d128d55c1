"""An order: several recipes at several batches as one recipe, so that what they share is made once."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.kitchen.recipe import Component, Makes, PartLine, Recipe


@dataclass(frozen=True)
class Ordered:
    """One line of an order. factor: how much of the recipe as written; over 0."""

    recipe: Recipe
    factor: Fraction


def order_as_recipe(title: str, ordered: Sequence[Ordered]) -> Recipe:
    """A recipe that takes of each ordered one what is wanted, and has no work of its own.

    The rules of base recipes then hold for an order too: what several of them take is made once, at the sum
    of what they need, with the spare that each recipe asks for.
    """
    lines = tuple(
        PartLine(one.recipe.title, one.recipe.title, share=one.factor, amount=None, from_base=True)
        for one in ordered
    )
    return Recipe(
        slug="order",
        title=title,
        summary="",
        makes=Makes(Fraction(1), "order"),
        components=(Component(title, lines, ()),),
    )
