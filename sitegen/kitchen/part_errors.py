"""What can be wrong where a recipe takes parts: of its own components, or of a base recipe."""

from dataclasses import dataclass
from fractions import Fraction


@dataclass(eq=False)
class BaseCircle(Exception):
    """A recipe (or component) is made of itself. titles: the way round, first and last alike."""

    titles: tuple[str, ...]


@dataclass(eq=False)
class UnknownPart(Exception):
    """A part is taken of something that is neither a component of the recipe nor a base recipe."""

    title: str


@dataclass(eq=False)
class SharesDontAddUp(Exception):
    """The shares that are taken of a component of the recipe do not make one whole."""

    title: str
    total: Fraction


@dataclass(eq=False)
class MoreThanIsMade(Exception):
    """More is taken of a component, in grams, than it weighs in the tested batch."""

    title: str
    taken_g: Fraction
    made_g: Fraction


@dataclass(eq=False)
class NoWeight(Exception):
    """A weight is taken of a base recipe whose own weight cannot be known.

    unknown: names of what could not be weighed.
    """

    title: str
    unknown: tuple[str, ...]


RECIPE_AT_FAULT = (BaseCircle, MoreThanIsMade, NoWeight, SharesDontAddUp, UnknownPart)
"""What the checks of a recipe tell the baker, with the line that it is about."""
