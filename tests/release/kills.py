"""Publishes that are killed at random moments: what stands in `output/` then, and after the next one.

The school has two contents in turn (`pair_school.py`). Clean builds, each without a predecessor, say what
`output/` must be. `report.json` tells what changed since the build before and so depends on it: all else in
it is compared with the clean build, and every hash that it tells with the file on the disk.
"""

import json
import os
import random
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from sitegen.release.steps import Step
from tests.release.pair_school import take_content, write_pair
from tests.release.small_school import SUMMER, tree_hashes

PROJECT = Path(__file__).parents[2]

WITHOUT_EXCHANGE = """
from sitegen.release import swap
from sitegen.release.exchange import CannotExchange
def refuse(one, other):
    raise CannotExchange("no such call here")
swap.exchange = refuse
"""
"""What makes a process believe that the system cannot let two folders change places."""

_RUN = "from sitegen.cli.main import main\nmain()\n"
_SINCE_THE_LAST = ("changes", "same")
"""Keys of the report that tell of the build before."""

Tree = Mapping[str, str]
"""Path below `output/` -> hash of the file; of `report.json`, of all that depends on no predecessor."""


@dataclass(frozen=True)
class Killed:
    """One publish that was killed. left: the content that `output/` was then made of, None for none or a mix.

    reached: the last step that it told of, None before the first. seconds: after which it was killed.
    """

    left: str | None
    reached: Step | None
    seconds: float


class Oven:
    """A school's folder in which publishes are begun, killed and made good."""

    def __init__(self, folder: Path, before: str = "", output: Path | None = None) -> None:
        """folder: to work in, empty. before: Python that each publish runs first.

        output: where `output/` really lies, None for in the school's folder.
        """
        self.root = folder / "school"
        self.temporary = folder / "temporary"
        self._before = before
        self.contents = write_pair(folder)
        self.root.mkdir()
        self.temporary.mkdir()
        if output is not None:
            output.mkdir(parents=True, exist_ok=True)
            (self.root / "output").symlink_to(output)
        self.clean: dict[str, Tree] = {}
        self.kept: frozenset[str] = frozenset()

    @property
    def output(self) -> Path:
        return self.root / "output"

    def build_clean(self, cache: Path | None = None) -> None:
        """Publish each content without a predecessor. cache: to begin with, so that fonts are there."""
        if cache is not None:
            shutil.copytree(cache, self.root / ".sitegen" / "cache")
        for name in self.contents:
            self.empty_output()
            self.take(name)
            self.publish(jobs=1)
            self.clean[name] = tree(self.output)
        self.kept = frozenset(os.listdir(self.root / ".sitegen"))

    def take(self, name: str) -> None:
        """Let this content be what is published next."""
        take_content(self.root, self.contents[name])

    def empty_output(self) -> None:
        """As before the first publish."""
        for entry in self.output.iterdir() if self.output.exists() else ():
            shutil.rmtree(entry) if entry.is_dir() else entry.unlink()

    def publish(self, jobs: int = 2) -> None:
        """Publish to the end; what it leaves must be whole and nothing else."""
        child = self.begin(jobs)
        _, told = child.communicate()
        assert child.returncode == 0, told
        left = list(self.temporary.iterdir())
        assert not left, left
        assert list(self.root.glob(".sitegen/cache/.parts/*")) == []
        if self.kept:
            assert set(os.listdir(self.root / ".sitegen")) == self.kept

    def begin(self, jobs: int = 2, before: str = "") -> "subprocess.Popen[str]":
        """A publish in a process group of its own. before: Python that it runs first."""
        command = [sys.executable, "-c", self._before + before + _RUN]
        return subprocess.Popen(
            [*command, "publish", "--on", SUMMER.isoformat(), "--jobs", str(jobs)],
            cwd=self.root,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
            env={**os.environ, "PYTHONPATH": str(PROJECT), "TMPDIR": str(self.temporary)},
            start_new_session=True,
        )

    def killed(self, name: str, seconds: float, step: Step | None = None, jobs: int = 2) -> Killed | None:
        """Begin to publish a content and kill all its processes so long after a step was told.

        step: None for the very beginning. Returns None where it came to its end before.
        """
        self.take(name)
        child = self.begin(jobs)
        with child:
            assert child.stderr is not None
            told: list[str] = []
            while step is not None and not (told and told[-1].startswith(f"{step}/")):
                told.append(child.stderr.readline())
                if not told[-1]:
                    return None
            time.sleep(seconds)
            if child.poll() is not None:
                return None
            os.killpg(child.pid, signal.SIGKILL)
            told += child.stderr.read().splitlines()
        return Killed(self.standing(), _last_step(told), seconds)

    def standing(self) -> str | None:
        """The content that all of `output/` is made of; None where it is empty, cut short or a mix."""
        found = tree(self.output)
        return next((name for name, whole in self.clean.items() if found == whole), None)

    def trees_standing(self) -> Mapping[str, str | None]:
        """The same of each entry that a reader may see by itself: of the three trees and the report."""
        found = _by_entry(tree(self.output))
        clean = {name: _by_entry(whole) for name, whole in self.clean.items()}
        return {
            entry: next((name for name, whole in clean.items() if whole.get(entry) == files), None)
            for entry, files in found.items()
            if not entry.startswith(".")
        }


def tree(output: Path) -> Tree:
    """Every file with its hash, empty folders, and of the report what depends on no build before."""
    found = tree_hashes(output)
    empty = [path for path in output.rglob("*") if path.is_dir() and not any(path.iterdir())]
    found |= {f"{path.relative_to(output).as_posix()}/": "empty" for path in empty}
    if "report.json" in found:
        report = json.loads((output / "report.json").read_bytes())
        told = {path: row["sha256"] for path, row in report["files"].items()}
        found[".told"] = "as they are" if all(found.get(path) == told[path] for path in told) else "others"
        found["report.json"] = json.dumps({key: report[key] for key in report if key not in _SINCE_THE_LAST})
    return found


def _last_step(told: Sequence[str]) -> Step | None:
    begun = [step for line in told for step in Step if line.startswith(f"{step}/{len(Step)} ")]
    return begun[-1] if begun else None


def _by_entry(found: Tree) -> Mapping[str, Tree]:
    """Files by the first part of their paths."""
    entries: dict[str, dict[str, str]] = {}
    for path, digest in found.items():
        entries.setdefault(path.partition("/")[0], {})[path] = digest
    return entries


def forget_some(cache: Path, chance: random.Random) -> None:
    """Take a third of the entries away, so that the next publish has every kind of work to do."""
    for path in sorted(path for path in cache.rglob("*") if path.is_file()):
        if chance.random() < 1 / 3:
            path.unlink()
