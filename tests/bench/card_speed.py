"""How fast cards are printed, beside a bare call of WeasyPrint, Chromium and Typst. It checks nothing.

    python -m tests.bench.card_speed [ROUNDS]

All rows are measured in one warm process, round robin, a recipe of the demo each round. Chromium is counted
with all its processes. It prints the same HTML with the same style sheet, fonts and photos, but knows no
running heads that are taken from the page (`string-set`), so it has less to set. Typst sets a like layout of
its own.
"""

import subprocess
import sys
import tempfile
from collections.abc import Callable
from itertools import pairwise
from pathlib import Path
from resource import RUSAGE_CHILDREN, getrusage
from statistics import median
from time import process_time

import psutil

from sitegen.press.card_fetcher import ORIGIN, card_file
from sitegen.press.card_page import CARD_STYLE
from sitegen.press.card_photos import boxes_of
from sitegen.press.paper_press import PaperPress
from tests.bench.bench_cards import KITCHEN_PAPER, ROOT, Demo, demo, of_length
from tests.bench.card_peers import BareCall, Chromium
from tests.bench.card_typst import Typst, typst_source
from tests.bench.paired import Work, in_rounds, ratios, table

ROUNDS = 24
STEPS = (0, 12, 24, 48)
CARDS_IN_MEMORY = 100
OURS, AGAIN, BARE = "our card", "our card, once more (noise)", "bare WeasyPrint call"
CHROMIUM, TYPST = "Chromium, a new tab", "Typst"
STARTS = {
    "Python alone": "",
    "and all that prints imported": "import weasyprint, sitegen.release.card_work, sitegen.press.card_tags",
}


def main() -> None:
    rounds = int(sys.argv[1]) if len(sys.argv) > 1 else ROUNDS
    with tempfile.TemporaryDirectory() as folder:
        made = demo(Path(folder) / "cache")
        tell_first(made)
        tell_peers(made, Path(folder), rounds)
        tell_steps(made, rounds)
        tell_memory(made)


def tell_first(made: Demo) -> None:
    """The first card of this process, and what it takes to begin one."""
    first = seconds(made.work(made.sheets[0]).made)
    later = median(seconds(made.work(made.sheets[0]).made) for _ in range(5))
    print(f"first card, fonts and styles read: {first * 1000:.0f} ms, {first / later:.1f} later cards")
    for name, code in STARTS.items():
        taken = median(seconds_of_process(code) for _ in range(3))
        print(f"{name}: {taken * 1000:.0f} ms, {taken / later:.1f} later cards")
    print()


def tell_peers(made: Demo, folder: Path, rounds: int) -> None:
    works = [made.work(sheet) for sheet in made.sheets]
    kitchen = [made.work(sheet, KITCHEN_PAPER) for sheet in made.sheets]
    pages = [made.page(sheet) for sheet in made.sheets]
    press = PaperPress(made.theme, CARD_STYLE)
    bare, typst = BareCall(press), Typst(folder)
    sources = [typst_source(sheet, paths_of(made, sheet)) for sheet in made.sheets]
    with Chromium(folder, press) as browser:
        addresses = [browser.place(page, f"card-{at}") for at, page in enumerate(pages)]
        each = len(works)
        print(f"the demo's {each} cards, {rounds} rounds; ratios to '{BARE}'")
        spent = in_rounds(
            [
                Work(BARE, lambda number: bare.pdf(pages[number % each])),
                Work(OURS, lambda number: works[number % each].made()),
                Work(AGAIN, lambda number: works[number % each].made()),
                Work("our kitchen card", lambda number: kitchen[number % each].made()),
                Work(CHROMIUM, lambda number: browser.pdf(addresses[number % each]), browser.cpu),
                Work(TYPST, lambda number: typst.pdf(sources[number % each])),
            ],
            rounds,
        )
    print(table(spent, BARE))
    for name in (CHROMIUM, TYPST):
        cpu, low, high = ratios(spent[OURS].cpu, spent[name].cpu)
        print(f"our card / {name}: {cpu:.2f} ({low:.2f}-{high:.2f}) of its CPU")
    print()


def tell_steps(made: Demo, rounds: int) -> None:
    """What one more step costs in a short card and in a long one."""
    works = {steps: made.work(of_length(made.sheets, steps)) for steps in STEPS}
    rows = [Work(f"{steps} steps", _making(work.made)) for steps, work in works.items()]
    spent = in_rounds(rows, max(rounds // 2, 6))
    print("the same card with more and more steps")
    print(table(spent, rows[0].name))
    base = [(b - a) / STEPS[1] for a, b in zip(spent[rows[0].name].cpu, spent[rows[1].name].cpu, strict=True)]
    for fewer, more in pairwise(STEPS):
        low, high = spent[f"{fewer} steps"].cpu, spent[f"{more} steps"].cpu
        step = [(b - a) / (more - fewer) for a, b in zip(low, high, strict=True)]
        print(
            f"a step from {fewer} to {more}: {median(step) * 1000:.1f} ms, {median(step) / median(base):.2f}"
        )
    print()


def tell_memory(made: Demo) -> None:
    """What a worker holds after a few cards, and after many."""
    process = psutil.Process()
    for number in range(CARDS_IN_MEMORY + 1):
        made.work(made.sheets[number % len(made.sheets)]).made()
        if number in {10, 50, CARDS_IN_MEMORY}:
            print(f"after {number} cards: {process.memory_info().rss / 1e6:.0f} MB")


def paths_of(made: Demo, sheet: object) -> dict[str, str]:
    """Photo -> its path below the folder in which the browser's pages lie."""
    return {
        file: card_file("photos", made.cache.fetch(made.cuts[file]), "image/jpeg").address.removeprefix(
            ORIGIN
        )
        for file in boxes_of(sheet)
    }


def seconds(call: Callable[[], object]) -> float:
    begun = process_time()
    call()
    return process_time() - begun


def seconds_of_process(code: str) -> float:
    begun = _of_children()
    subprocess.run([sys.executable, "-c", code], cwd=ROOT, check=True)
    return _of_children() - begun


def _of_children() -> float:
    used = getrusage(RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def _making(make: Callable[[], object]) -> Callable[[int], object]:
    return lambda _: make()


if __name__ == "__main__":
    main()
