"""What a plan says beside its rows: when to switch the oven on, when hands are free, what decides it."""

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction
from itertools import groupby

from sitegen.kitchen.amounts import single
from sitegen.kitchen.recipe import Component
from sitegen.sheet.amounts import EN_DASH, duration_text, joined
from sitegen.sheet.clock_words import PlanClock
from sitegen.sheet.heat_words import oven_text
from sitegen.sheet.setting import Setting
from sitegen.timing.ahead import made_ahead
from sitegen.timing.chain import deciding_chain, free_gaps
from sitegen.timing.kitchens import Kitchen
from sitegen.timing.oven_calls import OvenCall, oven_calls
from sitegen.timing.plan import AT_HOME, Plan

ON_ITS_OWN_CLOCK = PlanClock()


def plan_notes(
    made: Plan,
    components: Sequence[Component],
    setting: Setting,
    kitchen: Kitchen = AT_HOME,
    clock: PlanClock = ON_ITS_OWN_CLOCK,
) -> tuple[str, ...]:
    """Sentences for the reader, in the printed region's words; none for a plan without time."""
    notes = (
        *_oven_notes(made, setting, clock),
        *_free_notes(made, clock),
        *_chain_notes(made, kitchen),
        *_ahead_notes(components),
    )
    return tuple(setting.respelled(note) for note in notes)


def oven_words(call: OvenCall, setting: Setting, when: str = "") -> str:
    """What to do at the oven's switch: 'Switch the oven on at 13:55: 160 C fan'. when: ' at 13:55', or ''."""
    oven = oven_text(call.oven, setting.edition, setting.tables.ovens)
    return f"Switch the oven on{when}: {oven}" if call.from_cold else f"Set the oven{when} to {oven}"


def _oven_notes(made: Plan, setting: Setting, clock: PlanClock) -> Iterator[str]:
    for call in oven_calls(made):
        when = f" at {clock.told(call.at_min)}"
        if call.at_min < 0:
            ahead = f" {duration_text(single(-call.at_min))} before you begin"
            when = f"{when}, before you begin" if clock.begins else ahead
        yield f"{oven_words(call, setting, when)}."


def _free_notes(made: Plan, clock: PlanClock) -> Iterator[str]:
    """Every stretch of over a quarter of an hour; a day is named where it is another than the one before."""
    stretches = []
    since = Fraction(0)
    for start, end in free_gaps(made):
        until = "the end" if end == made.total_min else clock.told(end, start)
        stretches.append(f"from {clock.told(start, since)} to {until}")
        since = end
    if stretches:
        yield f"Your hands are free {joined(tuple(stretches))}."


def _chain_notes(made: Plan, kitchen: Kitchen) -> Iterator[str]:
    chain = deciding_chain(made, kitchen)
    parts: dict[str, list[int]] = {}
    for one in chain:
        parts.setdefault(one.task.component, []).append(one.task.index + 1)
    if len(parts) > 1:
        links = tuple(f"{title} ({_steps(numbers)})" for title, numbers in parts.items())
        yield f"What decides the total: {joined(links)}. A delay there delays everything."


def _steps(numbers: Sequence[int]) -> str:
    """'step 6', 'steps 1–5 and 7'."""
    runs = tuple(
        _run([number for _, number in run]) for _, run in groupby(enumerate(sorted(numbers)), _offset)
    )
    return f"{'step' if len(numbers) == 1 else 'steps'} {joined(runs)}"


def _offset(placed: tuple[int, int]) -> int:
    """The same for numbers that follow each other."""
    return placed[1] - placed[0]


def _run(numbers: Sequence[int]) -> str:
    first, last = numbers[0], numbers[-1]
    return str(first) if first == last else f"{first}{EN_DASH}{last}"


def _ahead_notes(components: Sequence[Component]) -> Iterable[str]:
    titles = made_ahead(components)
    if titles:
        yield f"Can be made the day before: {joined(titles)}."
