"""What can be made the day before."""

from collections.abc import Sequence
from fractions import Fraction

from sitegen.kitchen.recipe import Component

A_DAY_H = Fraction(24)
A_NIGHT_MIN = Fraction(12 * 60)


def made_ahead(components: Sequence[Component]) -> tuple[str, ...]:
    """Titles of components that keep until the next day, never the last, which is what is made.

    A component keeps where the baker gives a day or more in any place, and where what its last step made
    need not be used sooner than a night later.
    """
    return tuple(component.title for component in components[:-1] if _keeps(component))


def _keeps(component: Component) -> bool:
    longest = max((kept.hours.low for kept in component.keeping), default=Fraction(0))
    bounds = [
        most
        for step in component.steps[-1:]
        for most in (step.within_min, step.holds_min)
        if most is not None
    ]
    return longest >= A_DAY_H and all(most >= A_NIGHT_MIN for most in bounds)
