"""Amounts as a baker means them, and the place in a file that any value may carry: exact, frozen."""

from dataclasses import dataclass, field
from fractions import Fraction

from sitegen.faults import Place

NOWHERE = Place(file="")


def at_place() -> Place:
    """A field for the place of a value in its file; it takes no part in equality and hash."""
    return field(default=NOWHERE, compare=False, repr=False)


@dataclass(frozen=True)
class Span:
    """A number or a range of numbers, exact.

    low, high: equal for a single figure; low <= high.
    """

    low: Fraction
    high: Fraction

    @property
    def middle(self) -> Fraction:
        """The middle of the range, exact."""
        return (self.low + self.high) / 2

    @property
    def is_range(self) -> bool:
        return self.low != self.high

    def times(self, factor: Fraction) -> "Span":
        return Span(self.low * factor, self.high * factor)


def single(value: int | Fraction) -> Span:
    """A span of one figure."""
    return Span(Fraction(value), Fraction(value))


@dataclass(frozen=True)
class Amount:
    """How much of something, as written.

    unit: a name in `data/measures.txt` ('g', 'kg', 'ml', 'l', 'oz', 'lb', 'tsp', 'tbsp', 'cup',
    'pinch', 'stick', ...), or '' for a count ('2 medium eggs', '1 lemon').
    'tsp', 'tbsp' and 'cup' are those of the edition that the recipe is written in.
    """

    span: Span
    unit: str
