"""What a plan says beside its rows: what decides it, when hands are free, when to switch the oven on."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from fractions import Fraction

from sitegen.kitchen.recipe import Component
from sitegen.sheet.amounts import joined
from sitegen.sheet.heat_words import oven_text
from sitegen.sheet.setting import Setting
from sitegen.timing.ahead import made_ahead
from sitegen.timing.chain import deciding_chain, free_gaps
from sitegen.timing.hours import clock
from sitegen.timing.plan import Plan

HEAT_UP_MIN = Fraction(15)
"""Source: common practice, an oven needs about a quarter of an hour."""
MOST_GAPS = 3


def plan_notes(
    made: Plan,
    components: Sequence[Component],
    finished_by: Mapping[str, str],
    setting: Setting,
    tell: Callable[[Fraction], str] = clock,
) -> tuple[str, ...]:
    """Sentences for the reader, in the printed region's words; none for a plan without time.

    tell: a minute of the plan -> as its clock is printed.
    """
    notes = (
        *_oven_notes(made, setting, tell),
        *_free_notes(made, tell),
        *_chain_notes(made),
        *_ahead_notes(components, finished_by),
    )
    return tuple(setting.respelled(note) for note in notes)


def _oven_notes(made: Plan, setting: Setting, tell: Callable[[Fraction], str]) -> Iterator[str]:
    """When each setting must be on: a quarter of an hour before its first load."""
    before = None
    for one in made.tasks:
        oven = one.task.oven
        if oven is None or oven == before:
            continue
        words = oven_text(oven, setting.edition, setting.tables.ovens)
        if before is None:
            on = max(one.free_min - HEAT_UP_MIN, Fraction(0))
            yield f"Switch the oven on at {tell(on)}: {words}."
        else:
            yield f"Then set the oven to {words}, by {tell(one.free_min)}."
        before = oven


def _free_notes(made: Plan, tell: Callable[[Fraction], str]) -> Iterator[str]:
    longest = sorted(free_gaps(made), key=lambda gap: gap[0] - gap[1])[:MOST_GAPS]
    if longest:
        spans = tuple(f"{tell(start)} to {tell(end)}" for start, end in sorted(longest))
        yield f"Your hands are free from {joined(spans)}."


def _chain_notes(made: Plan) -> Iterator[str]:
    titles = tuple(dict.fromkeys(one.task.component for one in deciding_chain(made)))
    if len(titles) > 1:
        yield f"What decides the whole: {joined(titles)}. Begin there; a delay in it delays everything."


def _ahead_notes(components: Sequence[Component], finished_by: Mapping[str, str]) -> Iterator[str]:
    titles = made_ahead(components, finished_by)
    if titles:
        yield f"Can be made the day before: {joined(titles)}."
