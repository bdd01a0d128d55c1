"""How fast sheets are set, and which part of a sheet takes how much of the time.

    python -m tests.bench.sheet_speed

Sets every sheet of the demo, in every edition that the tables know. Times are of the processor, so that other
work on the machine counts little; 'sums a sheet' is the price of a sheet in additions of two fractions, which
is nearly the same on any machine. Shares are sampled, and so cost nothing that would distort them.
"""

import signal
from collections import Counter
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from time import process_time
from types import FrameType

from sitegen.kitchen.recipe import Recipe
from sitegen.release.sheets import SheetSetter, sheet_setter
from sitegen.sheet.batches import offered
from sitegen.source.library import read_content
from sitegen.timing.plan import forget_plans

ROOT = Path(__file__).resolve().parents[2]
ROUNDS = 3
SUMS = 100_000
SAMPLED_EVERY_S = 0.001
PARTS = {
    "printed_lines": "ingredient lines in the edition's measures",
    "made_components": "components and base recipes, weighed",
    "cautions_of": "cautions",
    "printed_step": "steps",
    "work_of": "work plan and timeline",
    "nutrition_of": "nutrition",
    "swaps_of": "swaps",
    "formulas_of": "baker's percentages",
    "keeping_rows": "keeping",
    "allergen_lines": "allergens",
}
"""Function that sets a part of a sheet -> what it sets."""


class Samples:
    """Counts, at each tick of the processor's clock, which part is being set."""

    def __init__(self) -> None:
        self.by_part: Counter[str] = Counter()

    def __enter__(self) -> "Samples":
        signal.signal(signal.SIGPROF, self._tick)
        signal.setitimer(signal.ITIMER_PROF, SAMPLED_EVERY_S, SAMPLED_EVERY_S)
        return self

    def __exit__(self, *_: object) -> None:
        signal.setitimer(signal.ITIMER_PROF, 0)

    def _tick(self, _number: int, frame: FrameType | None) -> None:
        while frame is not None and frame.f_code.co_name not in PARTS:
            frame = frame.f_back
        self.by_part[PARTS[frame.f_code.co_name] if frame else "everything else"] += 1


def all_set(setter: SheetSetter, recipes: tuple[Recipe, ...]) -> int:
    """Set every sheet anew, but for what the rules themselves remember. Returns how many."""
    fresh = replace(setter)
    asked = [
        (recipe, edition, ask)
        for recipe in recipes
        for edition in setter.shelf.tables.editions
        for ask in offered(recipe)
    ]
    for recipe, edition, ask in asked:
        fresh.sheet(recipe, edition, ask)
    return len(asked)


def seconds_of_a_sum() -> float:
    """What one addition of two fractions takes on this machine."""
    third, seventh = Fraction(1, 3), Fraction(2, 7)
    begun = process_time()
    for _ in range(SUMS):
        third + seventh
    return (process_time() - begun) / SUMS


def main() -> None:
    content = read_content(ROOT)
    if content.school is None:
        raise SystemExit("content/site.yaml cannot be read")
    setter = sheet_setter(content, content.school)
    with Samples() as samples:
        for place in range(ROUNDS):
            forget_plans()
            begun = process_time()
            count = all_set(setter, content.recipes)
            taken = process_time() - begun
            sums = taken / count / seconds_of_a_sum()
            name = "first round" if place == 0 else "warm"
            print(f"{name:12} {count} sheets, {count / taken:5.0f} a second, {sums:6.0f} sums a sheet")
    print()
    for part, ticks in samples.by_part.most_common():
        print(f"{ticks / samples.by_part.total():6.1%}  {part}")


if __name__ == "__main__":
    main()
