"""What can be made the day before."""

from collections.abc import Mapping, Sequence
from fractions import Fraction

from sitegen.kitchen.recipe import Component
from sitegen.timing.graph import sources_of

A_DAY_H = Fraction(24)
A_NIGHT_MIN = Fraction(12 * 60)


def made_ahead(components: Sequence[Component], finished_by: Mapping[str, str]) -> tuple[str, ...]:
    """Titles of components that keep until the next day, with all that they are made of; never the last.

    A component keeps where the baker gives a day or more in any place, and where nothing it is made of must
    be used sooner than a night after it is done.
    """
    by_title = {component.title: component for component in components}
    keeping = {component.title for component in components[:-1] if _keeps(component)}

    def is_ready(title: str, seen: frozenset[str]) -> bool:
        component = by_title.get(finished_by.get(title, title))
        if component is None or component.title in seen:
            return True
        return all(is_ready(source, seen | {component.title}) for source in sources_of(component))

    return tuple(
        component.title
        for component in components
        if component.title in keeping and is_ready(component.title, frozenset())
    )


def _keeps(component: Component) -> bool:
    longest = max((kept.hours.low for kept in component.keeping), default=Fraction(0))
    bounds = [most for step in component.steps[-1:] for most in (step.within_min, step.holds_min) if most]
    return longest >= A_DAY_H and all(most >= A_NIGHT_MIN for most in bounds)
