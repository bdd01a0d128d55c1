"""Kill publishes at random moments, by the hundred: `python -m tests.bench.kills 200`.

Each kill ends all processes of a publish at once, as a machine that is lost does. A third of the moments lie
in the last two steps, where the output is written and swapped in, the others anywhere in all steps before.
Before every second publish a third of the cache is taken away, so that fonts, photos and cards are
being made too; every tenth is of a school that has not changed. `output/` must then be what it was or what it
was to become, byte for byte; the next publish must give what a clean build gives, and leave no temporary
file. See `tests/release/kills.py`.

Three ways: with the system's exchange of two folders; where the system has no such call; and where `output/`
lies on another file system. In the last two a reader may find some trees old and others new, each whole,
until the next run has finished the swap: what counts is what stands there once `finish_arrival` has run.
"""

import argparse
import random
import shutil
import tempfile
import time
from collections import Counter
from pathlib import Path

from sitegen.release import swap
from sitegen.release.steps import Step
from tests.release.kills import WITHOUT_EXCHANGE, Killed, Oven, forget_some
from tests.release.pair_school import CONTENTS

OTHER_DISK = Path("/dev/shm")
_LAST = (Step.FILES, Step.SWAP)
_LAST_SHARE = 1 / 3


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0] if __doc__ else None)
    parser.add_argument("kills", type=int, help="how many, over the three ways")
    parser.add_argument(
        "--seed", type=int, default=None, help="of the moments; printed, so that a run can be had again"
    )
    asked = parser.parse_args()
    seed = asked.seed if asked.seed is not None else random.randrange(10**6)
    print(f"seed {seed}")
    with tempfile.TemporaryDirectory() as folder:
        ways = _ways(Path(folder))
        for number, (way, oven) in enumerate(ways.items()):
            share = asked.kills // len(ways) + (number < asked.kills % len(ways))
            _kill_often(way, oven, share, random.Random(seed + number))
            shutil.rmtree(oven.output.resolve())


def _ways(folder: Path) -> dict[str, Oven]:
    ways = {
        "exchange": Oven(folder / "exchange"),
        "no such call": Oven(folder / "no-call", WITHOUT_EXCHANGE),
    }
    if OTHER_DISK.is_dir() and OTHER_DISK.stat().st_dev != folder.stat().st_dev:
        ways["another file system"] = Oven(folder / "other", output=Path(tempfile.mkdtemp(dir=OTHER_DISK)))
    return ways


def _kill_often(way: str, oven: Oven, kills: int, chance: random.Random) -> None:
    oven.build_clean()
    oven.take(CONTENTS[0])
    forget_some(oven.root / ".sitegen" / "cache", chance)
    begun = time.perf_counter()
    oven.publish()
    lasts = time.perf_counter() - begun
    outcomes: Counter[str] = Counter()
    steps: Counter[str] = Counter()
    stands = CONTENTS[0]
    number = 0
    while number < kills:
        if chance.random() < 1 / 2:
            forget_some(oven.root / ".sitegen" / "cache", chance)
        wanted = stands if chance.random() < 1 / 10 else next(name for name in CONTENTS if name != stands)
        killed = _one_kill(oven, wanted, lasts, chance)
        if killed is None:  # it had ended before
            stands = wanted
            continue
        number += 1
        outcomes[_outcome(oven, killed, was=stands, wanted=wanted)] += 1
        steps[killed.reached.title if killed.reached else "none"] += 1
        oven.publish(jobs=chance.choice((1, 2)))
        outcomes["the next as clean" if oven.standing() == wanted else "THE NEXT DIFFERS"] += 1
        stands = wanted
    print(
        f"{way}: {kills} kills; " + ", ".join(f"{count} {what}" for what, count in sorted(outcomes.items()))
    )
    print("   killed in: " + ", ".join(f"{step} {count}" for step, count in steps.most_common()), flush=True)


def _one_kill(oven: Oven, wanted: str, lasts: float, chance: random.Random) -> Killed | None:
    """lasts: seconds that a publish takes, of which a part may pass after the step was told."""
    if chance.random() < _LAST_SHARE:
        return oven.killed(wanted, chance.uniform(0, 0.08), step=chance.choice(_LAST))
    step = chance.choice([None, *(step for step in Step if step not in _LAST)])
    return oven.killed(wanted, chance.uniform(0, lasts / 4), step)


def _outcome(oven: Oven, killed: Killed, was: str, wanted: str) -> str:
    left = killed.left
    between = False
    if left is None and (oven.output / swap.ARRIVING).is_dir():
        between = set(oven.trees_standing().values()) <= {was, wanted}
    if left is None:
        swap.finish_arrival(oven.output)
        left = oven.standing()
    told = {was: "old", wanted: "new"}.get(left or "", "A MIX")
    return f"{told} (trees one by one)" if between else told


if __name__ == "__main__":
    main()
