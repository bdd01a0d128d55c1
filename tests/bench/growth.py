"""What becomes of a build when the school grows, in ratios, as the developers' notes show them.

    python -m tests.bench.growth [--sizes 100 1000] [--folder FOLDER]

It checks nothing. It writes a synthetic school of each size (`library.py`) and builds it. Work is compared by
processor time, that of all processes, since other load on the machine disturbs it least; only what two
workers gain is told by the wall, so look at that on a machine that does nothing else. Bare calls are made in
this process: one half of them before the build that they are compared with, one half after it.
"""

import argparse
import re
import tempfile
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from statistics import median

from tests.bench.growth_bare import BareCalls
from tests.bench.growth_runs import Run, built, forget
from tests.bench.library import SEED, Wanted, write_school

ROUNDS = 5
MEGA = 1e6


@dataclass(frozen=True)
class Row:
    """A row of the table. ratio: of the two texts, as numbers."""

    what: str
    goal: str
    ratio: float
    of: str
    to: str

    def __str__(self) -> str:
        ratio = f"{self.ratio:.1%}" if "%" in self.goal else f"{self.ratio:.2f} x"
        return f"| {self.what} | {self.goal} | {ratio} | {self.of} | {self.to} |"


@dataclass(frozen=True)
class Full:
    """Full builds of one school, with two workers. nothing: builds after it with nothing changed."""

    recipes: int
    run: Run
    nothing: tuple[Run, ...]

    @property
    def start(self) -> float:
        """Processor seconds of a build with nothing changed."""
        return median(run.cpu for run in self.nothing)


def main(arguments: Sequence[str] | None = None) -> None:
    parser = argparse.ArgumentParser(prog="python -m tests.bench.growth", description=__doc__)
    parser.add_argument("--sizes", type=int, nargs=2, default=(100, 1000), metavar=("SMALL", "LARGE"))
    parser.add_argument("--folder", type=Path, help="where the schools are written, and stay")
    asked = parser.parse_args(arguments)
    with tempfile.TemporaryDirectory() as temporary:
        for row in rows(asked.folder or Path(temporary), *asked.sizes):
            print(row, flush=True)


def rows(folder: Path, small: int, large: int) -> Sequence[str]:
    """The table, a line each."""
    first, of_small = _small(folder / str(small), small)
    root = write_school(Wanted(folder / str(large), large, SEED))
    of_large = _full(root, large)
    table = [*first, *_large(root, of_large), *_growth(of_small, of_large)]
    return ["| | goal | ratio | of | to |", "| --- | --- | --- | --- | --- |", *map(str, table)]


def _small(root: Path, recipes: int) -> tuple[list[Row], Full]:
    """A full build beside the bare calls, and two workers beside one."""
    bare = BareCalls(write_school(Wanted(root, recipes, SEED)))
    bare.seconds(bare.slugs[:1])
    before = bare.seconds(bare.slugs[::2])
    forget(root)
    alone = built(root, 1)
    calls = before + bare.seconds(bare.slugs[1::2]) + bare.seconds_in_common()
    full = _full(root, recipes)
    return [
        Row(
            f"full build of {recipes} recipes against bare calls of WeasyPrint and Pillow (CPU)",
            "1.10 x",
            alone.cpu / calls,
            f"{alone.cpu / recipes:.2f} s a recipe",
            f"{calls / recipes:.2f} s",
        ),
        Row(
            f"two workers against one, {recipes} recipes (wall)",
            "1.8 x or more",
            alone.wall / full.run.wall,
            f"{alone.wall:.0f} s",
            f"{full.run.wall:.0f} s",
        ),
    ], full


def _full(root: Path, recipes: int) -> Full:
    forget(root)
    run = built(root, 2)
    return Full(recipes, run, tuple(built(root, 2) for _ in range(ROUNDS)))


def _large(root: Path, full: Full) -> list[Row]:
    """Builds of what is there already."""
    edited, cards = _edited(root)
    return [
        Row(
            f"nothing changed in {full.recipes} recipes against the full build (CPU)",
            "under 1 %",
            full.start / full.run.cpu,
            f"{full.start:.1f} s",
            f"{full.run.cpu:.0f} s",
        ),
        Row(
            f"one of {full.recipes} recipes edited against start-up and its own cards (CPU)",
            "under 1.5 x",
            edited / (full.start + cards),
            f"{edited:.1f} s",
            f"{full.start:.1f} s + {cards:.1f} s",
        ),
    ]


def _growth(small: Full, large: Full) -> list[Row]:
    each_small, each_large = small.run.cpu / small.recipes, large.run.cpu / large.recipes
    against = f"{large.recipes} recipes against {small.recipes}"
    return [
        Row(
            f"cost of a recipe, {against} (CPU)",
            "1.1 x",
            each_large / each_small,
            f"{each_large:.2f} s",
            f"{each_small:.2f} s",
        ),
        _memory(f"peak memory of all processes, {against}", large.run.peak, small.run.peak),
        _memory(f"peak memory of the main process, {against}", large.run.main_peak, small.run.main_peak),
    ]


def _memory(what: str, of: int, to: int) -> Row:
    return Row(what, "1.3 x", of / to, f"{of / MEGA:.0f} MB", f"{to / MEGA:.0f} MB")


def _edited(root: Path) -> tuple[float, float]:
    """Processor seconds of a build after a change in the method of one recipe, and of its bare cards.

    Medians of some rounds, another recipe each time.
    """
    bare = BareCalls(root)
    bare.seconds_of_cards(bare.slugs[:1])
    builds, cards = [], []
    for slug in bare.slugs[3 :: max(1, len(bare.slugs) // ROUNDS)][:ROUNDS]:
        _edit(root / "content" / "recipes" / slug / "recipe.yaml")
        builds.append(built(root, 2).cpu)
        cards.append(bare.seconds_of_cards([slug]))
    return median(builds), median(cards)


def _edit(path: Path) -> None:
    """One sentence more in the first step."""
    text = path.read_text(encoding="utf-8")
    path.write_text(re.sub(r"(- text: .*)", r"\1 Take your time.", text, count=1), encoding="utf-8")


if __name__ == "__main__":
    main()
