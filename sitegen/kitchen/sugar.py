"""Stages of boiled sugar: what the trade calls a syrup at its temperature."""

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True)
class SugarStage:
    """One stage, degrees C at sea level, ends included."""

    name: str
    from_c: Fraction
    to_c: Fraction
    source: str


@dataclass(frozen=True)
class SugarStages:
    """The rows of `data/sugar_stages.yaml`, by rising temperature.

    roles: what a component must hold for its exact temperatures to be those of sugar.
    unless_words: words of a step that speak of another hot thing; with a star at the end also longer ones.
    """

    stages: tuple[SugarStage, ...] = ()
    roles: frozenset[str] = frozenset()
    unless_words: tuple[str, ...] = ()

    def names_of(self, low_c: Fraction, high_c: Fraction) -> tuple[str, ...]:
        """The stages of a temperature (or a range), each once, by rising heat; none outside the table.

        Where two stages meet the hotter one is meant; between two, both are named.
        """
        first, last = self._names_at(low_c), self._names_at(high_c)
        ends = dict.fromkeys((*first[:1], *last[-1:]))
        return tuple(ends)

    def _names_at(self, celsius: Fraction) -> tuple[str, ...]:
        below = [stage for stage in self.stages if stage.from_c <= celsius]
        if not below or celsius > self.stages[-1].to_c:
            return ()
        at = below[-1]
        if celsius <= at.to_c:
            return (at.name,)
        return (at.name, self.stages[len(below)].name)
