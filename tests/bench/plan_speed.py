"""How fast plans are found, beside OR-Tools CP-SAT on the same problems. Run it; it checks nothing.

    python tests/bench/plan_speed.py

Times are the best of several runs on one core, in milliseconds; 'ratio' is the solver's time over ours, so
that over 1 ours is faster. A gap is what a plan may be longer than its bound.
"""

import sys
from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from time import perf_counter
from typing import TypeVar

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT))

from sitegen.release.sheets import sheet_setter  # noqa: E402
from sitegen.sheet.making import making_of  # noqa: E402
from sitegen.source.library import read_content  # noqa: E402
from sitegen.timing.graph import Task, tasks_of  # noqa: E402
from sitegen.timing.kitchens import worktop  # noqa: E402
from sitegen.timing.plan import AT_HOME, Plan, forget_plans, highest, horizon_of, plan  # noqa: E402
from sitegen.timing.problem import Problem  # noqa: E402
from sitegen.timing.shortest import shortest  # noqa: E402
from tests.outside.test_shortest_plans_ortools import random_work, span_by_cp_sat  # noqa: E402

Result = TypeVar("Result")
RUNS = 3
STEPS_OF_A_LONG_DAY = 60
RANDOM = range(200)


def main() -> None:
    recipes = demo_tasks()
    print(
        f"{'work':36}{'steps':>6}{'total':>7}{'row':>7}{'proved':>8}{'plan':>9}{'span':>9}{'CP-SAT':>9}{'ratio':>7}"
    )
    for slug, tasks in recipes.items():
        tell(slug, tasks)
    tell("joined to 60 steps", joined(list(recipes.values()), STEPS_OF_A_LONG_DAY))
    tell_random()


def demo_tasks() -> dict[str, tuple[Task, ...]]:
    content = read_content(ROOT)
    if content.school is None:
        raise SystemExit("the demo has faults: run sitegen proof")
    shelf = sheet_setter(content, content.school).shelf
    edition = shelf.tables.editions[content.school.editions[0]]
    return {
        recipe.slug: tasks_of(
            making_of(recipe, shelf.bases, shelf.tables, edition, shelf.written).in_batch, {}
        )
        for recipe in content.recipes
    }


def joined(works: Sequence[Sequence[Task]], steps: int) -> tuple[Task, ...]:
    """Works for the same cook, one behind another, the longest first, up to so many steps."""
    found: list[Task] = []
    for work in sorted(works, key=len, reverse=True):
        if len(found) + len(work) <= steps:
            first = len(found)
            found += [
                replace(
                    task,
                    index=task.index + first,
                    component=f"{task.component} {first}",
                    after=frozenset(index + first for index in task.after),
                )
                for task in work
            ]
    return tuple(found)


def tell(name: str, tasks: tuple[Task, ...]) -> None:
    """A row: the plan as it is printed, then the bare span by us and by the solver, without oven changes."""
    whole, made = best_of(lambda: planned(tasks))
    problem = worktop(tasks, replace(AT_HOME, change_min=AT_HOME.change_min * 0), highest).problem
    ours, _ = best_of(lambda: shortest(problem, horizon_of(problem)))
    theirs, _ = best_of(lambda: span_by_cp_sat(problem))
    row = sum(one.hands_on_min + one.wait_min for one in made.tasks)
    print(
        f"{name:36}{len(tasks):6}{int(made.total_min):7}{int(row):7}{proof_of(made):>8}"
        f"{whole:9.1f}{ours:9.1f}{theirs:9.1f}{theirs / ours:7.1f}"
    )


def proof_of(made: Plan) -> str:
    return "yes" if made.is_proved else f"gap {made.total_min - made.bound_min}"


def planned(tasks: tuple[Task, ...]) -> Plan:
    forget_plans()
    return plan(tasks)


def best_of(call: Callable[[], Result]) -> tuple[float, Result]:
    """The least time of several runs, in ms, and the result."""
    times = []
    for _ in range(RUNS):
        begun = perf_counter()
        result = call()
        times.append((perf_counter() - begun) * 1000)
    return min(times), result


def tell_random() -> None:
    """The 200 random problems of the tests: both times in all, and the largest gap of ours."""
    problems: list[Problem] = [random_work(seed) for seed in RANDOM]
    begun = perf_counter()
    found = [shortest(problem, horizon_of(problem)) for problem in problems]
    ours = perf_counter() - begun
    begun = perf_counter()
    for problem in problems:
        span_by_cp_sat(problem)
    theirs = perf_counter() - begun
    gap = max((one.span - one.bound for one in found if one is not None), default=0)
    print(
        f"{len(problems)} random problems: ours {ours:.2f} s, CP-SAT {theirs:.2f} s, "
        f"ratio {theirs / ours:.1f}; largest gap {gap} min"
    )


if __name__ == "__main__":
    main()
